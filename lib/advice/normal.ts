/** A source of uniform numbers in [0, 1), such as `seededUniform`. */
export type Uniform = () => number;

/** Distribution function of the standard normal, Abramowitz & Stegun 7.1.26, error below 1.5e-7. */
export function normalShareBelow(z: number): number {
	const t = 1 / (1 + (0.3275911 * Math.abs(z)) / Math.SQRT2);
	const tail =
		t *
		(0.254829592 +
			t *
				(-0.284496736 +
					t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
		Math.exp(-z * z * 0.5);
	return z >= 0 ? 1 - tail / 2 : tail / 2;
}

/** Standard normal draws from uniform ones, Box & Muller. */
export function normalFrom(uniform: Uniform): () => number {
	return () =>
		Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** A repeatable source: a 32-bit counter, mixed. The same seed gives the same numbers everywhere. */
export function seededUniform(seed: number): Uniform {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** Value below which `share` of the sorted numbers lie, straight between neighbours. */
export function quantile(sorted: ArrayLike<number>, share: number): number {
	const last = sorted.length - 1;
	if (last < 0) throw new RangeError("quantile: no numbers");
	const at = share * last;
	const i = Math.min(Math.max(last - 1, 0), Math.floor(at));
	const low = sorted[i] as number;
	const high = sorted[Math.min(last, i + 1)] as number;
	return low + (at - i) * (high - low);
}
