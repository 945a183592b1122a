import Link from "next/link";
import { Suspense } from "react";
import { listFittings } from "@/lib/records/fittings/loaders";
import { Busy } from "./_ui/busy";
import { LinkButton } from "./_ui/button";
import { CueDrawing } from "./_ui/cue-drawing";
import { PageHead, Section, Stack } from "./_ui/section";
import { Invented } from "./_ui/source-note";
import { FittingList } from "./fittings/_parts/fitting-list";

const RECENT = 5;

export default function Home() {
	return (
		<Stack>
			<PageHead
				title="A cue that fits, and that can be built"
				lead="From a player’s body, hand, stance and game to the length, weight, butt and tip of a wooden cue, with the reason and the spread of each number, and the sheet the bench works from."
				actions={
					<LinkButton look="main" href="/fittings/new" wide>
						Start a fitting
					</LinkButton>
				}
			/>
			<CueDrawing />
			<Section
				title="Recent fittings"
				lead={
					<>
						Players marked <Invented /> are demo data and do not exist.
					</>
				}
			>
				<Suspense fallback={<Busy label="Fetching the fittings…" />}>
					<RecentFittings />
				</Suspense>
			</Section>
			<p>
				Every constant, source and assumption behind the numbers is{" "}
				<Link href="/sources">listed openly</Link>. Not sure which of two cues
				suits a player? <Link href="/trials">Try them</Link> and let the shots
				be counted. Reading the ring on paper:{" "}
				<a href="/gauges/ring">print a gauge</a>.
			</p>
		</Stack>
	);
}

async function RecentFittings() {
	const { fittings, next } = await listFittings({ limit: RECENT });
	return (
		<>
			<FittingList fittings={fittings} />
			{next !== null && (
				<div>
					<LinkButton href="/fittings">All fittings</LinkButton>
				</div>
			)}
		</>
	);
}
