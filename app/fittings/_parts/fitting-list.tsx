import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Invented } from "@/app/_ui/source-note";
import { formatDay } from "@/lib/present/dates";
import type { FittingSummary } from "@/lib/records/fittings/data";

/** Fittings as a table that leads into each. */
export async function FittingList({
	fittings,
	search = "",
}: {
	fittings: readonly FittingSummary[];
	search?: string;
}) {
	const reader = await readReader();
	const { say } = reader;
	if (fittings.length === 0)
		return search === "" ? (
			<EmptyState
				title={say("fitting.list.none")}
				action={
					<LinkButton look="main" href="/fittings/new">
						{say("fitting.start.title")}
					</LinkButton>
				}
			/>
		) : (
			<EmptyState
				title={say("fitting.list.noneCalled", { name: search })}
				action={
					<LinkButton href="/fittings">{say("fitting.list.all")}</LinkButton>
				}
			/>
		);
	return (
		<DataTable
			caption={say("fitting.list.title")}
			captionHidden
			columns={[
				{ key: "player", label: say("fitting.list.player") },
				{ key: "number", label: say("fitting.list.number"), numeric: true },
				{ key: "changed", label: say("fitting.list.changed") },
				{ key: "spec", label: say("fitting.list.spec") },
			]}
			rows={fittings.map(({ number, player, isDemo, updatedAt, spec }) => ({
				player: (
					<>
						<Link
							href={`/fittings/${number}/${spec === null ? "player" : "recommendation"}`}
						>
							{player.name}
						</Link>{" "}
						{isDemo && <Invented />}
					</>
				),
				number,
				changed: formatDay(updatedAt, reader),
				spec:
					spec === null ? (
						say("fitting.list.noSpec")
					) : (
						<Link href={`/specs/${spec.number}/${spec.latestRevision}`}>
							{say("fitting.list.specOf", {
								number: String(spec.number),
								revision: String(spec.latestRevision),
							})}
						</Link>
					),
			}))}
		/>
	);
}
