import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { SearchForm } from "@/app/_ui/search-form";
import { PageHead } from "@/app/_ui/section";
import { getPlayer } from "@/lib/records/players/loaders";
import { listTrials } from "@/lib/records/trials/loaders";
import { TrialList } from "./_parts/trial-list";

export const metadata: Metadata = { title: "Trials" };

const one = (value: string | string[] | undefined) =>
	Array.isArray(value) ? value[0] : value;

/** Trials of everybody, of one player, or of players found by name. */
export default async function TrialsPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const { player: playerId, name, after } = await searchParams;
	const search = one(name)?.slice(0, 120) ?? "";
	const id = one(playerId);
	const player = id === undefined ? null : await getPlayer(id);
	const { trials, next } = await listTrials({
		search,
		playerId: player?.id,
		after: one(after),
	});
	const query = {
		...(player && { player: player.id }),
		...(search && { name: search }),
	};
	return (
		<>
			<PageHead
				title={player === null ? "Trials" : `Trials of ${player.name}`}
				lead="Two cues at the table, shot by shot, to see what is luck and what is the cue."
				actions={
					<>
						<LinkButton
							look="main"
							href={{
								pathname: "/trials/new",
								query: player && { player: player.id },
							}}
						>
							Start a trial
						</LinkButton>
						<LinkButton href="/trials/rack">The rack of cues</LinkButton>
					</>
				}
			/>
			{player === null && (
				<SearchForm
					action="/trials"
					name="name"
					label="Search by player"
					value={search}
				/>
			)}
			{trials.length === 0 ? (
				<EmptyState
					title={
						search === ""
							? "No trial yet"
							: `No trial of a player called “${search}”`
					}
				/>
			) : (
				<TrialList trials={trials} />
			)}
			{next !== null && (
				<LinkButton
					href={{ pathname: "/trials", query: { ...query, after: next } }}
				>
					Older trials
				</LinkButton>
			)}
		</>
	);
}
