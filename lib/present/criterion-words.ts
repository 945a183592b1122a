import type { Criterion, CriterionId } from "@/lib/advice/criteria";
import { INVENTED_PRICE_LIST } from "@/lib/price/list";
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
import { basisLabel, citationTitle, inSentence } from "./labels";

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

/** Short, for a column or an axis. */
export const criterionTitle = (id: CriterionId, { say }: Reader): string =>
	say(`criterion.name.${id}`);

/** The same in the middle of a sentence. */
export const criterionName = (id: CriterionId, { say }: Reader): string =>
	say(`criterion.mid.${id}`);

/** What is measured, in one sentence. */
export const criterionAbout = (id: CriterionId, { say }: Reader): string =>
	say(`criterion.about.${id}`);

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
	const { say } = reader;
	const measure = (value: number) =>
		formatMeasure(id, value, reader, moneyIn(facts));
	const orMore = (value: number) =>
		say("criterion.orMore", { value: measure(value) });
	const orLess = (value: number) =>
		say("criterion.orLess", { value: measure(value) });
	const between = (from: number | undefined, to: number | undefined) => {
		if (from !== undefined && to !== undefined)
			return measure(from) === measure(to)
				? measure(from)
				: say("figure.range", { low: measure(from), high: measure(to) });
		if (from !== undefined) return orMore(from);
		return to === undefined ? say("criterion.any") : orLess(to);
	};
	const outside = [
		low ? orLess(low.limit) : "",
		high ? orMore(high.limit) : "",
	].filter(Boolean);
	const titles = sources.map((source) =>
		source === "project-judgement"
			? inSentence.basis("assumed", reader)
			: citationTitle(source, reader),
	);
	return {
		name: criterionTitle(id, reader),
		about: criterionAbout(id, reader),
		ideal: between(low?.ideal, high?.ideal),
		acceptable: between(low?.limit, high?.limit),
		unacceptable:
			outside.length === 0 ? say("criterion.none") : outside.join("; "),
		weight:
			role === "counts"
				? formatNumber(weight, reader, 2)
				: say(`criterion.role.${role}`),
		basis: basisLabel(basis, reader),
		sources: [...new Set(titles)].join("; "),
	};
}
