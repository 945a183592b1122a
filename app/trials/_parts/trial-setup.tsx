"use client";

import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { ChecksField, ChoiceField } from "@/app/_ui/fields/choice-field";
import { Notice } from "@/app/_ui/notice";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Columns, Section, Stack } from "@/app/_ui/section";
import { startTrialSchema } from "@/lib/forms/trial";
import type { ProposalWords } from "@/lib/present/trial-words";
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
				`Cues: ${cueIds.length} chosen; a trial takes ${CUES_IN_TRIAL.min} to ${CUES_IN_TRIAL.max}.`,
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
				setMessages([
					"The server did not answer. Press again: the same trial is never started twice.",
				]);
			}
		});
	};

	return (
		<Stack>
			<Section title="Which cues" card>
				<ChoiceField
					label="The pairs that teach most"
					hint="Computed from the figures of the rack, the advice for this player and the trials so far."
					value={choice}
					options={[
						...proposals.map(({ title }, i) => ({
							value: String(i),
							label: title,
							hint: i === 0 ? "Teaches most" : undefined,
						})),
						{ value: OWN, label: "Choose the cues yourself" },
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
						label="Cues"
						hint={`${CUES_IN_TRIAL.min} to ${CUES_IN_TRIAL.max}; two at a time teach most for the shots made.`}
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
			<Section title="How" card>
				<Columns minRem={20}>
					<ChoiceField
						label="Shots with each cue"
						value={shots}
						options={SHOTS_EACH.map((value) => ({ value, label: value }))}
						onChange={changed(setShots)}
						unsure={
							proposed === undefined
								? "As usual: 20"
								: `As proposed: ${proposed.shotsEach}`
						}
					/>
					<ChoiceField
						label="Shots before the cue is changed"
						hint="Few shots a turn spread warm-up and tiring evenly."
						value={perTurn}
						options={PER_TURN.map((value) => ({ value, label: value }))}
						onChange={changed(setPerTurn)}
						unsure={null}
					/>
					<ChoiceField
						label="The same shots set up for each cue"
						hint="Then cues are compared shot by shot, and fewer shots settle it."
						value={pairs}
						options={[
							{ value: "yes", label: "Yes" },
							{ value: "no", label: "No, as the balls lie" },
						]}
						onChange={changed(setPairs)}
						unsure={null}
					/>
					<ChoiceField
						label="Hide from the player which cue is which"
						hint="Cues go by letters until the trial ends; wrap the butts."
						value={hidden}
						options={[
							{ value: "yes", label: "Yes" },
							{ value: "no", label: "No" },
						]}
						onChange={changed(setHidden)}
						unsure={null}
					/>
				</Columns>
				<p aria-live="polite">
					That makes {rounds} rounds and {all} shots in all.
					{unbalanced &&
						` The order is fully even after every ${roundsToBalance(Math.max(cueIds.length, 2))} rounds; this one comes close.`}
				</p>
				{messages.length > 0 && (
					<Notice kind="error" title="Not started" live>
						{messages.map((message) => (
							<p key={message}>{message}</p>
						))}
					</Notice>
				)}
				<Actions>
					<Button look="main" wide busy={isBusy} onClick={start}>
						Start shooting
					</Button>
				</Actions>
			</Section>
		</Stack>
	);
}
