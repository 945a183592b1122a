"use client";

import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { ChecksField, ChoiceField } from "@/app/_ui/fields/choice-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Columns, Section, Stack } from "@/app/_ui/section";
import { startTrialSchema } from "@/lib/forms/trial";
import type { ProposalWords } from "@/lib/present/trial-offers";
import { CUES_IN_TRIAL, roundsToBalance } from "@/lib/trial/order";
import { begin } from "../actions";
import styles from "./trial.module.css";

interface Proposal extends ProposalWords {
	readonly cueIds: string[];
	readonly shotsEach: number;
}

const SHOTS_EACH = ["10", "20", "30", "40", "60"];
const PER_TURN = ["1", "5", "10"];
const OWN = "own";

/** Which cues, how many shots, in what turns, and who knows which is which. */
export function TrialSetup({
	playerId,
	cues,
	proposals,
}: {
	playerId: string;
	cues: readonly { id: string; name: string; figures: string }[];
	proposals: readonly Proposal[];
}) {
	const { say } = useReader();
	const [choice, setChoice] = useState(proposals.length > 0 ? "0" : OWN);
	const [own, setOwn] = useState<string[]>([]);
	const proposed = proposals[Number(choice)];
	const [shots, setShots] = useState("");
	const [perTurn, setPerTurn] = useState("5");
	const [pairs, setPairs] = useState("yes");
	const [hidden, setHidden] = useState("no");
	const [messages, setMessages] = useState<readonly string[]>([]);
	const [isBusy, startTransition] = useTransition();
	const requestKey = useRef<string | null>(null);

	const cueIds = proposed?.cueIds ?? own;
	const shotsEach = Number(shots || (proposed?.shotsEach ?? 20));
	const rounds = Math.ceil(shotsEach / Number(perTurn));
	const all = rounds * Number(perTurn) * Math.max(cueIds.length, 2);
	const unbalanced = rounds % roundsToBalance(Math.max(cueIds.length, 2)) !== 0;
	const makes = say("trials.setup.makes", {
		rounds: String(rounds),
		shots: String(all),
	});
	const changed = <T,>(put: (value: T) => void) => {
		return (value: T) => {
			put(value);
			setMessages([]);
			requestKey.current = null;
		};
	};
	const start = () => {
		const parsed = startTrialSchema.safeParse({
			playerId,
			cueIds,
			shotsEach,
			shotsPerTurn: Number(perTurn),
			isPaired: pairs === "yes",
			isHidden: hidden === "yes",
		});
		if (!parsed.success) {
			setMessages([
				say("trials.setup.count", {
					count: String(cueIds.length),
					min: String(CUES_IN_TRIAL.min),
					max: String(CUES_IN_TRIAL.max),
				}),
			]);
			return;
		}
		requestKey.current ??= newRequestKey();
		const request = { ...parsed.data, requestKey: requestKey.current };
		startTransition(async () => {
			try {
				await begin(request);
			} catch (cause) {
				// A redirect travels as an exception that only the router may catch.
				if (
					cause instanceof Error &&
					"digest" in cause &&
					String(cause.digest).startsWith("NEXT_REDIRECT")
				)
					throw cause;
				setMessages([say("trials.setup.unreached")]);
			}
		});
	};

	return (
		<Stack>
			<Section title={say("trials.setup.which")} card>
				<ChoiceField
					label={say("trials.setup.pairs")}
					hint={say("trials.setup.pairsHint")}
					value={choice}
					options={[
						...proposals.map(({ title }, i) => ({
							value: String(i),
							label: title,
							hint: i === 0 ? say("trials.setup.most") : undefined,
						})),
						{ value: OWN, label: say("trials.setup.own") },
					]}
					onChange={changed(setChoice)}
					unsure={null}
				/>
				{proposed !== undefined ? (
					<ul className={styles.list}>
						{proposed.lines.map((line) => (
							<li key={line}>{line}</li>
						))}
					</ul>
				) : (
					<ChecksField
						label={say("trials.setup.cues")}
						hint={say("trials.setup.cuesHint", {
							min: String(CUES_IN_TRIAL.min),
							max: String(CUES_IN_TRIAL.max),
						})}
						values={own}
						options={cues.map(({ id, name, figures }) => ({
							value: id,
							label: name,
							hint: figures,
						}))}
						onChange={changed(setOwn)}
					/>
				)}
			</Section>
			<Section title={say("trials.setup.how")} card>
				<Columns minRem={20}>
					<ChoiceField
						label={say("trials.setup.shots")}
						value={shots}
						options={SHOTS_EACH.map((value) => ({ value, label: value }))}
						onChange={changed(setShots)}
						unsure={
							proposed === undefined
								? say("trials.setup.usual")
								: say("trials.setup.proposed", {
										shots: String(proposed.shotsEach),
									})
						}
					/>
					<ChoiceField
						label={say("trials.setup.turn")}
						hint={say("trials.setup.turnHint")}
						value={perTurn}
						options={PER_TURN.map((value) => ({ value, label: value }))}
						onChange={changed(setPerTurn)}
						unsure={null}
					/>
					<ChoiceField
						label={say("trials.setup.same")}
						hint={say("trials.setup.sameHint")}
						value={pairs}
						options={[
							{ value: "yes", label: say("trials.setup.yes") },
							{ value: "no", label: say("trials.setup.asTheyLie") },
						]}
						onChange={changed(setPairs)}
						unsure={null}
					/>
					<ChoiceField
						label={say("trials.setup.hide")}
						hint={say("trials.setup.hideHint")}
						value={hidden}
						options={[
							{ value: "yes", label: say("trials.setup.yes") },
							{ value: "no", label: say("trials.setup.no") },
						]}
						onChange={changed(setHidden)}
						unsure={null}
					/>
				</Columns>
				<p aria-live="polite">
					{unbalanced
						? say("trials.setup.uneven", {
								sentence: makes,
								rounds: String(roundsToBalance(Math.max(cueIds.length, 2))),
							})
						: makes}
				</p>
				{messages.length > 0 && (
					<Notice kind="error" title={say("trials.setup.notStarted")} live>
						{messages.map((message) => (
							<p key={message}>{message}</p>
						))}
					</Notice>
				)}
				<Actions>
					<Button look="main" wide busy={isBusy} onClick={start}>
						{say("trials.setup.begin")}
					</Button>
				</Actions>
			</Section>
		</Stack>
	);
}
