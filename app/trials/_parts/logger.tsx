"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { Button, LinkButton } from "@/app/_ui/button";
import { Dialog, DialogClose } from "@/app/_ui/dialog";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import type { TrialPlan } from "@/lib/forms/trial";
import { shotsPlanned, slotAt } from "@/lib/trial/order";
import type { Say } from "@/lib/words/reader";
import { end } from "../actions";
import { LastShot } from "./last-shot";
import type { LoggedShot } from "./pending";
import styles from "./trial.module.css";
import { useShots } from "./use-shots";

const OUTCOMES = [
	{ outcome: "pot", isPotted: true, look: styles.pot },
	{ outcome: "miss", isPotted: false, look: styles.miss },
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
	const { say } = useReader();
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
				<Notice kind="caution" title={say("trials.log.damaged")}>
					{say("trials.log.damagedAbout")}
				</Notice>
			)}
			{refusedCount > 0 && (
				<Notice kind="caution" title={say("trials.log.other")} live>
					{say("trials.log.refused", { count: refusedCount })}
				</Notice>
			)}
			{slot !== null && !hasEnded ? (
				<>
					<NextCue
						plan={plan}
						letter={slot.letter}
						before={last?.letter ?? null}
						words={say("trials.log.shotOf", {
							shot: String(shots.length + 1),
							planned: String(planned),
						})}
					/>
					<div className={styles.outcome}>
						{OUTCOMES.map(({ outcome, isPotted, look }) => (
							<button
								key={outcome}
								type="button"
								className={`${styles.big} ${look}`}
								onClick={(event) => press(isPotted, event.timeStamp)}
								// A key held down is one press.
								onKeyDown={(event) => {
									if (event.repeat) event.preventDefault();
								}}
							>
								{say(`trials.log.${outcome}`)}
							</button>
						))}
					</div>
				</>
			) : (
				<Notice
					kind="done"
					title={hasEnded ? say("trials.log.ended") : say("trials.log.allIn")}
				>
					{hasEnded ? say("trials.log.noFurther") : say("trials.log.endToSee")}
				</Notice>
			)}
			<progress
				className={styles.progress}
				value={shots.length}
				max={planned}
				aria-label={say("trials.log.progress")}
			/>
			{last !== undefined && !hasEnded && (
				<LastShot
					shot={last}
					name={nameOf(plan, last.letter, say)}
					onNote={note}
					onUndo={() => {
						pressed.current = Number.NEGATIVE_INFINITY;
						takeBack();
					}}
				/>
			)}
			<p className={styles.state} role="status">
				{say("trials.log.logged", {
					shots: String(shots.length),
					planned: String(planned),
					state: say(`trials.log.state.${state}`),
				})}
			</p>
			{failed && (
				<Notice kind="error" title={say("trials.log.notEnded")} live>
					{say("trials.log.notEndedAbout")}
				</Notice>
			)}
			<Actions>
				{hasEnded ? (
					<LinkButton look="main" href={`/trials/${trialNumber}/results`}>
						{say("trials.log.seeResults")}
					</LinkButton>
				) : slot === null ? (
					<Button look="main" wide busy={isEnding} onClick={finish}>
						{say("trials.log.endAndSee")}
					</Button>
				) : (
					<Dialog
						trigger={<Button busy={isEnding}>{say("trials.log.end")}</Button>}
						title={say("trials.log.endNow")}
						description={say("trials.log.endAbout", {
							shots: String(shots.length),
							planned: String(planned),
							hidden: plan.isHidden ? "yes" : "no",
						})}
					>
						<Actions>
							<DialogClose render={<Button>{say("trials.log.goOn")}</Button>} />
							<DialogClose
								render={
									<Button look="risky" onClick={finish}>
										{say("trials.log.endIt")}
									</Button>
								}
							/>
						</Actions>
					</Dialog>
				)}
				{!plan.isHidden && shots.length > 0 && !hasEnded && (
					<LinkButton look="quiet" href={`/trials/${trialNumber}/results`}>
						{say("trials.log.soFar")}
					</LinkButton>
				)}
			</Actions>
			{plan.isHidden && !hasEnded && <Key plan={plan} />}
		</div>
	);
}

const nameOf = (plan: TrialPlan, letter: string, say: Say): string =>
	(plan.isHidden
		? undefined
		: plan.cues.find((cue) => cue.letter === letter)?.name) ??
	say("trials.cue", { letter });

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
	const { say } = useReader();
	const isChange = before !== null && before !== letter;
	return (
		<div className={styles.next} aria-live="polite">
			<p className={styles.count}>{words}</p>
			<p className={styles.cue} data-change={isChange || undefined}>
				{/* Always a line, so that the buttons below never move under a thumb. */}
				<span className={styles.change}>
					{before === null
						? say("trials.log.begin")
						: isChange
							? say("trials.log.change")
							: say("trials.log.stay")}{" "}
				</span>
				{nameOf(plan, letter, say)}
			</p>
		</div>
	);
}

/** Which letter is which cue, for the one who hands them over. */
function Key({ plan }: { plan: TrialPlan }) {
	const { say } = useReader();
	return (
		<details className={styles.key}>
			<summary>{say("trials.log.coachOnly")}</summary>
			<ul>
				{[...plan.cues]
					.sort((one, other) => (one.letter < other.letter ? -1 : 1))
					.map(({ letter, name }) => (
						<li key={letter}>{say("trials.keyOf", { letter, name })}</li>
					))}
			</ul>
		</details>
	);
}
