import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { Listening } from "@/app/_ui/listening";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead } from "@/app/_ui/section";
import { refusalView } from "@/lib/present/notices";
import { ageWords } from "@/lib/present/players";
import { figuresLine } from "@/lib/present/trial-figures";
import { proposalWords } from "@/lib/present/trial-offers";
import { getPlayer, listPlayers } from "@/lib/records/players/loaders";
import { playerTrials } from "../_parts/loaders";
import { PickPlayer } from "../_parts/pick-player";
import { TrialSetup } from "../_parts/trial-setup";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("trials.start") };
}

/** Enough to pick from on the device. */
const OFFERED = 200;

/** First the player; then the pair that teaches most, or a choice of the coach's own. */
export default async function NewTrialPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const reader = await readReader();
	const { say } = reader;
	const { player: asked } = await searchParams;
	const player = typeof asked === "string" ? await getPlayer(asked) : null;
	if (player === null) {
		const { players } = await listPlayers({ limit: OFFERED });
		return (
			<>
				<PageHead title={say("trials.start")} lead={say("trials.pickLead")} />
				<PickPlayer
					entries={players.map(({ id, name, birthDate, isDemo }) => ({
						id,
						label: name,
						detail:
							[
								birthDate && ageWords(birthDate, new Date(), reader),
								isDemo && say("players.inventedDetail"),
							]
								.filter(Boolean)
								.join(", ") || undefined,
					}))}
				/>
			</>
		);
	}
	const { cues, answer } = await playerTrials(player.id);
	const rack = cues.filter(({ isAvailable }) => isAvailable !== false);
	if (!answer.ok)
		return (
			<>
				<PageHead title={say("trials.forPlayer", { name: player.name })} />
				<EmptyState
					title={
						rack.length < 2 ? say("trials.needsTwo") : say("trials.unreadable")
					}
					action={
						<LinkButton look="main" href="/trials/rack">
							{say("trials.toRack")}
						</LinkButton>
					}
				>
					{rack.length < 2
						? say(rack.length === 1 ? "trials.oneNow" : "trials.noneNow")
						: answer.refusals
								.map((refusal) => refusalView(refusal, reader).text)
								.join(" ")}
				</EmptyState>
			</>
		);
	const nameOf = (id: string) => cues.find((cue) => cue.id === id)?.name ?? id;
	return (
		<>
			<PageHead
				title={say("trials.forPlayer", { name: player.name })}
				lead={say("trials.fair")}
			/>
			<Listening>
				<TrialSetup
					playerId={player.id}
					cues={rack.map((cue) => ({
						id: cue.id,
						name: cue.name,
						figures: figuresLine(cue, reader),
					}))}
					proposals={answer.value.proposals.slice(0, 3).map((proposal, i) => ({
						cueIds: [...proposal.cueIds],
						shotsEach: proposal.shotsEach,
						...proposalWords(proposal, nameOf, reader, i === 0),
					}))}
				/>
			</Listening>
		</>
	);
}
