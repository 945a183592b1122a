import type { Metadata } from "next";
import Link from "next/link";
import { Button, LinkButton } from "@/app/_ui/button";
import { type Column, DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import {
	formatTrialFigure,
	TRIAL_FIELD_LABELS,
} from "@/lib/present/trial-words";
import type { RackCueRecord } from "@/lib/records/trials/data";
import { listRack } from "@/lib/records/trials/loaders";
import { TRIAL_FIELDS } from "@/lib/trial/assumptions";
import type { Reader } from "@/lib/words/reader";
import { CueForm } from "../_parts/cue-form";
import { fillWithInvented } from "../actions";

export const metadata: Metadata = { title: "The rack of cues" };

const COLUMNS: readonly Column[] = [
	{ key: "name", label: "Cue" },
	...TRIAL_FIELDS.map((field) => ({
		key: field,
		label: TRIAL_FIELD_LABELS[field],
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
			columns={COLUMNS}
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
	const rack = all.filter(({ retiredAt }) => retiredAt === null);
	const retired = all.filter(({ retiredAt }) => retiredAt !== null);
	return (
		<Stack>
			<PageHead
				title="The rack of cues"
				lead="Cues to try, measured once. The more they differ in one figure at a time, the more a trial teaches."
				actions={
					<LinkButton look="main" href="/trials/new">
						Start a trial
					</LinkButton>
				}
			/>
			{rack.length > 0 ? (
				<Rack caption="Cues on the rack" cues={rack} reader={reader} />
			) : (
				<EmptyState
					title="No cue on the rack yet"
					action={
						all.length === 0 ? (
							<form action={fillWithInvented}>
								<Button type="submit">Fill it with invented cues</Button>
							</form>
						) : undefined
					}
				>
					Add the first below, or look round with cues that do not exist and are
					marked so.
				</EmptyState>
			)}
			<Section title="Add a cue" card>
				<CueForm cue={null} />
			</Section>
			{retired.length > 0 && (
				<Section
					title="Off the rack"
					lead="Not offered for trials; the trials they were in stay."
				>
					<Rack caption="Cues off the rack" cues={retired} reader={reader} />
				</Section>
			)}
		</Stack>
	);
}
