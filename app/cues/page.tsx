import type { Metadata } from "next";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead } from "@/app/_ui/section";
import { benchFromQuery } from "@/lib/forms/cue-bench";
import { currentSettings } from "@/lib/records/settings/loaders";
import { densitiesOf } from "@/lib/workshop/stock";
import { CueBench } from "./_parts/cue-bench";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("cues.title") };
}

export default async function CuesPage({
	searchParams,
}: {
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const { say } = await readReader();
	return (
		<>
			<PageHead title={say("cues.title")} lead={say("cues.lead")} />
			<CueBench
				initial={benchFromQuery(await searchParams)}
				densities={densitiesOf((await currentSettings()).stock)}
			/>
		</>
	);
}
