import type { Metadata } from "next";
import { PageHead } from "@/app/_ui/section";
import { ageWords } from "@/lib/present/players";
import { listPlayers } from "@/lib/records/players/loaders";
import { StartFitting } from "../_parts/start-fitting";

export const metadata: Metadata = { title: "Start a fitting" };

/** Enough to pick from on the device; a longer list is searched by typing the whole name. */
const OFFERED = 200;

export default async function NewFittingPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const { player } = await searchParams;
	const { players } = await listPlayers({ limit: OFFERED });
	const entries = players.map(({ id, name, birthDate, isDemo }) => ({
		id,
		label: name,
		detail:
			[birthDate && ageWords(birthDate, new Date()), isDemo && "invented"]
				.filter(Boolean)
				.join(", ") || undefined,
	}));
	return (
		<>
			<PageHead
				title="Start a fitting"
				lead="Pick the player, or type a new name."
			/>
			<StartFitting
				entries={entries}
				chosenId={typeof player === "string" ? player : null}
			/>
		</>
	);
}
