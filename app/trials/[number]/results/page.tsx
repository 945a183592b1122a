import type { Metadata } from "next";
import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { formatDay } from "@/lib/present/dates";
import { sessionFrom } from "@/lib/records/trials/question";
import { analyseTrial } from "@/lib/trial/analysis";
import { playerTrials, type TrialParams, trialOf } from "../../_parts/loaders";
import { Method } from "../../_parts/method";
import { NextPair } from "../../_parts/next-pair";
import { CueTable, Findings } from "../../_parts/results";
import { WishOffers } from "../../_parts/wish-offers";

export async function generateMetadata(props: TrialParams): Promise<Metadata> {
	const { number } = await trialOf(props);
	const { say } = await readReader();
	return { title: say("trials.resultsTitle", { number: String(number) }) };
}

/** What one trial says, what all of the player's trials say of the wishes, and what to try next. */
export default async function ResultsPage(props: TrialParams) {
	const trial = await trialOf(props);
	const { number, player, isDemo, plan, shots, endedAt } = trial;
	const reader = await readReader();
	const { say } = reader;
	const isRunning = endedAt === null;
	const areHidden = plan.isHidden && isRunning;
	const nameOf = (letter: string) =>
		(areHidden
			? undefined
			: plan.cues.find((cue) => cue.letter === letter)?.name) ??
		say("trials.cue", { letter });
	const session = sessionFrom(trial, (letter) => letter);
	const letters = plan.cues.map(({ letter }) => letter);
	const analysis = analyseTrial({ ...session, cueIds: letters });
	const whole = await playerTrials(player.id);
	return (
		<Stack>
			<PageHead
				title={
					<>
						{say("trials.results", { number: String(number) })}{" "}
						{isDemo && <Invented />}
					</>
				}
				lead={say.rich("trials.resultsLead", {
					player: () => (
						<Link href={`/players/${player.id}`}>{player.name}</Link>
					),
					date: formatDay(trial.createdAt, reader),
					shots: String(shots.length),
					planned: String(session.plannedShots),
					running: isRunning ? "yes" : "no",
				})}
				actions={
					isRunning ? (
						<LinkButton look="main" href={`/trials/${number}`}>
							{say("trials.backToTable")}
						</LinkButton>
					) : (
						<LinkButton href={`/trials?player=${player.id}`}>
							{say("trials.allOf", { name: player.name })}
						</LinkButton>
					)
				}
			/>
			{areHidden && <Notice title={say("trials.toldLater")} />}
			{shots.length === 0 ? (
				<EmptyState title={say("trials.noShot")} />
			) : (
				<>
					<Findings
						analysis={analysis}
						session={session}
						names={Object.fromEntries(
							letters.map((letter) => [letter, nameOf(letter)]),
						)}
						reader={reader}
					/>
					<CueTable analysis={analysis} nameOf={nameOf} reader={reader} />
				</>
			)}
			{!areHidden && whole.answer.ok && (
				<>
					<Section
						title={say("trials.wishes")}
						lead={say("trials.wishesLead", { name: player.name })}
					>
						<WishOffers
							trial={trial}
							fitting={whole.fitting}
							updates={whole.answer.value.wishUpdates}
							reader={reader}
						/>
					</Section>
					<NextPair
						answer={whole.answer.value}
						cues={whole.cues}
						playerId={player.id}
						reader={reader}
					/>
				</>
			)}
			<Method reader={reader} />
		</Stack>
	);
}
