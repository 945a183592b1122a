import type { PriceList } from "@/lib/price/list";
import type { Catalogue } from "./catalogue";
import {
	CRITERION_IDS,
	type Criterion,
	type CriterionId,
	type CriterionRole,
	type Doctrine,
	MEASURES,
} from "./criteria";
import {
	build,
	carrying,
	deflection,
	finish,
	forgiveness,
	price,
} from "./criteria-cue";
import { around, type Shape } from "./desirability";
import type { Feel } from "./feel";
import type { Figure } from "./figure";
import type { FittingNeeds } from "./fitting-needs";
import {
	BALANCE_COMPLAINT_MM,
	BALANCE_LIMIT_MM,
	CLOSURE_LIMIT_MM,
	CLOSURE_TARGET_MM,
	CLOSURE_TOLERANCE_MM,
	FEEL_SHIFT,
	FEEL_ZONE,
	FELT,
	NEED_ZONE,
	USUAL_WEIGHT,
	usualBalanceMm,
} from "./judgement";

export interface CriteriaInput {
	readonly needs: FittingNeeds;
	readonly feel: Feel;
	readonly catalogue: Catalogue;
	readonly priceList: PriceList;
	readonly doctrine?: Doctrine;
	readonly weights?: Readonly<Partial<Record<CriterionId, number>>>;
	readonly maxPriceMinor?: number;
	readonly longestPieceMm?: number;
}

export type CriterionPart = Omit<Criterion, "id" | "unit" | "weight"> & {
	/** Unless the user sets one. */
	readonly usualWeight?: number;
};

/** Every criterion with its shape, role and weight for one fitting, in the order of CRITERION_IDS. */
export function criteriaFor(input: CriteriaInput): readonly Criterion[] {
	const parts: Readonly<Record<CriterionId, CriterionPart>> = {
		closure: closure(input),
		reach: reach(input),
		weight: weight(input),
		steadiness: steadiness(input),
		balance: balance(input),
		deflection: deflection(input),
		forgiveness: forgiveness(input),
		tip: tip(input),
		stiffness: stiffness(input),
		build: build(),
		price: price(input),
		finish: finish(),
		carrying: carrying(input),
	};
	return CRITERION_IDS.map((id) => {
		const { usualWeight, ...part } = parts[id];
		const asked = input.weights?.[id];
		if (asked !== undefined && !(asked >= 0 && Number.isFinite(asked)))
			throw new RangeError(`weight of ${id} must be 0 or more, got ${asked}`);
		const given = asked ?? usualWeight ?? USUAL_WEIGHT[id];
		const role: CriterionRole =
			part.role === "counts" && given === 0 ? "left-out" : part.role;
		return {
			...part,
			id,
			unit: MEASURES[id].unit,
			role,
			weight: role === "counts" ? given : 0,
		};
	});
}

const judged = ["project-judgement"] as const;

/** A two-sided zone about a figure: as good within what is hardly felt, unacceptable far outside what is known. */
function zoneOf(figure: Figure, felt: number): Shape {
	return around({
		value: figure.exact,
		idealHalf: NEED_ZONE.idealShare * felt,
		limitHalf: Math.max(NEED_ZONE.limitFelt * felt, felt + 2 * figure.sd),
	});
}

function ofFigure(figure: Figure, felt: number): CriterionPart {
	return {
		shape: zoneOf(figure, felt),
		role: figure.basis === "wish" ? "decided" : "counts",
		basis: figure.basis,
		sources: [...(figure.evidence[0]?.sources ?? []), ...judged],
		facts: { needed: figure.exact, sd: figure.sd },
	};
}

function closure({ needs }: CriteriaInput): CriterionPart {
	const wanted = CLOSURE_TARGET_MM[needs.butt.closure];
	const { ringMm } = needs;
	return {
		shape: around({
			value: wanted,
			idealHalf: CLOSURE_TOLERANCE_MM,
			limitHalf: Math.max(
				CLOSURE_LIMIT_MM,
				CLOSURE_TOLERANCE_MM + 2 * Math.PI * ringMm.sd,
			),
		}),
		role:
			needs.input.wishes.buttDiameterMm === undefined ? "counts" : "decided",
		basis: ringMm.standing,
		sources: [...ringMm.sources, ...judged],
		facts: { wanted, ringMm: ringMm.value, ringSdMm: ringMm.sd },
	};
}

