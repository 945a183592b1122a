import type { Metadata } from "next";
import { PageHead } from "@/app/_ui/section";
import { benchFromQuery } from "@/lib/forms/cue-bench";
import { currentSettings } from "@/lib/records/settings/loaders";
import { densitiesOf } from "@/lib/workshop/stock";
import { CueBench } from "./_parts/cue-bench";

export const metadata: Metadata = { title: "Cue on its own" };

export default async function CuesPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	return (
		<>
			<PageHead
				title="Cue on its own"
				lead="Choose a cue, without a player, and see what it looks like, weighs, bends like and does to the ball. What is left open takes the usual figure; the address keeps what is chosen."
			/>
			<CueBench
				initial={benchFromQuery(await searchParams)}
				densities={densitiesOf((await currentSettings()).stock)}
			/>
		</>
	);
}
