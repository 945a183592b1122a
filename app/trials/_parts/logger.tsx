"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { Button, LinkButton } from "@/app/_ui/button";
import { Dialog, DialogClose } from "@/app/_ui/dialog";
import { Notice } from "@/app/_ui/notice";
import { Actions } from "@/app/_ui/section";
import type { TrialPlan } from "@/lib/forms/trial";
import { shotsPlanned, slotAt } from "@/lib/trial/order";
import { end } from "../actions";
import { LastShot } from "./last-shot";
import type { LoggedShot } from "./pending";
import styles from "./trial.module.css";
import { type KeepState, useShots } from "./use-shots";

const STATE_WORDS: Readonly<Record<KeepState, string>> = {
	saved: "All shots saved",
	saving: "Saving…",
	"on-device": "Kept on this device; sent as soon as the server answers",
	unkept:
		"Not saved: neither the server nor this device’s storage takes the shots. Keep this page open",
};

const OUTCOMES = [
	{ label: "Pot", isPotted: true, look: styles.pot },
	{ label: "Miss", isPotted: false, look: styles.miss },
] as const;

/** A second press sooner than any second shot can be played is the same press. */
const DOUBLE_TAP_MS = 700;

/** One press a shot: pot or miss, large enough for a dim room. Line and position follow if wanted. */
export function Logger({
	trialId,
	trialNumber,
	plan,
	server,
}: {
	trialId: string;
	trialNumber: number;
	plan: TrialPlan;
	server: readonly LoggedShot[];
}) {
	const router = useRouter();
	const {
		shots,
		state,
		refusedCount,
		hasEnded,
		isDamaged,
		log,
		note,
		takeBack,
		flush,
	} = useShots({ trialId, plan, server });
	const pressed = useRef(Number.NEGATIVE_INFINITY);
	const [isEnding, setEnding] = useState(false);
	const [failed, setFailed] = useState(false);
	const planned = shotsPlanned(plan);
	const slot = slotAt(plan, shots.length);
	const last = shots.at(-1);

	const press = (isPotted: boolean, at: number) => {
		if (at - pressed.current < DOUBLE_TAP_MS) return;
		pressed.current = at;
		log(isPotted);
	};
	const finish = async () => {
		setEnding(true);
		setFailed(false);
		try {
			if (!(await flush())) throw new Error("shots are still on the device");
			await end(trialId);
			router.push(`/trials/${trialNumber}/results`);
		} catch {
			setFailed(true);
			setEnding(false);
		}
	};

	return (
		<div className={styles.desk}>
			{isDamaged && (
				<Notice
					kind="caution"
					title="Shots kept on this device could not be read"
				>
					The shots shown are the ones the server had.
				</Notice>
			)}
			{refusedCount > 0 && (
				<Notice kind="caution" title="Another device logs this trial too" live>
					{refusedCount === 1
						? "A press of this device was not taken."
						: `${refusedCount} presses of this device were not taken.`}{" "}
					The shots shown are the ones that stand.
				</Notice>
			)}
			{slot !== null && !hasEnded ? (
				<>
					<NextCue
						plan={plan}
						letter={slot.letter}
						before={last?.letter ?? null}
						words={`Shot ${shots.length + 1} of ${planned}`}
					/>
					<div className={styles.outcome}>
						{OUTCOMES.map(({ label, isPotted, look }) => (
							<button
								key={label}
								type="button"
								className={`${styles.big} ${look}`}
								onClick={(event) => press(isPotted, event.timeStamp)}
								// A key held down is one press.
								onKeyDown={(event) => {
									if (event.repeat) event.preventDefault();
								}}
							>
								{label}
							</button>
						))}
					</div>
				</>
			) : (
				<Notice
					kind="done"
					title={hasEnded ? "The trial has ended" : "All planned shots are in"}
				>
					{hasEnded
						? "No further shot is taken."
						: "End the trial to see what it says."}
				</Notice>
			)}
			<progress
				className={styles.progress}
				value={shots.length}
				max={planned}
				aria-label="Shots logged"
			/>
			{last !== undefined && !hasEnded && (
				<LastShot
					shot={last}
					name={nameOf(plan, last.letter)}
					onNote={note}
					onUndo={() => {
						pressed.current = Number.NEGATIVE_INFINITY;
						takeBack();
					}}
				/>
			)}
			<p className={styles.state} role="status">
				{shots.length} of {planned} logged. {STATE_WORDS[state]}.
			</p>
			{failed && (
				<Notice kind="error" title="Not ended" live>
					The server did not answer. The shots are kept; end it again when it is
					back.
				</Notice>
			)}
			<Actions>
				{hasEnded ? (
					<LinkButton look="main" href={`/trials/${trialNumber}/results`}>
						See the results
					</LinkButton>
				) : slot === null ? (
					<Button look="main" wide busy={isEnding} onClick={finish}>
						End the trial and see the results
					</Button>
				) : (
					<Dialog
						trigger={<Button busy={isEnding}>End the trial</Button>}
						title="End the trial now?"
						description={`${shots.length} of ${planned} planned shots are in. No shot can be added afterwards${plan.isHidden ? ", and the player learns which cue was which" : ""}.`}
					>
						<Actions>
							<DialogClose render={<Button>Go on shooting</Button>} />
							<DialogClose
								render={
									<Button look="risky" onClick={finish}>
										End it
									</Button>
								}
							/>
						</Actions>
					</Dialog>
				)}
				{!plan.isHidden && shots.length > 0 && !hasEnded && (
					<LinkButton look="quiet" href={`/trials/${trialNumber}/results`}>
						Results so far
					</LinkButton>
				)}
			</Actions>
			{plan.isHidden && !hasEnded && <Key plan={plan} />}
		</div>
	);
}

const nameOf = (plan: TrialPlan, letter: string): string =>
	plan.isHidden
		? `Cue ${letter}`
		: (plan.cues.find((cue) => cue.letter === letter)?.name ?? `Cue ${letter}`);

function NextCue({
	plan,
	letter,
	before,
	words,
}: {
	plan: TrialPlan;
	letter: string;
	/** The cue of the shot before; null at the first. */
	before: string | null;
	words: string;
}) {
	const isChange = before !== null && before !== letter;
	return (
		<div className={styles.next} aria-live="polite">
			<p className={styles.count}>{words}</p>
			<p className={styles.cue} data-change={isChange || undefined}>
				{/* Always a line, so that the buttons below never move under a thumb. */}
				<span className={styles.change}>
					{before === null
						? "Begin with "
						: isChange
							? "Change to "
							: "Stay with "}
				</span>
				{nameOf(plan, letter)}
			</p>
		</div>
	);
}

/** Which letter is which cue, for the one who hands them over. */
function Key({ plan }: { plan: TrialPlan }) {
	return (
		<details className={styles.key}>
			<summary>For the coach only: which cue is which</summary>
			<ul>
				{[...plan.cues]
					.sort((one, other) => (one.letter < other.letter ? -1 : 1))
					.map(({ letter, name }) => (
						<li key={letter}>
							Cue {letter}: {name}
						</li>
					))}
			</ul>
		</details>
	);
}