/** The length figure's zone, its outer edges no further than the stance allows. */
function reach({ needs }: CriteriaInput): CriterionPart {
	const { length, reach: window } = needs;
	const { low, high } = zoneOf(length, FELT.lengthMm);
	if (!low || !high) throw new RangeError("reach: a zone has two sides");
	const { lengthWindowMm } = window;
	return {
		...ofFigure(length, FELT.lengthMm),
		shape: {
			low: {
				ideal: low.ideal,
				limit: Math.min(
					low.ideal - FELT.lengthMm,
					Math.max(low.limit, lengthWindowMm.low),
				),
			},
			high: {
				ideal: high.ideal,
				limit: Math.max(
					high.ideal + FELT.lengthMm,
					Math.min(high.limit, lengthWindowMm.high),
				),
			},
		},
	};
}

/** A wished weight still counts: a wood that comes out heavier than the wish falls short of it. */
const weight = ({ needs }: CriteriaInput): CriterionPart => ({
	...ofFigure(needs.massNeed.figure, FELT.massG),
	role: "counts",
});

const tip = ({ needs }: CriteriaInput): CriterionPart =>
	ofFigure(needs.tip, FELT.tipDiameterMm);

function aboutFeel(p: {
	value: number;
	zone: { readonly ideal: number; readonly limit: number };
	shift: number;
}): Shape {
	const centre = p.value * (1 + p.shift);
	return around({
		value: centre,
		idealHalf: p.zone.ideal * p.value,
		limitHalf: p.zone.limit * p.value,
	});
}

function steadiness({ feel, doctrine }: CriteriaInput): CriterionPart {
	const wanted = doctrine?.steadiness ?? "as-now";
	const { value, sd, sources, standing } = feel.inertiaAboutGripKgM2;
	const shift =
		wanted === "steadier"
			? FEEL_SHIFT
			: wanted === "livelier"
				? -FEEL_SHIFT
				: 0;
	return {
		shape: aboutFeel({ value, zone: FEEL_ZONE.steadiness[feel.basis], shift }),
		role: wanted === "no-matter" ? "left-out" : "counts",
		basis: standing,
		sources: [...sources, ...judged],
		facts: { from: feel.basis, doctrine: wanted, now: value, sd },
	};
}

function stiffness({ feel, doctrine }: CriteriaInput): CriterionPart {
	const wanted = doctrine?.stiffness ?? "as-now";
	const { value, sd, sources, standing } = feel.giveMmPerN;
	// A stiffer cue gives less.
	const shift =
		wanted === "stiffer"
			? -2 * FEEL_SHIFT
			: wanted === "softer"
				? 2 * FEEL_SHIFT
				: 0;
	return {
		shape: aboutFeel({ value, zone: FEEL_ZONE.stiffness[feel.basis], shift }),
		role: wanted === "no-matter" ? "left-out" : "counts",
		basis: standing,
		sources: [...sources, ...judged],
		facts: { from: feel.basis, doctrine: wanted, now: value, sd },
	};
}

/** The usual window, or the present cue's balance, moved where the player complains of it. */
function balance({ needs, feel }: CriteriaInput): CriterionPart {
	const { presentCue } = needs.input;
	const present = presentCue.balanceFromButtMm;
	const complaints = presentCue.dislikes ?? [];
	const direction =
		Number(complaints.includes("butt-heavy")) -
		Number(complaints.includes("front-heavy"));
	if (present !== undefined) {
		const liked = presentCue.likes?.includes("balance") ?? false;
		const value = present + direction * BALANCE_COMPLAINT_MM;
		return {
			shape: around({
				value,
				idealHalf: (liked ? 0.5 : 1) * FELT.balanceMm,
				limitHalf: (liked ? 2 : 3) * FELT.balanceMm,
			}),
			role: "counts",
			basis: "measured",
			sources: ["measured-here", ...judged],
			facts: { from: "present-cue", wanted: value },
		};
	}
	const { min, max } = usualBalanceMm(needs.length.value);
	// Without a balance to start from, a complaint asks for the other half of the window.
	const middle = (min + max) / 2;
	const low = direction > 0 ? middle : min;
	const high = direction < 0 ? middle : max;
	return {
		shape: {
			low: { ideal: low, limit: low - BALANCE_LIMIT_MM },
			high: { ideal: high, limit: high + BALANCE_LIMIT_MM },
		},
		role: needs.gameId === "carom" ? "left-out" : "counts",
		basis: "common-practice",
		sources: ["common-practice", ...judged],
		facts: {
			from: "usual-window",
			low,
			high,
			now: feel.balanceFromButtMm.value,
		},
	};
}
