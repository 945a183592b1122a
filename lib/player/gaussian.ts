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

/** The distribution after reading variable `index`, and the log density of that reading before it. */
export function conditioned(
	prior: Gaussian,
	index: number,
	reading: number,
	readingSd: number,
): { posterior: Gaussian; logDensity: number } {
	const column = prior.covariance.map((row) => at(row, index));
	const variance = at(column, index) + readingSd ** 2;
	const surprise = reading - at(prior.mean, index);
	const gain = column.map((c) => c / variance);
	return {
		posterior: {
			mean: prior.mean.map((m, i) => m + at(gain, i) * surprise),
			covariance: prior.covariance.map((row, i) =>
				row.map((c, j) => c - at(gain, i) * at(column, j)),
			),
		},
		logDensity:
			-0.5 * (surprise ** 2 / variance + Math.log(2 * Math.PI * variance)),
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
