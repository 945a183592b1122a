"use client";

import { useState } from "react";
import { Button, type ButtonLook } from "@/app/_ui/button";
import { Dialog, DialogClose } from "@/app/_ui/dialog";
import { ChoiceField } from "@/app/_ui/fields/choice-field";
import { DayField } from "@/app/_ui/fields/day-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import {
	type JobState,
	movesFrom,
	WAITING_FOR,
	type WaitingFor,
} from "@/lib/workshop/job-state";
import { move } from "../actions";
import { StepMessages, useDesk, useStep } from "./job-desk";

/** The states the bench can put the job into from where it stands. */
export function JobMoves({ state }: { state: JobState }) {
	const { say } = useReader();
	const { number } = useDesk();
	const { run, isBusy, messages } = useStep();
	const [note, setNote] = useState("");
	const targets = movesFrom(state);
	if (targets.length === 0) return <p>{say("job.moves.nothing")}</p>;

	const go = async (
		to: JobState,
		wait: { waitingFor?: WaitingFor; expectedOn?: string } = {},
	) => {
		const asked = { to, note, ...wait };
		if (await run(asked, (edit) => move({ ...edit, ...asked }))) setNote("");
	};
	const label = (to: JobState) =>
		to === "on-the-bench" && state !== "agreed"
			? say("job.moves.back")
			: say(`job.moves.to.${to}`);
	const forward = targets.find(
		(to) => to !== "cancelled" && to !== "waiting" && to !== "agreed",
	);
	const lookOf = (to: JobState): ButtonLook =>
		to === forward ? "main" : "plain";
	const plain = targets.filter(
		(to) => to !== "waiting" && to !== "cancelled" && to !== "handed-over",
	);
	return (
		<>
			<TextField
				label={say("job.moves.note")}
				hint={say("job.moves.noteHint")}
				value={note}
				onChange={setNote}
				maxLength={2000}
			/>
			<StepMessages messages={messages} />
			<Actions>
				{targets.includes("handed-over") && (
					<AskFirst
						trigger={
							<Button look={lookOf("handed-over")} busy={isBusy}>
								{label("handed-over")}
							</Button>
						}
						title={say("job.moves.handAsk", { number })}
						about={say("job.moves.handAbout")}
						keep={say("job.moves.notYet")}
						go={label("handed-over")}
						look="main"
						onGo={() => go("handed-over")}
					/>
				)}
				{plain.map((to) => (
					<Button
						key={to}
						look={lookOf(to)}
						busy={isBusy}
						onClick={() => go(to)}
					>
						{label(to)}
					</Button>
				))}
				{targets.includes("cancelled") && (
					<AskFirst
						trigger={
							<Button look="risky" busy={isBusy}>
								{label("cancelled")}
							</Button>
						}
						title={say("job.moves.cancelAsk", { number })}
						about={say("job.moves.cancelAbout")}
						keep={say("job.moves.keep")}
						go={label("cancelled")}
						look="risky"
						onGo={() => go("cancelled")}
					/>
				)}
			</Actions>
			{targets.includes("waiting") && (
				<Wait
					isBusy={isBusy}
					onWait={(waitingFor, expectedOn) =>
						go("waiting", { waitingFor, expectedOn })
					}
				/>
			)}
		</>
	);
}

function Wait({
	isBusy,
	onWait,
}: {
	isBusy: boolean;
	onWait: (waitingFor: WaitingFor, expectedOn: string) => void;
}) {
	const { say } = useReader();
	const [what, setWhat] = useState<WaitingFor>("drying");
	const [until, setUntil] = useState("");
	return (
		<details>
			<summary>{say("job.moves.to.waiting")}</summary>
			<ChoiceField
				label={say("job.moves.waitFor")}
				value={what}
				unsure={null}
				options={WAITING_FOR.map((value) => ({
					value,
					label: say(`job.moves.${value}`),
				}))}
				onChange={(value) => setWhat(value as WaitingFor)}
			/>
			<DayField
				label={say("job.moves.expectedOn")}
				value={until}
				onChange={setUntil}
			/>
			<Actions>
				<Button busy={isBusy} onClick={() => onWait(what, until)}>
					{say("job.moves.to.waiting")}
				</Button>
			</Actions>
		</details>
	);
}

function AskFirst({
	trigger,
	title,
	about,
	keep,
	go,
	look,
	onGo,
}: {
	trigger: React.ReactElement;
	title: string;
	about: string;
	keep: string;
	go: string;
	look: ButtonLook;
	onGo: () => void;
}) {
	return (
		<Dialog trigger={trigger} title={title} description={about}>
			<Actions>
				<DialogClose render={<Button>{keep}</Button>} />
				<DialogClose
					render={
						<Button look={look} onClick={onGo}>
							{go}
						</Button>
					}
				/>
			</Actions>
		</Dialog>
	);
}
