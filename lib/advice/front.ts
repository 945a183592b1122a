/**
 * Rows of equal width in one array; higher is better in every column. A row is beaten when another is
 * at least as good everywhere and better somewhere; equal rows do not beat each other.
 */
export interface Rows {
	readonly values: Float64Array;
	readonly width: number;
	readonly count: number;
}

/**
 * Places of the rows that no other row beats, ascending. Exact. Rows are taken by falling sum, so that
 * whatever beats a row has been met before it, and only rows kept so far are compared.
 */
export function nonDominated(rows: Rows): Uint32Array {
	const { values, width, count } = rows;
	for (let i = 0; i < count * width; i++)
		if (Number.isNaN(values[i]))
			throw new RangeError(`row ${Math.floor(i / width)} holds NaN`);
	const order = byFallingSum(rows);
	const kept = new Float64Array(count * width);
	const keptAt = new Uint32Array(count);
	let keptCount = 0;
	for (const at of order) {
		if (isBeaten(values, at * width, width, kept, keptCount)) continue;
		kept.set(values.subarray(at * width, (at + 1) * width), keptCount * width);
		keptAt[keptCount++] = at;
	}
	return keptAt.slice(0, keptCount).sort();
}

function isBeaten(
	values: Float64Array,
	from: number,
	width: number,
	kept: Float64Array,
	keptCount: number,
): boolean {
	for (let k = 0; k < keptCount; k++) {
		const at = k * width;
		let better = false;
		let j = 0;
		for (; j < width; j++) {
			const mine = values[from + j] as number;
			const theirs = kept[at + j] as number;
			if (theirs < mine) break;
			if (theirs > mine) better = true;
		}
		if (j === width && better) return true;
	}
	return false;
}

/** Places by falling sum. Sums are rounded, so near-equal ones are put in order by their values instead. */
function byFallingSum({ values, width, count }: Rows): Uint32Array {
	const sums = new Float64Array(count);
	for (let i = 0; i < count; i++) {
		let sum = 0;
		for (let j = 0; j < width; j++) sum += values[i * width + j] as number;
		sums[i] = sum;
	}
	return Uint32Array.from({ length: count }, (_, i) => i).sort((a, b) => {
		const gap = (sums[b] as number) - (sums[a] as number);
		if (gap !== 0) return gap;
		for (let j = 0; j < width; j++) {
			const other =
				(values[b * width + j] as number) - (values[a * width + j] as number);
			if (other !== 0) return other;
		}
		return a - b;
	});
}
