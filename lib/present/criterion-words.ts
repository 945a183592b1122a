import type {
	Criterion,
	CriterionId,
	CriterionRole,
} from "@/lib/advice/criteria";
import { INVENTED_PRICE_LIST } from "@/lib/price/list";
import { CITATIONS } from "@/lib/reference/citations";
import { mmToInches } from "@/lib/units/quantity";
import type { Reader } from "@/lib/words/reader";
import { axisLength, axisMass, lengthUnit, massUnit } from "./chart-axes";
import {
	formatAngle,
	formatLength,
	formatMass,
	formatNumber,
	formatPercent,
	type LengthKind,
} from "./figures";
import { basisLabel } from "./labels";

/** An amount of money in whole units; the currency stands after it by its three letters. */
export interface Money {
	readonly currency: string;
	readonly minorPerUnit: number;
}

export const formatMoney = (
	minor: number,
	{ currency, minorPerUnit }: Money,
	reader: Reader,
): string => `${formatNumber(minor / minorPerUnit, reader)}\u00a0${currency}`;

interface CriterionWords {
	/** Short, for a column or an axis. */
	readonly name: string;
	/** What is measured, in one sentence. */
	readonly about: string;
}

export const CRITERION_WORDS: Readonly<Record<CriterionId, CriterionWords>> = {
	closure: {
		name: "Closing of the grip",
		about:
			"The gap between the pads of thumb and forefinger round the butt; below zero they overlap.",
	},
	reach: {
		name: "Length",
		about: "The whole cue, against what stance and stature ask for.",
	},
	weight: { name: "Weight", about: "The whole cue, against what is needed." },
	steadiness: {
		name: "Steadiness",
		about:
			"How much the cue resists being turned about the grip hand: its moment of inertia there.",
	},
	balance: {
		name: "Balance",
		about: "The balance point, measured from the butt end.",
	},
	deflection: {
		name: "Cue-ball deflection",
		about: "How far the cue ball leaves off line at half of the possible side.",
	},
	forgiveness: {
		name: "Hold of the tip",
		about:
			"The share of strokes with side at which the tip keeps hold of the ball, for this level of aim.",
	},
	tip: { name: "Tip", about: "The tip’s diameter." },
	stiffness: {
		name: "Give of the shaft",
		about:
			"How far the tip gives way to a sideways push, the cue held at the grip; more is softer.",
	},
	build: { name: "Metal added", about: "The metal put into the butt." },
	price: { name: "Price", about: "The estimate from the price list." },
	finish: {
		name: "Wood and hand work",
		about:
			"The workshop’s own rank of butt wood and splice, 0 plain to 4 its best.",
	},
	carrying: { name: "Longest piece", about: "What has to fit into a case." },
};

const LENGTHS: Partial<Record<CriterionId, LengthKind>> = {
	closure: "gap",
	reach: "length",
	balance: "length",
	tip: "diameter",
	carrying: "length",
};

/** A measure of a criterion with its unit. */
export function formatMeasure(
	id: CriterionId,
	value: number,
	reader: Reader,
	money: Money = INVENTED_PRICE_LIST,
): string {
	const kind = LENGTHS[id];
	if (kind !== undefined) return formatLength(value, reader, kind);
	switch (id) {
		case "weight":
			return formatMass(value, reader);
		case "build":
			return formatMass(value, reader, "added");
		case "steadiness":
			return `${formatNumber(value, reader, 4)}\u00a0kg\u00a0m²`;
		case "deflection":
			return formatAngle(value, reader, 2);
		case "forgiveness":
			return formatPercent(value, reader, 1);
		case "stiffness":
			return `${formatNumber(value, reader, 1)}\u00a0mm/N`;
		case "price":
			return formatMoney(value, money, reader);
		default:
			return formatNumber(value, reader, Number.isInteger(value) ? 0 : 1);
	}
}

/** A criterion as an axis: its unit, and a measure on it. */
export function measureAxis(
	id: CriterionId,
	reader: Reader,
	money: Money = INVENTED_PRICE_LIST,
): { unit: string; at: (value: number) => number } {
	const kind = LENGTHS[id];
	if (kind !== undefined)
		return {
			unit: lengthUnit(reader),
			at: (value) =>
				reader.system === "metric"
					? axisLength(value, reader)
					: mmToInches(value),
		};
	switch (id) {
		case "weight":
		case "build":
			return { unit: massUnit(reader), at: (value) => axisMass(value, reader) };
		case "steadiness":
			return { unit: "kg m²", at: (value) => value };
		case "deflection":
			return { unit: "°", at: (value) => value };
		case "forgiveness":
			return { unit: "%", at: (value) => 100 * value };
		case "stiffness":
			return { unit: "mm/N", at: (value) => value };
		case "price":
			return {
				unit: money.currency,
				at: (value) => value / money.minorPerUnit,
			};
		default:
			return { unit: "", at: (value) => value };
	}
}

export const ROLE_LABELS: Readonly<Record<CriterionRole, string>> = {
	counts: "Counts",
	decided: "Decided by your wish",
	"left-out": "Left out",
	"no-difference": "No difference among what is offered",
};

export interface CriterionRow {
	readonly name: string;
	readonly about: string;
	readonly ideal: string;
	readonly acceptable: string;
	readonly unacceptable: string;
	readonly weight: string;
	readonly basis: string;
	readonly sources: string;
}

/** The money a criterion of price was judged in; none is named by others and by reports from before lists were kept. */
const moneyIn = ({
	currency,
	minorPerUnit,
}: NonNullable<Criterion["facts"]> = {}): Money | undefined =>
	typeof currency === "string" && typeof minorPerUnit === "number"
		? { currency, minorPerUnit }
		: undefined;

/** What a criterion calls ideal, acceptable and unacceptable, and on what ground. */
export function criterionRow(
	{ id, shape, role, weight, basis, sources, facts }: Criterion,
	reader: Reader,
): CriterionRow {
	const { low, high } = shape;
	const say = (value: number) =>
		formatMeasure(id, value, reader, moneyIn(facts));
	const between = (from: number | undefined, to: number | undefined) => {
		if (from !== undefined && to !== undefined)
			return say(from) === say(to) ? say(from) : `${say(from)} to ${say(to)}`;
		if (from !== undefined) return `${say(from)} or more`;
		return to === undefined ? "Any" : `${say(to)} or less`;
	};
	const outside = [
		low ? `${say(low.limit)} or less` : "",
		high ? `${say(high.limit)} or more` : "",
	].filter(Boolean);
	const titles = sources.map((source) =>
		source === "project-judgement"
			? "this project’s judgement"
			: CITATIONS[source].title,
	);
	return {
		...CRITERION_WORDS[id],
		ideal: between(low?.ideal, high?.ideal),
		acceptable: between(low?.limit, high?.limit),
		unacceptable: outside.length === 0 ? "None" : outside.join("; "),
		weight:
			role === "counts" ? formatNumber(weight, reader, 2) : ROLE_LABELS[role],
		basis: basisLabel(basis, reader),
		sources: [...new Set(titles)].join("; "),
	};
}
