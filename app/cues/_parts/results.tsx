"use client";

import { memo, useMemo } from "react";
import { Chart } from "@/app/_ui/charts/chart";
import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { Section, Stack } from "@/app/_ui/section";
import { SourceNote } from "@/app/_ui/source-note";
import type { CueAnswer } from "@/lib/advice/answer-cue";
import type { BenchQuestion } from "@/lib/forms/cue-bench";
import { sourceTitles } from "@/lib/present/advice-view";
import {
	deflectionChart,
	spinChart,
	weightSpeedChart,
} from "@/lib/present/cue-bench-charts";
import {
	bendingFacts,
	inertiaFacts,
	partRows,
	yearView,
} from "@/lib/present/cue-bench-view";
import { grainView } from "@/lib/present/grain-view";
import { ruleLabel } from "@/lib/present/labels";
import { refusalView } from "@/lib/present/notices";
import { CITATIONS } from "@/lib/reference/citations";
import { feltArmMassG } from "@/lib/shot/effort";
import { shotProfile } from "@/lib/shot/profile";
import type { Reader } from "@/lib/words/reader";
import styles from "./cues.module.css";
import { Facts } from "./facts";

interface Asked {
	readonly cue: CueAnswer;
	readonly question: BenchQuestion;
	readonly reader: Reader;
}

/** Everything the models say of the cue, under its picture. Typing does not draw it again. */
export const Results = memo(function Results({ cue, question, reader }: Asked) {
	const parts = useMemo(() => partRows(cue, reader), [cue, reader]);
	const bending = useMemo(() => bendingFacts(cue, reader), [cue, reader]);
	return (
		<Stack>
			<Section title="How it swings">
				<Facts facts={inertiaFacts(cue, reader)} />
			</Section>
			<Section title="What weighs what">
				<DataTable
					caption="Parts from tip to butt"
					captionHidden
					columns={[
						{ key: "part", label: "Part" },
						{ key: "material", label: "Material" },
						{ key: "weight", label: "Weight", numeric: true },
						{
							key: "centre",
							label: "Its centre, from the butt end",
							numeric: true,
						},
					]}
					rows={parts.map((row) => ({ ...row }))}
					narrow="scroll"
				/>
			</Section>
			<Section title="How it bends">
				<Facts facts={bending} />
				<SourceNote
					basis="Computed as a slender bar of glued woods"
					sources={sourceTitles(cue.endMassG.sources, reader)}
				/>
			</Section>
			<OnTheBall cue={cue} question={question} reader={reader} />
			<Grain cue={cue} question={question} reader={reader} />
			<Year cue={cue} question={question} reader={reader} />
			<Rules cue={cue} reader={reader} />
		</Stack>
	);
});

/** A firm ordinary shot. */
const CUE_SPEED_M_PER_S = 2;

function OnTheBall({ cue, question, reader }: Asked) {
	const { gameId } = question;
	const shot = useMemo(
		() =>
			shotProfile({
				gameId,
				cueMassG: cue.mass.massG,
				endMassG: cue.endMassG,
				armMassG: feltArmMassG({}),
				tipDiameterMm: question.cue.tipDiameterMm,
				domeRadiusMm: cue.design.tip.domeRadiusMm,
				cueSpeedMPerS: CUE_SPEED_M_PER_S,
			}),
		[cue, gameId, question.cue.tipDiameterMm],
	);
	return (
		<Section
			title="On the ball"
			lead="An ordinary arm, a leather tip, a centre hit where nothing else is said."
		>
			{shot.ok ? (
				<div className={styles.charts}>
					<Chart
						model={weightSpeedChart({
							profile: shot.value,
							cueMassG: cue.mass.massG.value,
							gameId,
							reader,
						})}
					/>
					<Chart
						model={spinChart({
							profile: shot.value,
							cueSpeedMPerS: CUE_SPEED_M_PER_S,
							gameId,
							reader,
						})}
					/>
					<Chart
						model={deflectionChart({ profile: shot.value, gameId, reader })}
					/>
				</div>
			) : (
				shot.refusals.map((refusal) => (
					<Notice key={refusal.field} kind="error">
						<p>{refusalView(refusal, reader).text}</p>
					</Notice>
				))
			)}
		</Section>
	);
}

function Grain({ cue, question, reader }: Asked) {
	if (cue.grain === null) return null;
	const view = grainView({
		design: cue.design,
		grain: question.grain,
		picture: cue.grain,
		sightTurnDeg: question.sightTurnDeg,
		wantedSpacingMm: question.arrowSpacingMm,
		reader,
	});
	return (
		<Section
			title="Grain arrows and sighting"
			lead="Where flat rings meet the turned surface they make arrows. Rings of a real billet wander: this is where to look, not a promise."
		>
			<ul className={styles.list}>
				{[...view.told, ...view.advice].map((sentence) => (
					<li key={sentence}>{sentence}</li>
				))}
			</ul>
			{view.rows.length > 0 && (
				<DataTable
					caption="Arrows on the shaft, from the tip"
					columns={[
						{ key: "fromTip", label: "From the tip", numeric: true },
						{ key: "fromButt", label: "From the butt end", numeric: true },
						{ key: "face", label: "Face" },
						{ key: "points", label: "Points" },
						{ key: "near", label: "Behind the ferrule" },
					]}
					rows={view.rows.map((row) => ({ ...row }))}
					narrow="scroll"
				/>
			)}
			<SourceNote
				basis="Derived here: planes through a round taper"
				sources={[]}
			/>
		</Section>
	);
}

function Year({ cue, question, reader }: Asked) {
	if (cue.year === null) return null;
	const view = yearView(cue.year, question.seasons, reader);
	const [season] = cue.year.seasons;
	return (
		<Section title="Through the year" lead={view.sentence}>
			<DataTable
				caption="The cue settled in each half of the year"
				captionHidden
				columns={[
					{ key: "name", label: "What" },
					...view.columns.map((label) => ({
						key: label,
						label,
						numeric: true,
					})),
				]}
				rows={view.rows.map(({ name, values }) => ({
					name,
					...Object.fromEntries(
						view.columns.map((column, i) => [column, values[i]]),
					),
				}))}
				narrow="stack"
			/>
			{view.cautions.length > 0 && (
				<Notice kind="caution">
					<ul className={styles.list}>
						{view.cautions.map((caution) => (
							<li key={caution}>{caution}</li>
						))}
					</ul>
				</Notice>
			)}
			<SourceNote
				basis="Equilibrium moisture and shrinkage as published"
				sources={season ? sourceTitles(season.moisturePct.sources, reader) : []}
			/>
		</Section>
	);
}

function Rules({ cue, reader }: { cue: CueAnswer; reader: Reader }) {
	return (
		<Section title="Rules of the game">
			{cue.rules.length === 0 ? (
				<p>No published equipment rule for the cue was found for this game.</p>
			) : (
				<ul className={styles.list}>
					{cue.rules.map(({ rule, ok, source }) => (
						<li key={rule}>
							{ruleLabel(rule, reader)}: {ok ? "kept" : "broken"}.{" "}
							{CITATIONS[source].title}.
						</li>
					))}
				</ul>
			)}
		</Section>
	);
}
