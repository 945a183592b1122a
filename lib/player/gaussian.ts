/** A multivariate normal distribution: means and covariances in the same order. */
export interface Gaussian {
	readonly mean: readonly number[];
	readonly covariance: readonly (readonly number[])[];
}

/** One variable as a line of earlier ones plus an independent residual. */
export interface LinearLink {
	readonly intercept: number;
	/** Index of an earlier variable and its slope. */
	readonly slopes: readonly (readonly [index: number, slope: number])[];
	readonly residualSd: number;
}

const at = (row: readonly number[] | undefined, i: number): number => {
	const value = row?.[i];
	if (value === undefined) throw new RangeError(`index ${i} out of bounds`);
	return value;
};

/** Joint distribution of variables given in causal order: each a line of those before it. */
export function chained(links: readonly LinearLink[]): Gaussian {
	const mean: number[] = [];
	const covariance: number[][] = links.map(() =>
		new Array<number>(links.length).fill(0),
	);
	for (const [i, link] of links.entries()) {
		mean.push(
			link.slopes.reduce(
				(sum, [k, slope]) => sum + slope * at(mean, k),
				link.intercept,
			),
		);
		const row = covariance[i] as number[];
		for (let j = 0; j < i; j++) {
			const shared = link.slopes.reduce(
				(sum, [k, slope]) => sum + slope * at(covariance[k], j),
				0,
			);
			row[j] = shared;
			(covariance[j] as number[])[i] = shared;
		}
		row[i] = link.slopes.reduce(
			(sum, [k, slope]) => sum + slope * at(row, k),
			link.residualSd ** 2,
		);
	}
	return { mean, covariance };
}

/** A reading of one variable and its own error. */
export interface ReadingOf {
	readonly index: number;
	readonly value: number;
	readonly sd: number;
}

/**
 * The distribution given readings, and their log density before them. The readings stand as they are;
 * their errors widen everything that leans on them: with x̂ = x̄ + K(r − x̄) for exact readings, the
 * errors add K·diag(sd²)·Kᵀ.
 */
export function given(
	prior: Gaussian,
	readings: readonly ReadingOf[],
): { posterior: Gaussian; logDensity: number } {
	const mean = [...prior.mean];
	let covariance = prior.covariance.map((row) => [...row]);
	// leaning[i][k]: how far variable i moves with reading k.
	const leaning = mean.map(() => readings.map(() => 0));
	let logDensity = 0;
	for (const [k, { index, value, sd }] of readings.entries()) {
		const column = covariance.map((row) => at(row, index));
		const variance = at(column, index);
		if (!(variance > 0))
			throw new RangeError(`variable ${index} read twice, or known before`);
		const gain = column.map((c) => c / variance);
		const surprise = value - at(mean, index);
		const before = [...(leaning[index] as number[])];
		const seen = readings.reduce(
			(sum, r, j) => sum + (at(before, j) * r.sd) ** 2,
			variance + sd ** 2,
		);
		logDensity -= 0.5 * (surprise ** 2 / seen + Math.log(2 * Math.PI * seen));
		for (const [i, g] of gain.entries()) {
			mean[i] = at(mean, i) + g * surprise;
			const row = leaning[i] as number[];
			for (let j = 0; j < row.length; j++)
				row[j] = at(row, j) + g * ((j === k ? 1 : 0) - at(before, j));
		}
		covariance = covariance.map((row, i) =>
			row.map((c, j) => c - at(gain, i) * at(column, j)),
		);
	}
	return {
		posterior: {
			mean,
			covariance: covariance.map((row, i) =>
				row.map((c, j) =>
					readings.reduce(
						(sum, r, k) =>
							sum + at(leaning[i], k) * at(leaning[j], k) * r.sd ** 2,
						c,
					),
				),
			),
		},
		logDensity,
	};
}

/** Mean and covariance of a weighted mixture; the spread between the parts is inside the covariance. */
export function mixed(
	parts: readonly { weight: number; of: Gaussian }[],
): Gaussian {
	const size = parts[0]?.of.mean.length ?? 0;
	const total = parts.reduce((sum, p) => sum + p.weight, 0);
	const mean = Array.from({ length: size }, (_, i) =>
		parts.reduce((sum, p) => sum + (p.weight / total) * at(p.of.mean, i), 0),
	);
	const covariance = Array.from({ length: size }, (_, i) =>
		Array.from({ length: size }, (_, j) =>
			parts.reduce(
				(sum, p) =>
					sum +
					(p.weight / total) *
						(at(p.of.covariance[i], j) +
							(at(p.of.mean, i) - at(mean, i)) *
								(at(p.of.mean, j) - at(mean, j))),
				0,
			),
		),
	);
	return { mean, covariance };
}
