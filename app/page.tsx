import Link from "next/link";
import { Suspense } from "react";
import { Listening } from "@/app/_ui/listening";
import { listFittings } from "@/lib/records/fittings/loaders";
import { Busy } from "./_ui/busy";
import { LinkButton } from "./_ui/button";
import { CueDrawing } from "./_ui/cue-drawing";
import { readReader } from "./_ui/preferences/loaders";
import { PageHead, Section, Stack } from "./_ui/section";
import { Invented } from "./_ui/source-note";
import { knownPlayers } from "./coaching/_parts/loaders";
import { StartPanel } from "./coaching/_parts/start-panel";
import { FittingList } from "./fittings/_parts/fitting-list";

const RECENT = 5;

export default async function Home() {
	const reader = await readReader();
	const { say } = reader;
	return (
		<Stack>
			<PageHead
				title={say("home.title")}
				lead={say("home.lead")}
				actions={
					<>
						<LinkButton look="main" href="/fittings/new" wide>
							{say("home.start")}
						</LinkButton>
						<LinkButton href="/build" wide>
							{say("home.buildOwn")}
						</LinkButton>
					</>
				}
			/>
			<Suspense fallback={<Busy />}>
				<StartHere />
			</Suspense>
			<CueDrawing reader={reader} />
			<Section
				title={say("home.recent")}
				lead={say.rich("home.recentLead", { invented: () => <Invented /> })}
			>
				<Suspense fallback={<Busy label={say("home.fetching")} />}>
					<RecentFittings />
				</Suspense>
			</Section>
			<p>
				{say.rich("home.ways", {
					sources: (text) => <Link href="/sources">{text}</Link>,
					trials: (text) => <Link href="/trials">{text}</Link>,
					gauge: (text) => <a href="/gauges/ring">{text}</a>,
				})}
			</p>
		</Stack>
	);
}

async function StartHere() {
	return (
		<Listening>
			<StartPanel players={await knownPlayers()} />
		</Listening>
	);
}

async function RecentFittings() {
	const { say } = await readReader();
	const { fittings, next } = await listFittings({ limit: RECENT });
	return (
		<>
			<FittingList fittings={fittings} />
			{next !== null && (
				<div>
					<LinkButton href="/fittings">{say("home.all")}</LinkButton>
				</div>
			)}
		</>
	);
}
