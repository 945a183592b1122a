/** Draws numbers in [0, 1). Passed in wherever chance is needed, so that a run can be repeated. */
export type Chance = () => number;

/**
 * A repeatable generator from a seed of 32 bits: Weyl sequence with a mixing step (the 32-bit
 * construction known as mulberry32, public domain, from memory). Good for orders, not for secrets.
 */
export function seededChance(seed: number): Chance {
	if (!Number.isInteger(seed) || seed < 0 || seed > 0xffffffff)
		throw new RangeError(
			`seededChance: seed must be an integer 0 to 2^32 − 1, got ${seed}`,
		);
	let state = seed;
	return () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let mixed = Math.imul(state ^ (state >>> 15), state | 1);
		mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
	};
}

/** A shuffled copy, every order equally likely (Fisher & Yates). */
export function shuffled<T>(items: readonly T[], chance: Chance): T[] {
	const result = [...items];
	for (let last = result.length - 1; last > 0; last--) {
		const other = Math.floor(chance() * (last + 1));
		[result[last], result[other]] = [result[other] as T, result[last] as T];
	}
	return result;
}
