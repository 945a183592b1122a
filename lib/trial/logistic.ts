import {
	choleskyFactor,
	inverseFactored,
	type Matrix,
	solveFactored,
	zeros,
} from "./dense";

/** Shots under one set of conditions: `x` the value of each covariate, `offset` a known part of the log-odds. */
export interface LogisticRow {
	readonly x: readonly number[];
	readonly offset?: number;
	readonly hits: number;
	readonly shots: number;
}

/** What is believed of a coefficient before the shots; log-odds for a unit of its covariate. */
export interface CoefficientPrior {
	readonly mean: number;
	readonly sd: number;
}

export interface LogisticFit {
	readonly coefficients: readonly number[];
	readonly covariance: Matrix;
	/** Largest slope of the log-posterior left, in prior or shot units; 0 at the mode. */
	readonly residual: number;
	readonly steps: number;
}

export const logistic = (logOdds: number): number =>
	1 / (1 + Math.exp(-logOdds));

const dot = (x: readonly number[], coefficients: ArrayLike<number>): number =>
	x.reduce((sum, value, i) => sum + value * (coefficients[i] as number), 0);

/** ln(1 + eˣ) without overflow. */
const softPlus = (x: number): number =>
	Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));

/**
 * Logistic regression with independent normal priors: the mode by Newton's method and the normal
 * approximation there (Laplace). The log-posterior is strictly concave, so the mode is the only one;
 * a step that would not raise it is halved. Throws where 60 steps leave a residual above 1e-8.
 */
export function fitLogistic(
	rows: readonly LogisticRow[],
	priors: readonly CoefficientPrior[],
): LogisticFit {
	const size = priors.length;
	for (const [i, { mean, sd }] of priors.entries())
		if (!(sd > 0) || !Number.isFinite(mean))
			throw new RangeError(`fitLogistic: prior ${i} is ${mean} ± ${sd}`);
	for (const { x, hits, shots } of rows)
		if (x.length !== size || !(hits >= 0 && hits <= shots))
			throw new RangeError(
				`fitLogistic: ${x.length} covariates for ${size} coefficients, ${hits} of ${shots}`,
			);
	const height = (at: ArrayLike<number>): number =>
		rows.reduce((sum, { x, offset = 0, hits, shots }) => {
			const logOdds = offset + dot(x, at);
			return sum + hits * logOdds - shots * softPlus(logOdds);
		}, 0) -
		priors.reduce(
			(sum, { mean, sd }, i) => sum + ((at[i] as number) - mean) ** 2 / sd ** 2,
			0,
		) /
			2;

	let coefficients = Float64Array.from(priors, ({ mean }) => mean);
	let residual = Number.POSITIVE_INFINITY;
	for (let steps = 0; steps <= 60; steps++) {
		const { slope, curvature } = derivatives(rows, priors, coefficients);
		const factor = choleskyFactor(curvature);
		residual = Math.max(0, ...slope.map(Math.abs));
		if (residual < 1e-8)
			return {
				coefficients: [...coefficients],
				covariance: inverseFactored(factor),
				residual,
				steps,
			};
		const move = solveFactored(factor, slope);
		const now = height(coefficients);
		let share = 1;
		let next = coefficients;
		do {
			next = coefficients.map(
				(value, i) => value + share * (move[i] as number),
			);
			share /= 2;
		} while (height(next) < now - 1e-12 * Math.abs(now) && share > 1e-10);
		coefficients = next;
	}
	throw new RangeError(`fitLogistic: residual ${residual} after 60 steps`);
}

function derivatives(
	rows: readonly LogisticRow[],
	priors: readonly CoefficientPrior[],
	at: Float64Array,
): { slope: Float64Array; curvature: Matrix } {
	const slope = Float64Array.from(
		priors,
		({ mean, sd }, i) => (mean - (at[i] as number)) / sd ** 2,
	);
	const curvature = zeros(priors.length);
	for (const [i, { sd }] of priors.entries())
		(curvature[i] as Float64Array)[i] = 1 / sd ** 2;
	for (const { x, offset = 0, hits, shots } of rows) {
		const chance = logistic(offset + dot(x, at));
		const weight = shots * chance * (1 - chance);
		for (const [i, value] of x.entries()) {
			if (value === 0) continue;
			slope[i] = (slope[i] as number) + (hits - shots * chance) * value;
			const row = curvature[i] as Float64Array;
			for (const [j, other] of x.entries())
				row[j] = (row[j] as number) + weight * value * other;
		}
	}
	return { slope, curvature };
}
