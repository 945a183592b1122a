import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { PageHead } from "@/app/_ui/section";
import { listFittings } from "@/lib/records/fittings/loaders";
import { SearchForm } from "../_ui/search-form";
import { FittingList } from "./_parts/fitting-list";

export const metadata: Metadata = { title: "Fittings" };

const one = (value: string | string[] | undefined) =>
	Array.isArray(value) ? value[0] : value;

export default async function FittingsPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const { player, after } = await searchParams;
	const search = one(player)?.slice(0, 120) ?? "";
	const { fittings, next } = await listFittings({ search, after: one(after) });
	return (
		<>
			<PageHead
				title="Fittings"
				lead="Last changed first."
				actions={
					<LinkButton look="main" href="/fittings/new">
						Start a fitting
					</LinkButton>
				}
			/>
			<SearchForm
				action="/fittings"
				name="player"
				label="Search by player"
				value={search}
			/>
			<FittingList fittings={fittings} search={search} />
			{next !== null && (
				<LinkButton
					href={{
						pathname: "/fittings",
						query: { ...(search && { player: search }), after: next },
					}}
				>
					Older fittings
				</LinkButton>
			)}
		</>
	);
}
