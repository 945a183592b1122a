import type { Axes } from "./axes";
import { candidateCount } from "./axes";
import { type CompiledCriteria, CRITERION_COUNT } from "./criteria";
import type { Setting } from "./evaluate";
import { nonDominated } from "./front";
import type { HardLimits } from "./limits";
import { scan } from "./scan";

/**
 * Every candidate of a scan that no counting criterion rejects, as columns side by side: `place` in the
 * scan's order, desirabilities and measures in rows of CRITERION_COUNT. Criteria that do not count have
 * desirability 1 in every row, so that they beat nobody. Desirabilities are kept to a millionth: what
 * differs by less differs by the solvers' tolerance only, and must not make a cue unbeaten.
 */
export interface Pool {
	readonly axes: Axes;
	readonly candidates: number;
	/** Within the hard limits and buildable. */
	readonly buildable: number;
	readonly count: number;
	readonly place: Uint32Array;
	readonly overall: Float64Array;
	readonly desirabilities: Float64Array;
	readonly measures: Float32Array;
	/** How many buildable candidates each criterion rejects, the first in the order counting. */
	readonly rejectedBy: readonly number[];
}

export function poolFrom(p: {
	axes: Axes;
	setting: Setting;
	limits: HardLimits;
	compiled: CompiledCriteria;
}): Pool {
	const { compiled } = p;
	const { weights, weightSum } = compiled;
	const candidates = candidateCount(p.axes);
	const place = new Uint32Array(candidates);
	const overall = new Float64Array(candidates);
	const desirabilities = new Float64Array(candidates * CRITERION_COUNT);
	const measures = new Float32Array(candidates * CRITERION_COUNT);
	const rejectedBy = new Array<number>(CRITERION_COUNT).fill(0);
	let count = 0;
	const buildable = scan({
		...p,
		visit: (index, row) => {
			const from = count * CRITERION_COUNT;
			let logSum = 0;
			for (let i = 0; i < CRITERION_COUNT; i++) {
				const weight = weights[i] as number;
				let value = 1;
				if (weight > 0) {
					value = compiled.desirability(i, row[i] as number);
					if (value === 0) {
						rejectedBy[i] = (rejectedBy[i] as number) + 1;
						return;
					}
					if (value < 1) logSum += weight * Math.log(value);
				}
				desirabilities[from + i] = toMillionths(value);
				measures[from + i] = row[i] as number;
			}
			place[count] = index;
			overall[count] = Math.exp(logSum / weightSum);
			count++;
		},
	});
	return {
		axes: p.axes,
		candidates,
		buildable,
		count,
		place: place.slice(0, count),
		overall: overall.slice(0, count),
		desirabilities: desirabilities.slice(0, count * CRITERION_COUNT),
		measures: measures.slice(0, count * CRITERION_COUNT),
		rejectedBy,
	};
}

const toMillionths = (value: number): number =>
	Math.max(1, Math.round(value * 1e6)) / 1e6;

/** Rows of the pool that no other row beats. */
export const frontOf = (pool: Pool): Uint32Array =>
	nonDominated({
		values: pool.desirabilities,
		width: CRITERION_COUNT,
		count: pool.count,
	});

/**
 * The best rows that differ from each other in a choice the customer sees: butt wood, splice or layout.
 * Best first; ties go to the earlier place, which is the workshop's own order.
 */
export function bestDifferent(pool: Pool, count: number): readonly number[] {
	const { axes } = pool;
	const best = new Map<number, number>();
	const loads = 1 + axes.massG.length * axes.forwardMm.length;
	const shafts = axes.shaftWoods.length;
	const kinds =
		axes.buttWoods.length * axes.layouts.length * axes.splices.length;
	for (let k = 0; k < pool.count; k++) {
		const woods = Math.floor((pool.place[k] as number) / loads);
		const butt = woods % axes.buttWoods.length;
		const outer = Math.floor(woods / axes.buttWoods.length / shafts);
		const kind =
			butt +
			axes.buttWoods.length *
				(outer % (axes.layouts.length * axes.splices.length));
		if (kind >= kinds) throw new RangeError(`kind ${kind} of ${kinds}`);
		const before = best.get(kind);
		if (
			before === undefined ||
			(pool.overall[k] as number) > (pool.overall[before] as number)
		)
			best.set(kind, k);
	}
	return [...best.values()]
		.sort(
			(a, b) =>
				(pool.overall[b] as number) - (pool.overall[a] as number) || a - b,
		)
		.slice(0, count);
}
