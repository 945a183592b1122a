import type { CitationId } from "@/lib/reference/citations";
import { type Band, band90, type Standing } from "@/lib/reference/estimate";
import { snapTo } from "@/lib/units/quantity";

/** What a figure rests on; a wish is the customer's own word, without uncertainty unless trials gave it. */
export type Basis = Standing | "wish";

/** One reason for a value: where it comes from, how sure it is, and the numbers a sentence needs. */
export interface Evidence {
	readonly code: string;
	readonly value: number;
	readonly sd: number;
	readonly basis: Basis;
	readonly sources: readonly CitationId[];
	readonly facts?: Readonly<Record<string, number | string>>;
}

export interface WeighedEvidence extends Evidence {
	/** Share of this evidence in the blended value, 0 to 1. */
	readonly shareFraction: number;
}

/** How well a figure is known against what a player can feel. */
export type Sureness = "chosen" | "firm" | "fair" | "rough";

/** A recommended quantity. The unit (mm or g) is that of the owner's property. */
export interface Figure {
	/** Snapped to what a bench works to. */
	readonly value: number;
	/** Before snapping and limits. */
	readonly exact: number;
	readonly sd: number;
	/** Central 90 % band of the need, not of the workmanship. */
	readonly band: Band;
	readonly step: number;
	readonly basis: Basis;
	readonly sureness: Sureness;
	/** Heaviest first. */
	readonly evidence: readonly WeighedEvidence[];
}

/**
 * Inverse-variance weighted mean of independent evidence; a wish replaces the rest, with its own spread.
 * The textbook estimator for independent normal errors: variance 1 / Σ(1/sdᵢ²).
 * Where evidence disagrees by more than its own bands the spread is widened by the observed
 * chi-square per degree of freedom (Birge ratio), so that a conflict is shown as less sure.
 */
export function blend(evidence: readonly Evidence[]): {
	value: number;
	sd: number;
	weighed: WeighedEvidence[];
} {
	const wish = evidence.find((item) => item.basis === "wish");
	if (wish !== undefined)
		return {
			value: wish.value,
			sd: wish.sd,
			weighed: [
				{ ...wish, shareFraction: 1 },
				...evidence
					.filter((item) => item !== wish)
					.map((item) => ({ ...item, shareFraction: 0 })),
			],
		};
	if (evidence.length === 0) throw new RangeError("blend: no evidence");
	for (const { code, value, sd } of evidence)
		if (!(sd > 0) || !Number.isFinite(value))
			throw new RangeError(`blend: ${code} value ${value}, sd ${sd}`);
	const total = evidence.reduce((sum, { sd }) => sum + 1 / sd ** 2, 0);
	const value =
		evidence.reduce((sum, item) => sum + item.value / item.sd ** 2, 0) / total;
	const chiSquare = evidence.reduce(
		(sum, item) => sum + ((item.value - value) / item.sd) ** 2,
		0,
	);
	const birge =
		evidence.length > 1 ? Math.max(1, chiSquare / (evidence.length - 1)) : 1;
	const weighed = evidence
		.map((item) => ({ ...item, shareFraction: 1 / item.sd ** 2 / total }))
		.sort((a, b) => b.shareFraction - a.shareFraction);
	return { value, sd: Math.sqrt(birge / total), weighed };
}

/** Firm when the 90 % half-width stays within what a player can feel, fair up to twice that. */
export function surenessOf({
	sd,
	feltDifference,
}: {
	sd: number;
	feltDifference: number;
}): Sureness {
	const halfWidth = band90({ value: 0, sd }).high;
	if (halfWidth <= feltDifference) return "firm";
	return halfWidth <= 2 * feltDifference ? "fair" : "rough";
}

export function figureFrom({
	evidence,
	step,
	feltDifference,
	limit = (value: number) => value,
}: {
	evidence: readonly Evidence[];
	step: number;
	feltDifference: number;
	/** A hard limit applied before snapping; the caller reports it as a caution. */
	limit?: (value: number) => number;
}): Figure {
	const { value: exact, sd, weighed } = blend(evidence);
	const [heaviest] = weighed;
	if (heaviest === undefined) throw new RangeError("figureFrom: no evidence");
	return {
		value: heaviest.basis === "wish" ? exact : snapTo(limit(exact), step),
		exact,
		sd,
		band: band90({ value: exact, sd }),
		step,
		basis: heaviest.basis,
		sureness:
			heaviest.basis === "wish" && sd === 0
				? "chosen"
				: surenessOf({ sd, feltDifference }),
		evidence: weighed,
	};
}
