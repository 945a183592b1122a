import type { Metadata } from "next";
import Link from "next/link";
import { Button, LinkButton } from "@/app/_ui/button";
import { type Column, DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Listening } from "@/app/_ui/listening";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import {
	formatTrialFigure,
	trialFieldLabel,
} from "@/lib/present/trial-figures";
import type { RackCueRecord } from "@/lib/records/trials/data";
import { listRack } from "@/lib/records/trials/loaders";
import { TRIAL_FIELDS } from "@/lib/trial/assumptions";
import type { Reader } from "@/lib/words/reader";
import { CueForm } from "../_parts/cue-form";
import { fillWithInvented } from "../actions";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("trials.rack") };
}

const columnsFor = (reader: Reader): readonly Column[] => [
	{ key: "name", label: reader.say("trials.table.cue") },
	...TRIAL_FIELDS.map((field) => ({
		key: field,
		label: trialFieldLabel(field, reader),
		numeric: true,
	})),
];

function Rack({
	caption,
	cues,
	reader,
}: {
	caption: string;
	cues: readonly RackCueRecord[];
	reader: Reader;
}) {
	return (
		<DataTable
			caption={caption}
			captionHidden
			columns={columnsFor(reader)}
			rows={cues.map((cue) => ({
				name: (
					<>
						<Link href={`/trials/rack/${cue.id}`}>{cue.name}</Link>{" "}
						{cue.isDemo && <Invented />}
					</>
				),
				...Object.fromEntries(
					TRIAL_FIELDS.map((field) => [
						field,
						formatTrialFigure(field, cue[field], reader),
					]),
				),
			}))}
		/>
	);
}

/** The coach's cues to try, with what is known of each. */
export default async function RackPage() {
	const [all, reader] = await Promise.all([listRack(), readReader()]);
	const { say } = reader;
	const rack = all.filter(({ retiredAt }) => retiredAt === null);
	const retired = all.filter(({ retiredAt }) => retiredAt !== null);
	return (
		<Stack>
			<PageHead
				title={say("trials.rack")}
				lead={say("trials.rackPage.lead")}
				actions={
					<LinkButton look="main" href="/trials/new">
						{say("trials.start")}
					</LinkButton>
				}
			/>
			{rack.length > 0 ? (
				<Rack caption={say("trials.rackPage.on")} cues={rack} reader={reader} />
			) : (
				<EmptyState
					title={say("trials.rackPage.none")}
					action={
						all.length === 0 ? (
							<form action={fillWithInvented}>
								<Button type="submit">{say("trials.rackPage.fill")}</Button>
							</form>
						) : undefined
					}
				>
					{say("trials.rackPage.noneAbout")}
				</EmptyState>
			)}
			<Section title={say("trials.rackPage.add")} card>
				<Listening>
					<CueForm cue={null} />
				</Listening>
			</Section>
			{retired.length > 0 && (
				<Section
					title={say("trials.rackPage.offTitle")}
					lead={say("trials.rackPage.offLead")}
				>
					<Rack
						caption={say("trials.rackPage.off")}
						cues={retired}
						reader={reader}
					/>
				</Section>
			)}
		</Stack>
	);
}
