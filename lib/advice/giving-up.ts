import { CRITERION_COUNT, CRITERION_IDS, type CriterionId } from "./criteria";
import type { Pool } from "./pool";

/** The best acceptable cue within one stretch of a measure. */
export interface BestWithin {
	/** The stretch of the measure, its upper end left out but for the last. */
	readonly from: number;
	readonly to: number;
	/** Row of the pool; null where no acceptable cue lies in the stretch. */
	readonly row: number | null;
	readonly overall: number;
	/** What each criterion is worth there, in order. */
	readonly desirabilities: readonly number[];
}

/**
 * What the others must give up when one quantity is moved: along the measure of a criterion, the best of
 * the scan in each stretch and what it is worth by every criterion. Exact over the scan; one pass.
 */
export function givingUp(p: {
	pool: Pool;
	criterion: CriterionId;
	stretches: number;
}): readonly BestWithin[] {
	const { pool, stretches } = p;
	if (!(Number.isInteger(stretches) && stretches > 0))
		throw new RangeError(`stretches must be a whole number, got ${stretches}`);
	const column = CRITERION_IDS.indexOf(p.criterion);
	const at = (k: number) =>
		pool.measures[k * CRITERION_COUNT + column] as number;
	let low = Number.POSITIVE_INFINITY;
	let high = Number.NEGATIVE_INFINITY;
	for (let k = 0; k < pool.count; k++) {
		const value = at(k);
		if (value < low) low = value;
		if (value > high) high = value;
	}
	if (pool.count === 0) return [];
	const width = (high - low) / stretches;
	const best = new Int32Array(stretches).fill(-1);
	for (let k = 0; k < pool.count; k++) {
		const i =
			width === 0
				? 0
				: Math.min(stretches - 1, Math.floor((at(k) - low) / width));
		const before = best[i] as number;
		if (
			before < 0 ||
			(pool.overall[k] as number) > (pool.overall[before] as number)
		)
			best[i] = k;
	}
	return Array.from(best, (row, i) => ({
		from: low + i * width,
		to: i === stretches - 1 ? high : low + (i + 1) * width,
		row: row < 0 ? null : row,
		overall: row < 0 ? 0 : (pool.overall[row] as number),
		desirabilities:
			row < 0
				? []
				: Array.from(
						pool.desirabilities.subarray(
							row * CRITERION_COUNT,
							(row + 1) * CRITERION_COUNT,
						),
					),
	}));
}
