import {
	addScaled,
	dot,
	factor,
	multiply,
	STRIDE,
	type SymmetricBand,
	solve,
} from "./banded";

/** An eigenpair of K x = λ M x with xᵀMx = 1. */
export interface Eigenpair {
	readonly value: number;
	readonly vector: Float64Array;
}

export type EigenResult =
	| {
			readonly converged: true;
			readonly pairs: readonly Eigenpair[];
			/** Largest relative change of an eigenvalue in the last step. */
			readonly residual: number;
			readonly steps: number;
	  }
	| {
			readonly converged: false;
			readonly residual: number;
			readonly steps: number;
	  };

/**
 * The `count` lowest eigenpairs of a banded pencil, K semidefinite and M definite, by subspace
 * iteration on K + shift·M (Bathe, Finite Element Procedures, ch. 11, from memory). `shift` > 0 where
 * K lets the body move freely; it must be of the order of the lowest eigenvalues.
 */
export function lowestPairs(p: {
	stiffness: SymmetricBand;
	mass: SymmetricBand;
	count: number;
	shift: number;
	tolerance?: number;
}): EigenResult {
	const { stiffness, mass, count, shift } = p;
	const size = stiffness.size;
	const tolerance = p.tolerance ?? 1e-11;
	const width = Math.min(size, count + Math.max(4, count));
	const shifted = factor(addScaled(stiffness, mass, shift));
	let basis = startingBasis(size, width);
	let before = new Float64Array(width).fill(Number.POSITIVE_INFINITY);
	let residual = Number.POSITIVE_INFINITY;
	for (let steps = 1; steps <= 100; steps++) {
		const images = basis.map((x) => {
			const y = new Float64Array(size);
			multiply(mass, x, y);
			return y;
		});
		const next = images.map((y) => {
			const x = y.slice();
			solve(shifted, x);
			return x;
		});
		// In the space of `next`: (K + shift·M) next = images.
		const projectedK = next.map((x) => images.map((y) => dot(x, y, size)));
		const massed = next.map((x) => {
			const y = new Float64Array(size);
			multiply(mass, x, y);
			return y;
		});
		const projectedM = next.map((x) => massed.map((y) => dot(x, y, size)));
		const small = denseGeneralised(projectedK, projectedM);
		basis = small.vectors.map((weights) => {
			const x = new Float64Array(size);
			weights.forEach((weight, j) => {
				const y = next[j] as Float64Array;
				for (let i = 0; i < size; i++)
					x[i] = (x[i] as number) + weight * (y[i] as number);
			});
			return x;
		});
		residual = 0;
		for (let i = 0; i < count; i++)
			residual = Math.max(
				residual,
				Math.abs(
					((small.values[i] as number) - (before[i] as number)) /
						(small.values[i] as number),
				),
			);
		before = Float64Array.from(small.values);
		if (residual <= tolerance)
			return {
				converged: true,
				residual,
				steps,
				pairs: basis.slice(0, count).map((vector, i) => ({
					value: (small.values[i] as number) - shift,
					vector,
				})),
			};
	}
	return { converged: false, residual, steps: 100 };
}

/** Fixed, well-mixed directions: a linear congruential sequence, the same at every run. */
function startingBasis(size: number, width: number): Float64Array[] {
	let state = 12345;
	const next = (): number => {
		state = (1103515245 * state + 12345) % 2147483648;
		return state / 1073741824 - 1;
	};
	return Array.from({ length: width }, () =>
		Float64Array.from({ length: size }, next),
	);
}

/** All eigenpairs of a small dense pencil A x = λ B x, B definite, ascending, xᵀBx = 1. */
export function denseGeneralised(
	a: readonly (readonly number[])[],
	b: readonly (readonly number[])[],
): { values: number[]; vectors: number[][] } {
	const n = a.length;
	const l = choleskyRows(b);
	// C = L⁻¹ A L⁻ᵀ by solving for columns, then rows.
	const c = a.map((row) => row.slice());
	for (let j = 0; j < n; j++)
		for (let i = 0; i < n; i++) {
			let sum = c[i]?.[j] as number;
			for (let k = 0; k < i; k++)
				sum -= (l[i]?.[k] as number) * (c[k]?.[j] as number);
			(c[i] as number[])[j] = sum / (l[i]?.[i] as number);
		}
	for (let i = 0; i < n; i++)
		for (let j = 0; j < n; j++) {
			let sum = c[i]?.[j] as number;
			for (let k = 0; k < j; k++)
				sum -= (l[j]?.[k] as number) * (c[i]?.[k] as number);
			(c[i] as number[])[j] = sum / (l[j]?.[j] as number);
		}
	const { values, vectors } = jacobi(c);
	const back = vectors.map((y) => {
		const x = y.slice();
		for (let i = n - 1; i >= 0; i--) {
			let sum = x[i] as number;
			for (let k = i + 1; k < n; k++)
				sum -= (l[k]?.[i] as number) * (x[k] as number);
			x[i] = sum / (l[i]?.[i] as number);
		}
		return x;
	});
	return { values, vectors: back };
}

