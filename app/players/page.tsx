import type { Metadata } from "next";
import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { readReader } from "@/app/_ui/preferences/loaders";
import { SearchForm } from "@/app/_ui/search-form";
import { PageHead } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { formatDate } from "@/lib/present/dates";
import { handLabel } from "@/lib/present/labels";
import { listPlayers } from "@/lib/records/players/loaders";

export const metadata: Metadata = { title: "Players" };

const COLUMNS = [
	{ key: "name", label: "Name" },
	{ key: "hand", label: "Playing hand" },
	{ key: "changed", label: "Last changed" },
] as const;

const one = (value: string | string[] | undefined) =>
	Array.isArray(value) ? value[0] : value;

export default async function PlayersPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const reader = await readReader();
	const { name, after } = await searchParams;
	const search = one(name)?.slice(0, 120) ?? "";
	const { players, next } = await listPlayers({ search, after: one(after) });
	return (
		<>
			<PageHead
				title="Players"
				actions={
					<LinkButton look="main" href="/fittings/new">
						Start a fitting
					</LinkButton>
				}
			/>
			<SearchForm
				action="/players"
				name="name"
				label="Search by name"
				value={search}
			/>
			{players.length === 0 ? (
				<EmptyState
					title={
						search === "" ? "No player yet" : `No player called “${search}”`
					}
				/>
			) : (
				<DataTable
					caption="Players"
					captionHidden
					columns={COLUMNS}
					rows={players.map((player) => ({
						name: (
							<>
								<Link href={`/players/${player.id}`}>{player.name}</Link>{" "}
								{player.isDemo && <Invented />}
							</>
						),
						hand:
							player.hand === null
								? "not said"
								: handLabel(player.hand, reader),
						changed: formatDate(player.updatedAt),
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
					More players
				</LinkButton>
			)}
		</>
	);
}
