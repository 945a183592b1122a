import { type Axes, candidateAt } from "./axes";
import { CRITERION_COUNT, type Criterion, type CriterionId } from "./criteria";
import type { Shape, Side } from "./desirability";
import type { Candidate } from "./evaluate";
import type { Prepared } from "./prepare";
import { scan } from "./scan";

/** A limit that had to give so that any buildable cue is acceptable at all. */
export interface SoftenedLimit {
	readonly criterion: CriterionId;
	readonly side: "low" | "high";
	readonly limitFrom: number;
	readonly limitTo: number;
	/** What the least unacceptable cue measures there. */
	readonly measured: number;
}

/** How much worth is left at the value that forced a limit out. */
const LEFT_AT_VALUE = 0.05;

/**
 * Where no buildable candidate is acceptable: the one that breaks fewest limits, and of those the one
 * that breaks them least, in shares of the way from ideal to limit; its broken limits are moved out just
 * past it. The smallest relaxation in that sense that makes anything acceptable, over the scan. Null
 * where nothing can be built.
 */
export function softened(
	prepared: Prepared,
	axes: Axes,
): {
	criteria: readonly Criterion[];
	limits: readonly SoftenedLimit[];
	nearest: Candidate;
} | null {
	const { compiled, criteria } = prepared;
	let bestPlace = -1;
	let fewest = Number.POSITIVE_INFINITY;
	let least = Number.POSITIVE_INFINITY;
	const bestRow = new Float64Array(CRITERION_COUNT);
	scan({
		...prepared,
		axes,
		visit: (place, row) => {
			let broken = 0;
			let miss = 0;
			for (let i = 0; i < CRITERION_COUNT; i++) {
				if ((compiled.weights[i] as number) === 0) continue;
				const standing = compiled.standing(i, row[i] as number);
				if (standing > 0) continue;
				broken++;
				miss -= standing;
			}
			if (broken > fewest || (broken === fewest && miss >= least)) return;
			fewest = broken;
			least = miss;
			bestPlace = place;
			bestRow.set(row);
		},
	});
	if (bestPlace < 0) return null;
	const limits: SoftenedLimit[] = [];
	const widened = criteria.map((criterion, i): Criterion => {
		if (criterion.weight === 0) return criterion;
		const measured = bestRow[i] as number;
		const shape: { low: Side | null; high: Side | null } = {
			...criterion.shape,
		};
		for (const side of ["low", "high"] as const) {
			const was = shape[side];
			if (!was || standingOn(was, measured) > 0) continue;
			const limit = was.ideal + (measured - was.ideal) / (1 - LEFT_AT_VALUE);
			shape[side] = { ...was, limit };
			limits.push({
				criterion: criterion.id,
				side,
				limitFrom: was.limit,
				limitTo: limit,
				measured,
			});
		}
		return { ...criterion, shape: shape as Shape };
	});
	return { criteria: widened, limits, nearest: candidateAt(axes, bestPlace) };
}

const standingOn = ({ ideal, limit }: Side, value: number): number =>
	(value - limit) / (ideal - limit);
