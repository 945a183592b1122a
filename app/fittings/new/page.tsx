import type { Metadata } from "next";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead } from "@/app/_ui/section";
import { ageWords } from "@/lib/present/players";
import { listPlayers } from "@/lib/records/players/loaders";
import { StartFitting } from "../_parts/start-fitting";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("fitting.start.title") };
}

/** Enough to pick from on the device; a longer list is searched by typing the whole name. */
const OFFERED = 200;

export default async function NewFittingPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const reader = await readReader();
	const { player } = await searchParams;
	const { players } = await listPlayers({ limit: OFFERED });
	const entries = players.map(({ id, name, birthDate, isDemo }) => ({
		id,
		label: name,
		detail:
			[
				birthDate && ageWords(birthDate, new Date(), reader),
				isDemo && reader.say("players.inventedDetail"),
			]
				.filter(Boolean)
				.join(", ") || undefined,
	}));
	return (
		<>
			<PageHead
				title={reader.say("fitting.start.title")}
				lead={reader.say("fitting.start.lead")}
			/>
			<StartFitting
				entries={entries}
				chosenId={typeof player === "string" ? player : null}
			/>
		</>
	);
}
