import type { CitationId } from "@/lib/reference/citations";
import type { Standing } from "@/lib/reference/estimate";
import type { Shape } from "./desirability";

/** What a cue is judged by, in the order of every row of measures. */
export const CRITERION_IDS = [
	"closure",
	"reach",
	"weight",
	"steadiness",
	"balance",
	"deflection",
	"forgiveness",
	"tip",
	"stiffness",
	"build",
	"price",
	"finish",
	"carrying",
] as const;

export type CriterionId = (typeof CRITERION_IDS)[number];

export const CRITERION_COUNT = CRITERION_IDS.length;

/** Place of each criterion in a row. */
export const AT = Object.fromEntries(
	CRITERION_IDS.map((id, i) => [id, i]),
) as Readonly<Record<CriterionId, number>>;

/** What is measured for each, and its unit. */
export const MEASURES: Readonly<
	Record<CriterionId, { readonly quantity: string; readonly unit: string }>
> = {
	closure: { quantity: "gap between the pads at the grip", unit: "mm" },
	reach: { quantity: "length", unit: "mm" },
	weight: { quantity: "weight", unit: "g" },
	steadiness: { quantity: "inertia about the grip hand", unit: "kg m²" },
	balance: { quantity: "balance point from the butt end", unit: "mm" },
	deflection: { quantity: "cue-ball deflection at half side", unit: "deg" },
	forgiveness: { quantity: "share of side shots the tip holds", unit: "1" },
	tip: { quantity: "tip diameter", unit: "mm" },
	stiffness: { quantity: "give of the tip held at the grip", unit: "mm/N" },
	build: { quantity: "metal added in the butt", unit: "g" },
	price: { quantity: "price estimate", unit: "minor" },
	finish: { quantity: "rank of woods and hand work", unit: "1" },
	carrying: { quantity: "longest piece", unit: "mm" },
};

/**
 * Why a criterion does or does not take part. "decided": the customer fixed what it is about; it is
 * measured and shown, and can be the argument against. "left-out": weight 0 or a doctrine of no matter.
 * "no-difference": nothing on offer differs in it.
 */
export type CriterionRole = "counts" | "decided" | "left-out" | "no-difference";

export interface Criterion {
	readonly id: CriterionId;
	readonly unit: string;
	readonly shape: Shape;
	/** 0 unless it counts. */
	readonly weight: number;
	readonly role: CriterionRole;
	/** What the ideal rests on. */
	readonly basis: Standing | "wish";
	/** "project-judgement" among them: the widths, or the whole shape, are this project's judgement. */
	readonly sources: readonly CitationId[];
	readonly facts: Readonly<Record<string, number | string>>;
}

/** Doctrine that coaches disagree about: a choice, not a constant. */
export interface Doctrine {
	/** Default "as-now": the present cue's, or the usual build's. */
	readonly steadiness?: "as-now" | "steadier" | "livelier" | "no-matter";
	readonly stiffness?: "as-now" | "stiffer" | "softer" | "no-matter";
	/** Default "low": less deflection is better, at a modest weight. */
	readonly deflection?: "low" | "no-matter";
}

/** Criteria flattened for evaluating many rows. */
export class CompiledCriteria {
	readonly weights = new Float64Array(CRITERION_COUNT);
	readonly weightSum: number;
	private readonly lowLimit = new Float64Array(CRITERION_COUNT);
	private readonly lowScale = new Float64Array(CRITERION_COUNT);
	private readonly highLimit = new Float64Array(CRITERION_COUNT);
	private readonly highScale = new Float64Array(CRITERION_COUNT);
	private readonly lowPower = new Float64Array(CRITERION_COUNT);
	private readonly highPower = new Float64Array(CRITERION_COUNT);

	constructor(readonly criteria: readonly Criterion[]) {
		let sum = 0;
		criteria.forEach(({ id, shape, weight }, i) => {
			if (CRITERION_IDS[i] !== id)
				throw new RangeError(`criterion ${id} at place ${i}`);
			this.weights[i] = weight;
			sum += weight;
			const { low, high } = shape;
			this.lowLimit[i] = low?.limit ?? Number.NEGATIVE_INFINITY;
			this.lowScale[i] = low ? 1 / (low.ideal - low.limit) : 1;
			this.lowPower[i] = low?.exponent ?? 1;
			this.highLimit[i] = high?.limit ?? Number.POSITIVE_INFINITY;
			this.highScale[i] = high ? 1 / (high.limit - high.ideal) : 1;
			this.highPower[i] = high?.exponent ?? 1;
		});
		if (!(sum > 0)) throw new RangeError("no criterion counts");
		this.weightSum = sum;
	}

	/** 1 within the ideal, 0 at a limit, negative outside: linear, without exponents. */
	standing(i: number, value: number): number {
		const below =
			(value - (this.lowLimit[i] as number)) * (this.lowScale[i] as number);
		const above =
			((this.highLimit[i] as number) - value) * (this.highScale[i] as number);
		const least = Math.min(below, above);
		return Math.min(least, 1);
	}

	desirability(i: number, value: number): number {
		const below =
			(value - (this.lowLimit[i] as number)) * (this.lowScale[i] as number);
		const above =
			((this.highLimit[i] as number) - value) * (this.highScale[i] as number);
		if (!(below > 0 && above > 0)) return 0;
		const low = below >= 1 ? 1 : powered(below, this.lowPower[i] as number);
		const high = above >= 1 ? 1 : powered(above, this.highPower[i] as number);
		return Math.min(low, high);
	}
}

const powered = (x: number, power: number): number =>
	power === 1 ? x : x ** power;
