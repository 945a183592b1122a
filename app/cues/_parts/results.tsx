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
import { citationTitle, ruleLabel } from "@/lib/present/labels";
import { refusalView } from "@/lib/present/notices";
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
	const { say } = reader;
	const parts = useMemo(() => partRows(cue, reader), [cue, reader]);
	const bending = useMemo(() => bendingFacts(cue, reader), [cue, reader]);
	return (
		<Stack>
			<Section title={say("cues.swings")}>
				<Facts facts={inertiaFacts(cue, reader)} />
			</Section>
			<Section title={say("cues.parts")}>
				<DataTable
					caption={say("cues.partsCaption")}
					captionHidden
					columns={[
						{ key: "part", label: say("cues.column.part") },
						{ key: "material", label: say("cues.column.material") },
						{ key: "weight", label: say("cues.column.weight"), numeric: true },
						{
							key: "centre",
							label: say("cues.column.centre"),
							numeric: true,
						},
					]}
					rows={parts.map((row) => ({ ...row }))}
					narrow="scroll"
				/>
			</Section>
			<Section title={say("cues.bends")}>
				<Facts facts={bending} />
				<SourceNote
					basis={say("cues.bendsBasis")}
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
		<Section title={reader.say("cues.ball")} lead={reader.say("cues.ballLead")}>
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
	const { say } = reader;
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
		<Section title={say("cues.grain")} lead={say("cues.grainLead")}>
			<ul className={styles.list}>
				{[...view.told, ...view.advice].map((sentence) => (
					<li key={sentence}>{sentence}</li>
				))}
			</ul>
			{view.rows.length > 0 && (
				<DataTable
					caption={say("cues.arrows")}
					columns={[
						{ key: "fromTip", label: say("cues.arrow.fromTip"), numeric: true },
						{
							key: "fromButt",
							label: say("cues.arrow.fromButt"),
							numeric: true,
						},
						{ key: "face", label: say("cues.arrow.face") },
						{ key: "points", label: say("cues.arrow.points") },
						{ key: "near", label: say("cues.arrow.near") },
					]}
					rows={view.rows.map((row) => ({ ...row }))}
					narrow="scroll"
				/>
			)}
			<SourceNote basis={say("cues.grainBasis")} sources={[]} />
		</Section>
	);
}

function Year({ cue, question, reader }: Asked) {
	const { say } = reader;
	if (cue.year === null) return null;
	const view = yearView(cue.year, question.seasons, reader);
	const [season] = cue.year.seasons;
	return (
		<Section title={say("cues.year")} lead={view.sentence}>
			<DataTable
				caption={say("cues.yearCaption")}
				captionHidden
				columns={[
					{ key: "name", label: say("cues.what") },
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
				basis={say("cues.yearBasis")}
				sources={season ? sourceTitles(season.moisturePct.sources, reader) : []}
			/>
		</Section>
	);
}

function Rules({ cue, reader }: { cue: CueAnswer; reader: Reader }) {
	const { say } = reader;
	return (
		<Section title={say("advice.rules")}>
			{cue.rules.length === 0 ? (
				<p>{say("advice.noRules")}</p>
			) : (
				<ul className={styles.list}>
					{cue.rules.map(({ rule, ok, source }) => (
						<li key={rule}>
							{say("advice.rule", {
								rule: ruleLabel(rule, reader),
								ok: ok ? "yes" : "no",
								source: citationTitle(source, reader),
							})}
						</li>
					))}
				</ul>
			)}
		</Section>
	);
}
