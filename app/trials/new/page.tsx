import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead } from "@/app/_ui/section";
import { refusalView } from "@/lib/present/notices";
import { ageWords } from "@/lib/present/players";
import { figuresLine, proposalWords } from "@/lib/present/trial-words";
import { getPlayer, listPlayers } from "@/lib/records/players/loaders";
import { playerTrials } from "../_parts/loaders";
import { PickPlayer } from "../_parts/pick-player";
import { TrialSetup } from "../_parts/trial-setup";

export const metadata: Metadata = { title: "Start a trial" };

/** Enough to pick from on the device. */
const OFFERED = 200;

/** First the player; then the pair that teaches most, or a choice of the coach's own. */
export default async function NewTrialPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const reader = await readReader();
	const { player: asked } = await searchParams;
	const player = typeof asked === "string" ? await getPlayer(asked) : null;
	if (player === null) {
		const { players } = await listPlayers({ limit: OFFERED });
		return (
			<>
				<PageHead title="Start a trial" lead="Pick the player." />
				<PickPlayer
					entries={players.map(({ id, name, birthDate, isDemo }) => ({
						id,
						label: name,
						detail:
							[
								birthDate && ageWords(birthDate, new Date(), reader),
								isDemo && "invented",
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
				<PageHead title={`A trial for ${player.name}`} />
				<EmptyState
					title={
						rack.length < 2
							? "A trial needs at least two cues on the rack"
							: "The trials so far cannot be read"
					}
					action={
						<LinkButton look="main" href="/trials/rack">
							To the rack of cues
						</LinkButton>
					}
				>
					{rack.length < 2
						? `There ${rack.length === 1 ? "is one" : "is none"} now.`
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
				title={`A trial for ${player.name}`}
				lead="Fair because the order is balanced and dealt by chance. Decide the number of shots now, not when the result looks good."
			/>
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
		</>
	);
}
