import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { LinkButton } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { Listening } from "@/app/_ui/listening";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { Columns, PageHead, Section } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { RefitButton } from "@/app/fittings/_parts/refit-button";
import { answersSchema, readAnswers } from "@/lib/forms/answers";
import { remeasureDue } from "@/lib/player/remeasure";
import { ageWords } from "@/lib/present/players";
import { remeasureView, timelineRow } from "@/lib/present/timeline-view";
import { MAX_PLAYER_NOTE_LENGTH } from "@/lib/records/diary/data";
import { latestFittingOf, listDiary } from "@/lib/records/diary/loaders";
import { getPlayer } from "@/lib/records/players/loaders";
import { today } from "@/lib/records/settings/loaders";
import { NoteForm } from "./_parts/note-form";
import { RemeasureForm } from "./_parts/remeasure-form";
import { TimelineList } from "./_parts/timeline-list";

interface Params {
	params: Promise<{ id: string }>;
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Params): Promise<Metadata> {
	const { say } = await readReader();
	return {
		title: (await getPlayer((await params).id))?.name ?? say("players.player"),
	};
}

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** Date of birth and age as the last fitting has them. */
function bornIn(stored: unknown): {
	bornOn: string | null;
	ageYears: number | undefined;
} {
	const answers = answersSchema.parse(stored);
	const { birthDate } = answers;
	return {
		bornOn:
			typeof birthDate === "string" &&
			ISO_DAY.test(birthDate) &&
			!Number.isNaN(Date.parse(birthDate))
				? birthDate
				: null,
		ageYears: readAnswers(answers).input.player.ageYears,
	};
}

/** What happened to a player so far, when to measure again, and the way to fit again. */
export default async function PlayerPage({ params, searchParams }: Params) {
	const player = await getPlayer((await params).id);
	if (player === null) notFound();
	const reader = await readReader();
	const { say } = reader;
	const { after } = await searchParams;
	const diary = await listDiary({
		playerId: player.id,
		after: Array.isArray(after) ? after[0] : after,
	});
	const latest = await latestFittingOf(player.id);
	const born = latest === null ? null : bornIn(latest.answers);
	const due = remeasureView(
		remeasureDue({
			setOn: player.remeasureOn,
			measuredOn: latest && today(latest.createdAt),
			bornOn: player.birthDate ?? born?.bornOn ?? null,
			answeredAgeYears: born?.ageYears,
			today: today(),
		}),
		reader,
	);
	return (
		<>
			<PageHead
				title={
					<>
						{player.name} {player.isDemo && <Invented />}
					</>
				}
				lead={
					player.birthDate === null
						? undefined
						: ageWords(player.birthDate, new Date(), reader)
				}
				actions={
					latest === null ? (
						<LinkButton look="main" href={`/fittings/new?player=${player.id}`}>
							{say("home.start")}
						</LinkButton>
					) : (
						<>
							<RefitButton
								playerId={player.id}
								fittingId={latest.id}
								look="main"
							>
								{say("players.refit", { number: String(latest.number) })}
							</RefitButton>
							<LinkButton href={`/fittings/new?player=${player.id}`}>
								{say("players.afresh")}
							</LinkButton>
							<LinkButton href={`/players/${player.id}/compare`}>
								{say("timeline.compare")}
							</LinkButton>
						</>
					)
				}
			/>
			<Columns>
				<Section card title={say("timeline.measureAgain")}>
					{due.isOverdue ? (
						<Notice kind="caution" title={due.text}>
							{due.because}
						</Notice>
					) : (
						<p>
							{due.text} {due.because}
						</p>
					)}
					<Listening>
						<RemeasureForm
							playerId={player.id}
							revision={player.revision}
							remeasureOn={player.remeasureOn}
						/>
					</Listening>
				</Section>
				<Section card title={say("timeline.noteTitle")}>
					<Listening>
						<NoteForm
							playerId={player.id}
							today={today()}
							maxLength={MAX_PLAYER_NOTE_LENGTH}
						/>
					</Listening>
				</Section>
			</Columns>
			<Section
				title={say("timeline.title")}
				lead={say("timeline.lead")}
				actions={
					<LinkButton href={`/trials?player=${player.id}`}>
						{say("players.trialsOf", { name: player.name })}
					</LinkButton>
				}
			>
				{diary.entries.length === 0 ? (
					<EmptyState title={say("timeline.empty")} />
				) : (
					<TimelineList
						playerId={player.id}
						rows={diary.entries.map((entry) => timelineRow(entry, reader))}
					/>
				)}
				<div>
					{after !== undefined && (
						<LinkButton href={`/players/${player.id}`}>
							{say("timeline.newest")}
						</LinkButton>
					)}{" "}
					{diary.next !== null && (
						<LinkButton
							href={{
								pathname: `/players/${player.id}`,
								query: { after: diary.next },
							}}
						>
							{say("timeline.older")}
						</LinkButton>
					)}
				</div>
			</Section>
		</>
	);
}
