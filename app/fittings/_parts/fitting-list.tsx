import Link from "next/link";
import { LinkButton } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Invented } from "@/app/_ui/source-note";
import { formatDay } from "@/lib/present/dates";
import type { FittingSummary } from "@/lib/records/fittings/data";

const COLUMNS = [
	{ key: "player", label: "Player" },
	{ key: "number", label: "Fitting", numeric: true },
	{ key: "changed", label: "Last changed" },
	{ key: "spec", label: "Spec" },
] as const;

/** Fittings as a table that leads into each. */
export async function FittingList({
	fittings,
	search = "",
}: {
	fittings: readonly FittingSummary[];
	search?: string;
}) {
	const reader = await readReader();
	if (fittings.length === 0)
		return search === "" ? (
			<EmptyState
				title="No fitting yet"
				action={
					<LinkButton look="main" href="/fittings/new">
						Start a fitting
					</LinkButton>
				}
			/>
		) : (
			<EmptyState
				title={`No fitting of a player called “${search}”`}
				action={<LinkButton href="/fittings">Show all</LinkButton>}
			/>
		);
	return (
		<DataTable
			caption="Fittings"
			captionHidden
			columns={COLUMNS}
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
						"none yet"
					) : (
						<Link href={`/specs/${spec.number}/${spec.latestRevision}`}>
							Spec {spec.number}, revision {spec.latestRevision}
						</Link>
					),
			}))}
		/>
	);
}
