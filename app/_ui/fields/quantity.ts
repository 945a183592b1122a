import {
	formatBoth,
	formatLength,
	formatMass,
	type LengthKind,
	lengthUnitOf,
	type MassKind,
	massUnitOf,
	type Quantity,
} from "@/lib/present/figures";
import {
	type LengthUnit,
	type MassUnit,
	type ParseRefusal,
	parseLength,
	parseMass,
} from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";

/**
 * What a field asks for: bounds in mm or g, how it is written, and the unit of a bare number where
 * it is not the unit it is written in.
 */
export type QuantitySpec =
	| {
			readonly dimension: "length";
			readonly kind: LengthKind;
			readonly min: number;
			readonly max: number;
			readonly bare?: Readonly<Record<UnitSystem, LengthUnit>>;
	  }
	| {
			readonly dimension: "mass";
			readonly kind: MassKind;
			readonly min: number;
			readonly max: number;
			readonly bare?: Readonly<Record<UnitSystem, MassUnit>>;
	  };

export type ReadQuantity =
	| {
			readonly ok: true;
			readonly value: number;
			readonly assumedUnit: string | null;
	  }
	| { readonly ok: false; readonly refusal: ParseRefusal };

export const bareUnit = (spec: QuantitySpec, system: UnitSystem): string =>
	spec.bare?.[system] ??
	(spec.dimension === "length"
		? lengthUnitOf(system, spec.kind)
		: massUnitOf(system, spec.kind));

export function readTyped(
	text: string,
	spec: QuantitySpec,
	system: UnitSystem,
): ReadQuantity {
	if (spec.dimension === "length") {
		const parsed = parseLength(text, {
			system,
			minMm: spec.min,
			maxMm: spec.max,
			defaultUnit: bareUnit(spec, system) as LengthUnit,
		});
		return parsed.ok
			? { ok: true, value: parsed.mm, assumedUnit: parsed.assumedUnit }
			: parsed;
	}
	const parsed = parseMass(text, {
		system,
		minG: spec.min,
		maxG: spec.max,
		defaultUnit: bareUnit(spec, system) as MassUnit,
	});
	return parsed.ok
		? { ok: true, value: parsed.g, assumedUnit: parsed.assumedUnit }
		: parsed;
}

/** The text with the unit that a bare number was taken in. */
export function settledText(
	text: string,
	spec: QuantitySpec,
	system: UnitSystem,
): string {
	const read = readTyped(text, spec, system);
	return read.ok && read.assumedUnit
		? `${text.trim()} ${read.assumedUnit}`
		: text;
}

export const asQuantity = (value: number, spec: QuantitySpec): Quantity =>
	spec.dimension === "length"
		? { mm: value, kind: spec.kind }
		: { g: value, kind: spec.kind };

export const bothOf = (value: number, spec: QuantitySpec, system: UnitSystem) =>
	formatBoth(asQuantity(value, spec), system);

export const written = (
	value: number,
	spec: QuantitySpec,
	system: UnitSystem,
): string =>
	spec.dimension === "length"
		? formatLength(value, system, spec.kind)
		: formatMass(value, system, spec.kind);

/** A refusal in words, naming the field, the value and the bounds. */
export function refusedWords(
	label: string,
	refusal: ParseRefusal,
	spec: QuantitySpec,
	system: UnitSystem,
): string {
	const bounds = `${written(refusal.min, spec, system)} to ${written(refusal.max, spec, system)}`;
	const example = `for example “${written((refusal.min + refusal.max) / 2, spec, system)}”`;
	switch (refusal.code) {
		case "empty":
			return `${label}: nothing entered.`;
		case "not-a-number":
			return `${label}: “${refusal.value}” cannot be read as a ${spec.dimension}. Write it as ${example}; it can be ${bounds}.`;
		case "unknown-unit":
			return `${label}: the unit in “${refusal.value}” is not one of a ${spec.dimension}. Write it as ${example}; it can be ${bounds}.`;
		case "ambiguous":
			return `${label}: “${refusal.value}” can be read in two ways. Write it without the comma; it can be ${bounds}.`;
		case "out-of-range": {
			const got =
				typeof refusal.value === "number"
					? written(refusal.value, spec, system)
					: `“${refusal.value}”`;
			return `${label}: ${got} is outside ${bounds}.`;
		}
	}
}