function choleskyRows(b: readonly (readonly number[])[]): number[][] {
	const n = b.length;
	const l = Array.from({ length: n }, () => new Array<number>(n).fill(0));
	for (let i = 0; i < n; i++)
		for (let j = 0; j <= i; j++) {
			let sum = b[i]?.[j] as number;
			for (let k = 0; k < j; k++)
				sum -= (l[i]?.[k] as number) * (l[j]?.[k] as number);
			if (i === j && !(sum > 0))
				throw new RangeError(
					`matrix is not positive definite: pivot ${i} is ${sum}`,
				);
			(l[i] as number[])[j] =
				i === j ? Math.sqrt(sum) : sum / (l[j]?.[j] as number);
		}
	return l;
}

/** Cyclic Jacobi rotations on a small dense symmetric matrix. */
function jacobi(matrix: readonly (readonly number[])[]): {
	values: number[];
	vectors: number[][];
} {
	const n = matrix.length;
	const a = matrix.map((row, i) =>
		row.map((value, j) => (value + (matrix[j]?.[i] as number)) / 2),
	);
	const v = a.map((_, i) => a.map((_, j) => (i === j ? 1 : 0)));
	const at = (m: number[][], i: number, j: number): number =>
		m[i]?.[j] as number;
	for (let sweep = 0; sweep < 60; sweep++) {
		let off = 0;
		let all = 0;
		for (let i = 0; i < n; i++)
			for (let j = 0; j < n; j++) {
				all += at(a, i, j) ** 2;
				if (i !== j) off += at(a, i, j) ** 2;
			}
		if (off <= 1e-30 * all) break;
		for (let p = 0; p < n - 1; p++)
			for (let q = p + 1; q < n; q++) {
				const apq = at(a, p, q);
				if (apq === 0) continue;
				const theta = (at(a, q, q) - at(a, p, p)) / (2 * apq);
				const t =
					(theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.hypot(theta, 1));
				const c = 1 / Math.hypot(t, 1);
				const s = t * c;
				for (let k = 0; k < n; k++) {
					const row = a[k] as number[];
					const [x, y] = [row[p] as number, row[q] as number];
					row[p] = c * x - s * y;
					row[q] = s * x + c * y;
				}
				const [rp, rq] = [a[p] as number[], a[q] as number[]];
				const [vp, vq] = [v[p] as number[], v[q] as number[]];
				for (let k = 0; k < n; k++) {
					const [x, y] = [rp[k] as number, rq[k] as number];
					rp[k] = c * x - s * y;
					rq[k] = s * x + c * y;
					const [ex, ey] = [vp[k] as number, vq[k] as number];
					vp[k] = c * ex - s * ey;
					vq[k] = s * ex + c * ey;
				}
			}
	}
	const order = a.map((_, i) => i).sort((i, j) => at(a, i, i) - at(a, j, j));
	return {
		values: order.map((i) => at(a, i, i)),
		vectors: order.map((i) => v[i] as number[]),
	};
}

/** Reusable storage for pencils of up to `capacity` freedoms. */
export interface EigenScratch {
	readonly shifted: Float64Array;
	readonly image: Float64Array;
}

export const eigenScratch = (capacity: number): EigenScratch => ({
	shifted: new Float64Array(capacity * STRIDE),
	image: new Float64Array(capacity),
});

/**
 * The lowest eigenvalue above the zero ones, by inverse iteration on K + shift·M from `start`, which
 * must be M-orthogonal to the moves of no stiffness and is overwritten with the eigenvector
 * (unscaled). One factorisation and a few solves.
 */
export function lowestAbove(p: {
	stiffness: SymmetricBand;
	mass: SymmetricBand;
	start: Float64Array;
	tolerance: number;
	scratch?: EigenScratch;
}):
	| { converged: true; value: number; residual: number; steps: number }
	| { converged: false; residual: number; steps: number } {
	const { stiffness, mass, start: x, tolerance } = p;
	const { size } = stiffness;
	const { shifted, image: y } = p.scratch ?? eigenScratch(size);
	multiply(stiffness, x, y);
	const stiff = dot(x, y, size);
	multiply(mass, x, y);
	let value = stiff / dot(x, y, size);
	// Well below the value sought, so the gap to the next stays wide. What rounding leaves of the moves
	// of no stiffness grows some twentyfold a step, which a few steps bear.
	const shift = 0.05 * value;
	const factored = factor(addScaled(stiffness, mass, shift, shifted), shifted);
	let residual = Number.POSITIVE_INFINITY;
	const most = 8;
	for (let steps = 1; steps <= most; steps++) {
		// With (K + shift M) z = M x and ρ = zᵀMx / zᵀMz, the value is ρ − shift.
		for (let i = 0; i < size; i++) x[i] = y[i] as number;
		solve(factored, x);
		const top = dot(x, y, size);
		multiply(mass, x, y);
		const bottom = dot(x, y, size);
		const next = top / bottom - shift;
		residual = Math.abs(next - value) / Math.abs(next);
		value = next;
		if (residual <= tolerance)
			return { converged: true, value, residual, steps };
		const scale = 1 / Math.sqrt(bottom);
		for (let i = 0; i < size; i++) y[i] = (y[i] as number) * scale;
	}
	return { converged: false, residual, steps: most };
}
