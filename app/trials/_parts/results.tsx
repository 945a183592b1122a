import { Chart } from "@/app/_ui/charts/chart";
import { type Column, DataTable } from "@/app/_ui/data-table";
import { Notice, type NoticeKind } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { formatNumber, formatPercent } from "@/lib/present/figures";
import { settlingChart } from "@/lib/present/trial-charts";
import {
	chanceWords,
	comparisonWords,
	type NameOf,
	sessionWords,
	trialCautionText,
} from "@/lib/present/trial-words";
import type { CueResult, TrialAnalysis, Verdict } from "@/lib/trial/analysis";
import type { TrialSession } from "@/lib/trial/answer";
import type { Reader } from "@/lib/words/reader";
import styles from "./trial.module.css";

const KINDS: Readonly<Record<Verdict, NoticeKind>> = {
	apart: "done",
	leaning: "notice",
	same: "done",
	open: "notice",
};

/** The verdict in a sentence, the numbers behind it, and what to be careful about. */
export function Findings({
	analysis,
	session,
	names,
	reader,
}: {
	analysis: TrialAnalysis;
	session: TrialSession;
	names: Readonly<Record<string, string>>;
	reader: Reader;
}) {
	const nameOf: NameOf = (id) => names[id] ?? id;
	const chart = settlingChart(session, nameOf, reader);
	const effects = sessionWords(analysis.session, reader);
	return (
		<>
			<Section title="What it says">
				{analysis.comparisons.length === 0 && (
					<p>Only one cue has been shot with so far.</p>
				)}
				{analysis.comparisons.map((comparison) => {
					const { headline, lines } = comparisonWords(
						comparison,
						nameOf,
						reader,
					);
					return (
						<div className={styles.lines} key={comparison.cueIds.join()}>
							<Notice kind={KINDS[comparison.verdict]} title={headline} />
							<ul className={styles.list}>
								{lines.map((line) => (
									<li key={line}>{line}</li>
								))}
							</ul>
						</div>
					);
				})}
				{analysis.cautions.length > 0 && (
					<Notice kind="caution" title="To know before deciding">
						<ul className={styles.list}>
							{analysis.cautions.map((caution) => (
								<li key={caution.code}>{trialCautionText(caution, reader)}</li>
							))}
						</ul>
					</Notice>
				)}
			</Section>
			{chart !== null && <Chart model={chart} heading="h2" />}
			{effects.length > 0 && (
				<Section
					title="The session itself"
					lead="Whatever the cue. The balanced order spreads these over the cues alike."
				>
					<ul className={styles.list}>
						{effects.map((line) => (
							<li key={line}>{line}</li>
						))}
					</ul>
				</Section>
			)}
		</>
	);
}

const share = (value: { low: number; high: number }, reader: Reader): string =>
	`${formatNumber(value.low * 100, reader)}–${formatPercent(value.high, reader)}`;

function columnsFor(cues: readonly CueResult[]): Column[] {
	const hasLine = cues.some(({ line }) => line !== null);
	const hasPosition = cues.some(({ position }) => position !== null);
	return [
		{ key: "name", label: "Cue" },
		{ key: "pots", label: "Potted", numeric: true },
		{ key: "share", label: "Share", numeric: true },
		{ key: "band", label: "Nine in ten", numeric: true },
		...(hasLine
			? [
					{ key: "line", label: "On line", numeric: true },
					{ key: "sides", label: "Left · right", numeric: true },
				]
			: []),
		...(hasPosition
			? [{ key: "position", label: "Position, 0 to 1", numeric: true }]
			: []),
	];
}

/** Every cue of the trial in numbers, and how line and position compare. */
export function CueTable({
	analysis,
	nameOf,
	reader,
}: {
	analysis: TrialAnalysis;
	nameOf: NameOf;
	reader: Reader;
}) {
	const leans = analysis.cues.filter(
		({ line }) => line !== null && line.leanLuckChance < 0.05,
	);
	const compared = analysis.comparisons.flatMap(
		({ cueIds, line, position }) => {
			const [one, other] = cueIds.map(nameOf);
			return [
				...(line === null
					? []
					: [
							`On line, ${one} against ${other}: ${formatNumber(line.value * 100, reader)} in 100 (nine in ten ${formatNumber(line.low * 100, reader)} to ${formatNumber(line.high * 100, reader)}); by luck in ${chanceWords(line.luckChance)}.`,
						]),
				...(position === null
					? []
					: [
							`Position, ${one} against ${other}: ${formatNumber(position.value, reader, 2)} (nine in ten ${formatNumber(position.low, reader, 2)} to ${formatNumber(position.high, reader, 2)}); by luck in ${chanceWords(position.luckChance)}.`,
						]),
			];
		},
	);
	return (
		<Section title="Cue by cue">
			<DataTable
				caption="Cue by cue"
				captionHidden
				columns={columnsFor(analysis.cues)}
				rows={analysis.cues.map(({ cueId, pots, shots, ...cue }) => ({
					name: nameOf(cueId),
					pots: `${pots} of ${shots}`,
					share: shots === 0 ? "—" : formatPercent(pots / shots, reader),
					band: shots === 0 ? "—" : share(cue.share, reader),
					line: cue.line === null ? "—" : `${cue.line.on} of ${cue.line.shots}`,
					sides:
						cue.line === null ? "—" : `${cue.line.left} · ${cue.line.right}`,
					position:
						cue.position === null
							? "—"
							: `${formatNumber(cue.position.value, reader, 2)} (${formatNumber(cue.position.low, reader, 2)}–${formatNumber(cue.position.high, reader, 2)})`,
				}))}
			/>
			{(compared.length > 0 || leans.length > 0) && (
				<ul className={styles.list}>
					{compared.map((line) => (
						<li key={line}>{line}</li>
					))}
					{leans.map(({ cueId, line }) => (
						<li key={cueId}>
							With {nameOf(cueId)} the misses lean to the{" "}
							{(line?.left ?? 0) > (line?.right ?? 0) ? "left" : "right"}; by
							luck in {chanceWords(line?.leanLuckChance ?? 1)}.
						</li>
					))}
				</ul>
			)}
		</Section>
	);
}
