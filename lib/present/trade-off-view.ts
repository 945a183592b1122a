import {
	AT,
	CRITERION_COUNT,
	CRITERION_IDS,
	type Criterion,
	type CriterionId,
} from "@/lib/advice/criteria";
import type { Reader } from "@/lib/words/reader";
import {
	criterionName,
	criterionTitle,
	formatMeasure,
	type Money,
} from "./criterion-words";

/** Cues in rows of the criteria. */
export interface Points {
	readonly count: number;
	readonly measures: ArrayLike<number>;
}

export const measureAt = (
	{ measures }: Points,
	place: number,
	id: CriterionId,
): number => measures[place * CRITERION_COUNT + AT[id]] as number;

export interface Ends {
	readonly low: number;
	readonly high: number;
}

/** The range of a criterion over the cues of which `keeps` is true; null where there are none. */
export function rangeOf(
	points: Points,
	id: CriterionId,
	keeps: (place: number) => boolean = () => true,
): Ends | null {
	let low = Number.POSITIVE_INFINITY;
	let high = Number.NEGATIVE_INFINITY;
	for (let k = 0; k < points.count; k++) {
		if (!keeps(k)) continue;
		const value = measureAt(points, k, id);
		low = Math.min(low, value);
		high = Math.max(high, value);
	}
	return low <= high ? { low, high } : null;
}

/** A bound on one criterion: at most or at least so much. */
export interface Bound {
	readonly id: CriterionId;
	readonly side: "most" | "least";
	readonly value: number;
}

/** Single precision of the stored measures is let pass. */
export const isWithin = (points: Points, { id, side, value }: Bound) => {
	const slack = 1e-6 * Math.abs(value);
	return (place: number): boolean =>
		side === "most"
			? measureAt(points, place, id) <= value + slack
			: measureAt(points, place, id) >= value - slack;
};

/** How far a value lies outside the ideal stretch: 0 inside. */
export const missOf = ({ shape }: Criterion, value: number): number =>
	Math.max(
		0,
		shape.low ? shape.low.ideal - value : 0,
		shape.high ? value - shape.high.ideal : 0,
	);

/** The value nearest to ideal among the cues kept. */
export function bestOf(
	points: Points,
	criterion: Criterion,
	keeps: (place: number) => boolean = () => true,
): number | null {
	let best: number | null = null;
	let least = Number.POSITIVE_INFINITY;
	for (let k = 0; k < points.count; k++) {
		if (!keeps(k)) continue;
		const value = measureAt(points, k, criterion.id);
		const miss = missOf(criterion, value);
		if (miss < least) {
			least = miss;
			best = value;
		}
	}
	return best;
}

export interface GivenUp {
	readonly id: CriterionId;
	readonly name: string;
	readonly before: string;
	readonly after: string;
	readonly bestBefore: string;
	readonly bestAfter: string;
	/** In words: what the bound costs the criterion's best. */
	readonly givesUp: string;
}

/** What every other criterion can still have under a bound, and what it must give up. */
export function givenUp(p: {
	points: Points;
	criteria: readonly Criterion[];
	bound: Bound;
	reader: Reader;
	money: Money;
}): readonly GivenUp[] {
	const { points, bound, reader, money } = p;
	const keeps = isWithin(points, bound);
	return p.criteria
		.filter(({ id }) => id !== bound.id)
		.map((criterion) => {
			const { id } = criterion;
			const { say } = reader;
			const measure = (value: number | null) =>
				value === null
					? say("tradeOff.none")
					: formatMeasure(id, value, reader, money);
			const ends = (range: Ends | null) => {
				if (range === null) return measure(null);
				const [low, high] = [measure(range.low), measure(range.high)];
				return low === high ? low : say("figure.range", { low, high });
			};
			const was = bestOf(points, criterion);
			const is = bestOf(points, criterion, keeps);
			return {
				id,
				name: criterionTitle(id, reader),
				before: ends(rangeOf(points, id)),
				after: ends(rangeOf(points, id, keeps)),
				bestBefore: measure(was),
				bestAfter: measure(is),
				givesUp:
					was === null || is === null
						? say("tradeOff.noCue")
						: missOf(criterion, is) <= missOf(criterion, was) ||
								measure(was) === measure(is)
							? say("tradeOff.nothing")
							: say("tradeOff.becomes", {
									before: measure(was),
									after: measure(is),
								}),
			};
		});
}

/** Criteria that differ among the points: the others make no axis. */
export const axesIn = (points: Points): readonly CriterionId[] =>
	CRITERION_IDS.filter((id) => {
		const range = rangeOf(points, id);
		return (
			range !== null && range.high - range.low > 1e-6 * Math.abs(range.high)
		);
	});

/** How many of them a bound keeps. */
export function keptCount(points: Points, bound: Bound): number {
	const keeps = isWithin(points, bound);
	let kept = 0;
	for (let k = 0; k < points.count; k++) if (keeps(k)) kept++;
	return kept;
}

/** The same in words, for who does not see the drawing. */
export function tradeOffText(p: {
	points: Points;
	across: CriterionId;
	up: CriterionId;
	reader: Reader;
	money: Money;
}): string {
	const { points, across, up, reader, money } = p;
	const told = (id: CriterionId) => {
		const range = rangeOf(points, id);
		return range === null
			? reader.say("tradeOff.nothing")
			: reader.say("figure.range", {
					low: formatMeasure(id, range.low, reader, money),
					high: formatMeasure(id, range.high, reader, money),
				});
	};
	const tie = correlation(points, across, up);
	const together = Math.abs(tie) < 0.2 ? "hardly" : tie > 0 ? "more" : "less";
	return reader.say("tradeOff.text", {
		across: criterionTitle(across, reader),
		acrossRange: told(across),
		up: criterionName(up, reader),
		upRange: told(up),
		together,
	});
}

/** Pearson's coefficient; 0 where one does not vary. */
export function correlation(
	points: Points,
	a: CriterionId,
	b: CriterionId,
): number {
	const n = points.count;
	const mean = (id: CriterionId) => {
		let sum = 0;
		for (let k = 0; k < n; k++) sum += measureAt(points, k, id);
		return sum / n;
	};
	const [ma, mb] = [mean(a), mean(b)];
	let ab = 0;
	let aa = 0;
	let bb = 0;
	for (let k = 0; k < n; k++) {
		const da = measureAt(points, k, a) - ma;
		const db = measureAt(points, k, b) - mb;
		ab += da * db;
		aa += da * da;
		bb += db * db;
	}
	return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}
