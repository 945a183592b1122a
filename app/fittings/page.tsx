import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/button";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead } from "@/app/_ui/section";
import { listFittings } from "@/lib/records/fittings/loaders";
import { SearchForm } from "../_ui/search-form";
import { FittingList } from "./_parts/fitting-list";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("fitting.list.title") };
}

const one = (value: string | string[] | undefined) =>
	Array.isArray(value) ? value[0] : value;

export default async function FittingsPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const { say } = await readReader();
	const { player, after } = await searchParams;
	const search = one(player)?.slice(0, 120) ?? "";
	const { fittings, next } = await listFittings({ search, after: one(after) });
	return (
		<>
			<PageHead
				title={say("fitting.list.title")}
				lead={say("fitting.list.lead")}
				actions={
					<LinkButton look="main" href="/fittings/new">
						{say("fitting.start.title")}
					</LinkButton>
				}
			/>
			<SearchForm
				action="/fittings"
				name="player"
				label={say("fitting.list.search")}
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
					{say("fitting.list.older")}
				</LinkButton>
			)}
		</>
	);
}
