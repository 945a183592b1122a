/**
 * Symmetric matrices of half-width three, which is what a bar in cubic elements makes. Stored by rows
 * of the lower triangle with the diagonal first: values[4i + k] = A[i][i − k], k = 0 … 3. Entries with
 * k > i are not read, so dropping the first row and column is a subarray (`withoutFirst`).
 */
export interface SymmetricBand {
	readonly size: number;
	readonly values: Float64Array;
}

export const HALF_WIDTH = 3;
export const STRIDE = HALF_WIDTH + 1;

export function emptyBand(size: number): SymmetricBand {
	if (!Number.isInteger(size) || size < 1)
		throw new RangeError(`size must be a positive integer, got ${size}`);
	return { size, values: new Float64Array(size * STRIDE) };
}

/** The matrix without its first row and column, sharing storage. */
export const withoutFirst = (a: SymmetricBand): SymmetricBand => ({
	size: a.size - 1,
	values: a.values.subarray(STRIDE),
});

/** Buffers are at least as long as needed; only the leading part is used. */
function buffer(into: Float64Array | undefined, count: number): Float64Array {
	if (into === undefined) return new Float64Array(count);
	if (into.length < count)
		throw new RangeError(`buffer of ${into.length} is short of ${count}`);
	return into;
}

/** a + factor·b of the same size, written to `into` where given. */
export function addScaled(
	a: SymmetricBand,
	b: SymmetricBand,
	factor: number,
	into?: Float64Array,
): SymmetricBand {
	const count = a.size * STRIDE;
	const values = buffer(into, count);
	const av = a.values;
	const bv = b.values;
	for (let i = 0; i < count; i++)
		values[i] = (av[i] as number) + factor * (bv[i] as number);
	return { size: a.size, values };
}

/** out = A x. */
export function multiply(
	a: SymmetricBand,
	x: Float64Array,
	out: Float64Array,
): void {
	const { size, values } = a;
	// Entries and results of the three rows above, carried along.
	let x1 = 0;
	let x2 = 0;
	let x3 = 0;
	let y1 = 0;
	let y2 = 0;
	let y3 = 0;
	for (let i = 0, at = 0; i < size; i++, at += STRIDE) {
		const a1 = i > 0 ? (values[at + 1] as number) : 0;
		const a2 = i > 1 ? (values[at + 2] as number) : 0;
		const a3 = i > 2 ? (values[at + 3] as number) : 0;
		const xi = x[i] as number;
		if (i > 2) out[i - 3] = y3 + a3 * xi;
		const sum = (values[at] as number) * xi + a1 * x1 + a2 * x2 + a3 * x3;
		y3 = y2 + a2 * xi;
		y2 = y1 + a1 * xi;
		y1 = sum;
		x3 = x2;
		x2 = x1;
		x1 = xi;
	}
	if (size > 2) out[size - 3] = y3;
	if (size > 1) out[size - 2] = y2;
	out[size - 1] = y1;
}

/** L and D of A = L D Lᵀ: the first of each row is 1/D, the rest are L. */
export interface BandFactor extends SymmetricBand {
	/** How many eigenvalues of A are below zero (Sylvester's law of inertia). */
	readonly negatives: number;
}

/**
 * A = L D Lᵀ without pivoting: stable for positive definite A; for an indefinite A it serves to count
 * eigenvalues. Written to `into` where given, which may be A's own storage. Throws RangeError where a
 * pivot is exactly zero.
 */
export function factor(a: SymmetricBand, into?: Float64Array): BandFactor {
	const { size, values } = a;
	const l = buffer(into, size * STRIDE);
	let negatives = 0;
	// Pivots and the needed entries of L of the three rows above.
	let d1 = 0;
	let d2 = 0;
	let d3 = 0;
	let l21 = 0;
	let l31 = 0;
	let l32 = 0;
	for (let i = 0, at = 0; i < size; i++, at += STRIDE) {
		// u = A[i][i−k] less what rows above took; l21 = L[i−1][i−2], l31 = L[i−1][i−3], l32 = L[i−2][i−3].
		const u3 = i > 2 ? (values[at + 3] as number) : 0;
		const u2 = (i > 1 ? (values[at + 2] as number) : 0) - u3 * l32;
		const u1 = (i > 0 ? (values[at + 1] as number) : 0) - u3 * l31 - u2 * l21;
		const m3 = u3 * d3;
		const m2 = u2 * d2;
		const m1 = u1 * d1;
		const pivot = (values[at] as number) - u1 * m1 - u2 * m2 - u3 * m3;
		if (pivot === 0) throw new RangeError(`zero pivot in row ${i}`);
		if (pivot < 0) negatives++;
		const inverse = 1 / pivot;
		l[at] = inverse;
		l[at + 1] = m1;
		l[at + 2] = m2;
		l[at + 3] = m3;
		d3 = d2;
		d2 = d1;
		d1 = inverse;
		l32 = l21;
		l31 = m2;
		l21 = m1;
	}
	return { size, values: l, negatives };
}

/** x ← A⁻¹ x. */
export function solve(f: BandFactor, x: Float64Array): void {
	const { size, values } = f;
	let x1 = 0;
	let x2 = 0;
	let x3 = 0;
	for (let i = 0, at = 0; i < size; i++, at += STRIDE) {
		const xi =
			(x[i] as number) -
			(values[at + 1] as number) * x1 -
			(values[at + 2] as number) * x2 -
			(values[at + 3] as number) * x3;
		x[i] = xi * (values[at] as number);
		x3 = x2;
		x2 = x1;
		x1 = xi;
	}
	// Entries of L below the diagonal, and the results there, carried upwards.
	let b1 = 0;
	let b2 = 0;
	let b3 = 0;
	for (let i = size - 1; i >= 0; i--) {
		const xi = (x[i] as number) - b1;
		x[i] = xi;
		const at = i * STRIDE;
		b1 = b2 + (values[at + 1] as number) * xi;
		b2 = b3 + (values[at + 2] as number) * xi;
		b3 = (values[at + 3] as number) * xi;
	}
}

/** Σ aᵢ bᵢ over the leading `size` entries. */
export function dot(a: Float64Array, b: Float64Array, size: number): number {
	let sum = 0;
	for (let i = 0; i < size; i++) sum += (a[i] as number) * (b[i] as number);
	return sum;
}
