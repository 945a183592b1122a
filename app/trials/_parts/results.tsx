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
} from "@/lib/present/trial-verdict";
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
	const { say } = reader;
	const nameOf: NameOf = (id) => names[id] ?? id;
	const chart = settlingChart(session, nameOf, reader);
	const effects = sessionWords(analysis.session, reader);
	return (
		<>
			<Section title={say("trials.findings.title")}>
				{analysis.comparisons.length === 0 && (
					<p>{say("trials.findings.onlyOne")}</p>
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
					<Notice kind="caution" title={say("trials.findings.cautions")}>
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
					title={say("trials.findings.session")}
					lead={say("trials.findings.sessionLead")}
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

function columnsFor(cues: readonly CueResult[], { say }: Reader): Column[] {
	const hasLine = cues.some(({ line }) => line !== null);
	const hasPosition = cues.some(({ position }) => position !== null);
	return [
		{ key: "name", label: say("trials.table.cue") },
		{ key: "pots", label: say("trials.table.potted"), numeric: true },
		{ key: "share", label: say("trials.table.share"), numeric: true },
		{ key: "band", label: say("trials.table.band"), numeric: true },
		...(hasLine
			? [
					{ key: "line", label: say("trials.table.line"), numeric: true },
					{ key: "sides", label: say("trials.table.sides"), numeric: true },
				]
			: []),
		...(hasPosition
			? [
					{
						key: "position",
						label: say("trials.table.position"),
						numeric: true,
					},
				]
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
	const { say } = reader;
	const of = (some: number, all: number) =>
		say("trials.table.of", { some: String(some), all: String(all) });
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
							say("trials.table.lineAgainst", {
								one: one ?? "",
								other: other ?? "",
								value: formatNumber(line.value * 100, reader),
								low: formatNumber(line.low * 100, reader),
								high: formatNumber(line.high * 100, reader),
								chance: chanceWords(line.luckChance, reader),
							}),
						]),
				...(position === null
					? []
					: [
							say("trials.table.positionAgainst", {
								one: one ?? "",
								other: other ?? "",
								value: formatNumber(position.value, reader, 2),
								low: formatNumber(position.low, reader, 2),
								high: formatNumber(position.high, reader, 2),
								chance: chanceWords(position.luckChance, reader),
							}),
						]),
			];
		},
	);
	return (
		<Section title={say("trials.table.title")}>
			<DataTable
				caption={say("trials.table.title")}
				captionHidden
				columns={columnsFor(analysis.cues, reader)}
				rows={analysis.cues.map(({ cueId, pots, shots, ...cue }) => ({
					name: nameOf(cueId),
					pots: of(pots, shots),
					share: shots === 0 ? "—" : formatPercent(pots / shots, reader),
					band: shots === 0 ? "—" : share(cue.share, reader),
					line: cue.line === null ? "—" : of(cue.line.on, cue.line.shots),
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
							{say("trials.table.leans", {
								name: nameOf(cueId),
								side: (line?.left ?? 0) > (line?.right ?? 0) ? "left" : "right",
								chance: chanceWords(line?.leanLuckChance ?? 1, reader),
							})}
						</li>
					))}
				</ul>
			)}
		</Section>
	);
}
