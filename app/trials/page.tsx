import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { readReader } from "@/app/_ui/preferences/loaders";
import { SearchForm } from "@/app/_ui/search-form";
import { PageHead } from "@/app/_ui/section";
import { getPlayer } from "@/lib/records/players/loaders";
import { listTrials } from "@/lib/records/trials/loaders";
import { TrialList } from "./_parts/trial-list";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("trials.title") };
}

const one = (value: string | string[] | undefined) =>
	Array.isArray(value) ? value[0] : value;

/** Trials of everybody, of one player, or of players found by name. */
export default async function TrialsPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const { say } = await readReader();
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
				title={
					player === null
						? say("trials.title")
						: say("trials.of", { name: player.name })
				}
				lead={say("trials.lead")}
				actions={
					<>
						<LinkButton
							look="main"
							href={{
								pathname: "/trials/new",
								query: player && { player: player.id },
							}}
						>
							{say("trials.start")}
						</LinkButton>
						<LinkButton href="/trials/rack">{say("trials.rack")}</LinkButton>
					</>
				}
			/>
			{player === null && (
				<SearchForm
					action="/trials"
					name="name"
					label={say("trials.search")}
					value={search}
				/>
			)}
			{trials.length === 0 ? (
				<EmptyState
					title={
						search === ""
							? say("trials.none")
							: say("trials.noneCalled", { name: search })
					}
				/>
			) : (
				<TrialList trials={trials} />
			)}
			{next !== null && (
				<LinkButton
					href={{ pathname: "/trials", query: { ...query, after: next } }}
				>
					{say("trials.older")}
				</LinkButton>
			)}
		</>
	);
}
