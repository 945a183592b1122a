/**
 * A number for a machine to read: a point, a fixed count of decimals, no grouping, no exponent. What
 * people read is written in lib/present. Throws RangeError for what is not finite or too large to be
 * written out.
 */
export function decimal(value: number, decimals: number): string {
	if (!Number.isFinite(value) || Math.abs(value) >= 1e21)
		throw new RangeError(`cannot write ${value} as a decimal`);
	const text = value.toFixed(decimals);
	return Number(text) === 0 ? text.replace("-", "") : text;
}
