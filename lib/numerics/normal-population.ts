/**
 * A normal population of unknown mean m and spread τ, learnt from readings of some of its members:
 *
 *   m ~ N(μ₀, ω²),  τ² ~ scaled inverse χ²(ν₀, s₀²),  member xᵢ ~ N(m, τ²),  reading yᵢ ~ N(xᵢ, sᵢ²).
 *
 * For a given τ everything is normal: with wᵢ = 1/(τ² + sᵢ²),
 *   1/v = 1/ω² + Σwᵢ,   E m = (μ₀/ω² + Σwᵢyᵢ)·v,   var m = v                                        (1)
 *   log p(y | τ) = −½Σ log(2π/wᵢ) − ½ log(ω²/v) − ½(Σwᵢdᵢ² − v(Σwᵢdᵢ)²),   dᵢ = yᵢ − μ₀             (2)
 * and what is left is one integral over log τ, taken by the trapezoidal rule. The mean's prior does not
 * widen with τ (semiconjugate: Hoff 2009, section 6.1; Gelman et al. 2013, section 5.4 for known sᵢ).
 */
export interface PopulationPrior {
	readonly mean: number;
	/** ω */
	readonly meanSd: number;
	/** ν₀: what was known of the spread counts as so many members. */
	readonly degrees: number;
	/** s₀ */
	readonly scale: number;
}

/** A reading of one member, with the spread of the reading itself. */
export interface MemberReading {
	readonly value: number;
	readonly sd: number;
}

/** The population for one value of its spread, and how likely that value is. Weights add up to 1. */
export interface PopulationPart {
	readonly weight: number;
	readonly mean: number;
	readonly meanSd: number;
	readonly spread: number;
}

/** Parts less likely than e⁻³⁰ of the likeliest are left out. */
const LEAST_LOG = -30;
const COARSE = 96;
const FINE = 160;

/**
 * The population after the readings, in parts from the least spread to the greatest. Throws RangeError
 * for a prior without spread, or a reading that is not finite or has a negative spread.
 */
export function populationAfter(
	prior: PopulationPrior,
	readings: readonly MemberReading[],
): readonly PopulationPart[] {
	const { mean, meanSd, degrees, scale } = prior;
	if (!(meanSd > 0 && degrees > 0 && scale > 0 && Number.isFinite(mean)))
		throw new RangeError(
			`a prior needs spreads: meanSd ${meanSd}, degrees ${degrees}, scale ${scale}`,
		);
	let farthest = scale;
	for (const { value, sd } of readings) {
		if (!(Number.isFinite(value) && sd >= 0))
			throw new RangeError(`a reading of ${value} with spread ${sd}`);
		farthest = Math.max(farthest, Math.abs(value - mean));
	}
	const at = (logSpread: number) => partAt(prior, readings, logSpread);
	const least = Math.log(scale / 30);
	const most = Math.log(farthest * 300);
	const coarse = gridOf(least, most, COARSE).map((x) => ({ x, ...at(x) }));
	const top = Math.max(...coarse.map(({ log }) => log));
	const kept = coarse.filter(({ log }) => log - top > LEAST_LOG);
	const step = (most - least) / (COARSE - 1);
	const parts = gridOf(
		(kept[0]?.x ?? least) - step,
		(kept.at(-1)?.x ?? most) + step,
		FINE,
	).map(at);
	const best = Math.max(...parts.map(({ log }) => log));
	const total = parts.reduce((sum, { log }) => sum + Math.exp(log - best), 0);
	return parts.map(({ log, ...part }) => ({
		...part,
		weight: Math.exp(log - best) / total,
	}));
}

const gridOf = (from: number, to: number, count: number): number[] =>
	Array.from(
		{ length: count },
		(_, i) => from + ((to - from) * i) / (count - 1),
	);

/** (1), and (2) with the prior of log τ, both without constants. */
function partAt(
	{ mean, meanSd, degrees, scale }: PopulationPrior,
	readings: readonly MemberReading[],
	logSpread: number,
): Omit<PopulationPart, "weight"> & { readonly log: number } {
	const spread = Math.exp(logSpread);
	let precision = 1 / (meanSd * meanSd);
	let pull = 0;
	let squares = 0;
	let logs = 0;
	for (const { value, sd } of readings) {
		const weight = 1 / (spread * spread + sd * sd);
		const away = value - mean;
		precision += weight;
		pull += weight * away;
		squares += weight * away * away;
		logs += Math.log(weight);
	}
	const likelihood =
		(logs -
			Math.log(precision * meanSd * meanSd) -
			squares +
			(pull * pull) / precision) /
		2;
	// p(τ²) ∝ τ^−(ν₀+2)·exp(−ν₀s₀²/2τ²), and dτ² = 2τ² d log τ.
	const logPrior =
		-degrees * logSpread - (degrees * scale * scale) / (2 * spread * spread);
	return {
		mean: mean + pull / precision,
		meanSd: Math.sqrt(1 / precision),
		spread,
		log: likelihood + logPrior,
	};
}

/** Mean and spread of the population's mean, its own spread (root mean square), and of its next member. */
export interface PopulationMoments {
	readonly mean: number;
	readonly meanSd: number;
	readonly spread: number;
	/** √(meanSd² + spread²); the next member's mean is the population's. */
	readonly nextSd: number;
}

export function momentsOf(parts: readonly PopulationPart[]): PopulationMoments {
	const sum = (of: (part: PopulationPart) => number) =>
		parts.reduce((all, part) => all + part.weight * of(part), 0);
	const mean = sum((part) => part.mean);
	const meanVariance = sum(
		(part) => part.meanSd ** 2 + (part.mean - mean) ** 2,
	);
	const spreadSquared = sum((part) => part.spread ** 2);
	return {
		mean,
		meanSd: Math.sqrt(meanVariance),
		spread: Math.sqrt(spreadSquared),
		nextSd: Math.sqrt(meanVariance + spreadSquared),
	};
}
