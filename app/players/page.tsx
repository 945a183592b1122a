import type { Metadata } from "next";
import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { readReader } from "@/app/_ui/preferences/loaders";
import { SearchForm } from "@/app/_ui/search-form";
import { PageHead } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { formatDay } from "@/lib/present/dates";
import { handLabel } from "@/lib/present/labels";
import { listPlayers } from "@/lib/records/players/loaders";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("players.title") };
}

const COLUMNS = ["name", "hand", "changed"] as const;

const one = (value: string | string[] | undefined) =>
	Array.isArray(value) ? value[0] : value;

export default async function PlayersPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const reader = await readReader();
	const { say } = reader;
	const { name, after } = await searchParams;
	const search = one(name)?.slice(0, 120) ?? "";
	const { players, next } = await listPlayers({ search, after: one(after) });
	return (
		<>
			<PageHead
				title={say("players.title")}
				actions={
					<LinkButton look="main" href="/fittings/new">
						{say("home.start")}
					</LinkButton>
				}
			/>
			<SearchForm
				action="/players"
				name="name"
				label={say("players.searchLabel")}
				value={search}
			/>
			{players.length === 0 ? (
				<EmptyState
					title={
						search === ""
							? say("players.none")
							: say("players.noneCalled", { name: search })
					}
				/>
			) : (
				<DataTable
					caption={say("players.title")}
					captionHidden
					columns={COLUMNS.map((key) => ({
						key,
						label: say(`players.${key}`),
					}))}
					rows={players.map((player) => ({
						name: (
							<>
								<Link href={`/players/${player.id}`}>{player.name}</Link>{" "}
								{player.isDemo && <Invented />}
							</>
						),
						hand:
							player.hand === null
								? say("players.notSaid")
								: handLabel(player.hand, reader),
						changed: formatDay(player.updatedAt, reader),
					}))}
				/>
			)}
			{next !== null && (
				<LinkButton
					href={{
						pathname: "/players",
						query: { ...(search && { name: search }), after: next },
					}}
				>
					{say("players.more")}
				</LinkButton>
			)}
		</>
	);
}
