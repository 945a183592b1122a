import { analyseTrial } from "@/lib/trial/analysis";
import type { TrialSession } from "@/lib/trial/answer";
import { WORTH_HAVING } from "@/lib/trial/assumptions";
import { cuesIn, type Shot } from "@/lib/trial/shots";
import type { Reader } from "@/lib/words/reader";
import type { ChartModel, ChartPoint } from "./chart-model";
import { formatNumber, formatPercent } from "./figures";
import type { NameOf } from "./trial-verdict";

/** Points along a line: the exact intervals are computed anew at each. */
const MOST_POINTS = 20;
/** Lines that can be told apart. */
const MOST_LINES = 3;

/** The first `count` shots with each cue, in the order they were played. */
function firstOfEach(shots: readonly Shot[], count: number): Shot[] {
	const seen = new Map<string, number>();
	return shots.filter(({ cueId }) => {
		const before = seen.get(cueId) ?? 0;
		seen.set(cueId, before + 1);
		return before < count;
	});
}

/**
 * How the share potted with each cue, and the difference of two, settled as shots came in, with 90 %
 * bands. Of more than three cues, the two of the surest difference. Null before two shots with each
 * of two cues.
 */
export function settlingChart(
	session: TrialSession,
	nameOf: NameOf,
	reader: Reader,
): ChartModel | null {
	const { say } = reader;
	const whole = analyseTrial({ ...session, cueIds: cuesIn(session.shots) });
	const surest = [...whole.comparisons].sort(
		(one, other) => one.luckChance - other.luckChance,
	)[0];
	if (surest === undefined) return null;
	const cueIds =
		whole.cues.length <= MOST_LINES
			? whole.cues.map(({ cueId }) => cueId)
			: [...surest.cueIds];
	const shown = new Set(cueIds);
	const shots = session.shots.filter(({ cueId }) => shown.has(cueId));
	const most = Math.min(
		...whole.cues
			.filter(({ cueId }) => shown.has(cueId))
			.map((cue) => cue.shots),
	);
	if (most < 2) return null;
	const turned = surest.difference.value < 0;
	const [first, second] = turned
		? ([surest.cueIds[1], surest.cueIds[0]] as const)
		: surest.cueIds;
	const step = Math.max(1, Math.ceil(most / MOST_POINTS));
	const counts = Array.from(
		{ length: Math.ceil(most / step) },
		(_, i) => most - i * step,
	).reverse();
	const stages = counts.map((count) => {
		const analysis = analyseTrial({
			cueIds: [
				first,
				second,
				...cueIds.filter((id) => id !== first && id !== second),
			],
			shots: firstOfEach(shots, count),
			isPaired: session.isPaired,
		});
		return { count, cues: analysis.cues, comparison: analysis.comparisons[0] };
	});
	const hundred = (value: number) => value * 100;
	const point = (
		x: number,
		{ value, low, high }: { value: number; low: number; high: number },
	): ChartPoint => ({
		x,
		y: hundred(value),
		low: hundred(low),
		high: hundred(high),
	});
	const [one, other] = [nameOf(first), nameOf(second)];
	const last = stages.at(-1);
	return {
		id: "settling",
		title: say("trial.chart.title"),
		summary: say("trial.chart.summary", {
			shots: formatNumber(most, reader),
			shares: cueIds
				.map((id) => {
					const share = last?.cues.find(({ cueId }) => cueId === id)?.share;
					return share === undefined
						? ""
						: say("trial.chart.share", {
								name: nameOf(id),
								share: formatPercent(share.value, reader),
								low: formatPercent(share.low, reader),
								high: formatPercent(share.high, reader),
							});
				})
				.join(", "),
		}),
		x: {
			label: say("trial.chart.x"),
			unit: "",
			domain: [counts[0] ?? 1, most],
		},
		panels: [
			{
				label: say("trial.chart.potted"),
				unit: "",
				lines: cueIds.map((id) => ({
					name: nameOf(id),
					points: stages.flatMap(({ count, cues }) => {
						const share = cues.find(({ cueId }) => cueId === id)?.share;
						return share === undefined ? [] : [point(count, share)];
					}),
				})),
				zones: [],
			},
			{
				label: say("trial.chart.less", { one, other }),
				unit: "",
				lines: [
					{
						name: say("trial.chart.difference"),
						points: stages.flatMap(({ count, comparison }) =>
							comparison === undefined
								? []
								: [point(count, comparison.difference)],
						),
					},
				],
				zones: [
					{
						axis: "y",
						from: -hundred(WORTH_HAVING),
						to: hundred(WORTH_HAVING),
						label: say("trial.chart.small"),
						kind: "wanted",
					},
				],
			},
		],
		table: {
			columns: [
				say("trial.chart.each"),
				...cueIds.map((id) => say("trial.chart.of100", { name: nameOf(id) })),
				say("trial.chart.of100", { name: say("trial.chart.difference") }),
			],
			rows: stages.map(({ count, cues, comparison }) => [
				formatNumber(count, reader),
				...cueIds.map((id) => {
					const share = cues.find(({ cueId }) => cueId === id)?.share;
					return share === undefined ? "" : banded(share, reader);
				}),
				comparison === undefined ? "" : banded(comparison.difference, reader),
			]),
		},
	};
}

const banded = (
	share: { value: number; low: number; high: number },
	reader: Reader,
): string =>
	reader.say("trial.chart.banded", {
		value: formatNumber(share.value * 100, reader),
		low: formatNumber(share.low * 100, reader),
		high: formatNumber(share.high * 100, reader),
	});
