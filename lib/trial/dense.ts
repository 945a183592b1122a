/** A symmetric positive definite matrix, or its lower Cholesky factor, row by row. */
export type Matrix = readonly Float64Array[];

export const zeros = (size: number): Float64Array[] =>
	Array.from({ length: size }, () => new Float64Array(size));

const at = (matrix: Matrix, row: number, column: number): number =>
	(matrix[row] as Float64Array)[column] as number;

/** L with L Lᵀ = M. Throws where M is not positive definite. */
export function choleskyFactor(matrix: Matrix): Matrix {
	const factor = zeros(matrix.length);
	for (let i = 0; i < matrix.length; i++)
		for (let j = 0; j <= i; j++) {
			let sum = at(matrix, i, j);
			for (let k = 0; k < j; k++) sum -= at(factor, i, k) * at(factor, j, k);
			if (i !== j) (factor[i] as Float64Array)[j] = sum / at(factor, j, j);
			else if (sum > 0) (factor[i] as Float64Array)[i] = Math.sqrt(sum);
			else
				throw new RangeError(
					`choleskyFactor: pivot ${i} is ${sum}: the matrix is not positive definite`,
				);
		}
	return factor;
}

/** x with L Lᵀ x = right. */
export function solveFactored(
	factor: Matrix,
	right: ArrayLike<number>,
): Float64Array {
	const size = factor.length;
	const x = Float64Array.from(right);
	for (let i = 0; i < size; i++) {
		let sum = x[i] as number;
		for (let k = 0; k < i; k++) sum -= at(factor, i, k) * (x[k] as number);
		x[i] = sum / at(factor, i, i);
	}
	for (let i = size - 1; i >= 0; i--) {
		let sum = x[i] as number;
		for (let k = i + 1; k < size; k++)
			sum -= at(factor, k, i) * (x[k] as number);
		x[i] = sum / at(factor, i, i);
	}
	return x;
}

/** M⁻¹ from the factor of M. */
export function inverseFactored(factor: Matrix): Matrix {
	const size = factor.length;
	return Array.from({ length: size }, (_, column) => {
		const unit = new Float64Array(size);
		unit[column] = 1;
		return solveFactored(factor, unit);
	});
}

/** rowᵀ M column. */
export function quadraticForm(
	row: ArrayLike<number>,
	matrix: Matrix,
	column: ArrayLike<number>,
): number {
	let total = 0;
	for (let i = 0; i < matrix.length; i++) {
		const weight = row[i] as number;
		if (weight === 0) continue;
		for (let j = 0; j < matrix.length; j++)
			total += weight * at(matrix, i, j) * (column[j] as number);
	}
	return total;
}
