/** Jointly normal unknowns: means and a full covariance, row by row. */
export interface NormalState {
	readonly mean: readonly number[];
	readonly covariance: readonly (readonly number[])[];
}

/** Independent unknowns. */
export function independent(
	unknowns: readonly { value: number; sd: number }[],
): NormalState {
	return {
		mean: unknowns.map((one) => one.value),
		covariance: unknowns.map((one, i) =>
			unknowns.map((_, j) => (i === j ? one.sd * one.sd : 0)),
		),
	};
}

/** A measured sum of the unknowns, each times its weight. */
export interface LinearReading {
	readonly weights: readonly number[];
	readonly value: number;
	readonly sd: number;
}

export interface Conditioned {
	readonly state: NormalState;
	/** How far the reading lay from what was expected, in standard deviations of the difference. */
	readonly surprise: number;
	/** Natural logarithm of the density of the reading under the state before it. */
	readonly logEvidence: number;
}

/** Mean and spread of a sum of the unknowns. */
export function sumOf(
	state: NormalState,
	weights: readonly number[],
): { value: number; sd: number } {
	let value = 0;
	let variance = 0;
	weights.forEach((weight, i) => {
		value += weight * (state.mean[i] ?? 0);
		weights.forEach((other, j) => {
			variance += weight * other * (state.covariance[i]?.[j] ?? 0);
		});
	});
	return { value, sd: Math.sqrt(Math.max(0, variance)) };
}

/** The unknowns after a reading, by the standard normal update. Throws RangeError on a reading without spread. */
export function condition(
	state: NormalState,
	reading: LinearReading,
): Conditioned {
	if (!(reading.sd > 0))
		throw new RangeError(`a reading needs a spread, got ${reading.sd}`);
	const { weights } = reading;
	const expected = sumOf(state, weights);
	const variance = expected.sd * expected.sd + reading.sd * reading.sd;
	const difference = reading.value - expected.value;
	const cross = state.covariance.map((row) =>
		row.reduce((sum, one, j) => sum + one * (weights[j] ?? 0), 0),
	);
	return {
		state: {
			mean: state.mean.map(
				(mean, i) => mean + ((cross[i] ?? 0) * difference) / variance,
			),
			covariance: state.covariance.map((row, i) =>
				row.map(
					(one, j) => one - ((cross[i] ?? 0) * (cross[j] ?? 0)) / variance,
				),
			),
		},
		surprise: difference / Math.sqrt(variance),
		logEvidence:
			(-difference * difference) / (2 * variance) -
			Math.log(2 * Math.PI * variance) / 2,
	};
}
