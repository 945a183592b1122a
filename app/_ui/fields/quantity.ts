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
import { type ParseRefusal, parseLength, parseMass } from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";
import type { LengthUnit, MassUnit } from "@/lib/units/unit-words";
import type { Reader } from "@/lib/words/reader";

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

export const bareUnit = (spec: QuantitySpec, reader: Reader): string =>
	spec.bare?.[reader.system] ??
	(spec.dimension === "length"
		? lengthUnitOf(reader, spec.kind)
		: massUnitOf(reader, spec.kind));

export function readTyped(
	text: string,
	spec: QuantitySpec,
	reader: Reader,
): ReadQuantity {
	if (spec.dimension === "length") {
		const parsed = parseLength(text, {
			system: reader.system,
			minMm: spec.min,
			maxMm: spec.max,
			defaultUnit: bareUnit(spec, reader) as LengthUnit,
		});
		return parsed.ok
			? { ok: true, value: parsed.mm, assumedUnit: parsed.assumedUnit }
			: parsed;
	}
	const parsed = parseMass(text, {
		system: reader.system,
		minG: spec.min,
		maxG: spec.max,
		defaultUnit: bareUnit(spec, reader) as MassUnit,
	});
	return parsed.ok
		? { ok: true, value: parsed.g, assumedUnit: parsed.assumedUnit }
		: parsed;
}

/** The text with the unit that a bare number was taken in. */
export function settledText(
	text: string,
	spec: QuantitySpec,
	reader: Reader,
): string {
	const read = readTyped(text, spec, reader);
	return read.ok && read.assumedUnit
		? `${text.trim()} ${read.assumedUnit}`
		: text;
}

export const asQuantity = (value: number, spec: QuantitySpec): Quantity =>
	spec.dimension === "length"
		? { mm: value, kind: spec.kind }
		: { g: value, kind: spec.kind };

export const bothOf = (value: number, spec: QuantitySpec, reader: Reader) =>
	formatBoth(asQuantity(value, spec), reader);

export const written = (
	value: number,
	spec: QuantitySpec,
	reader: Reader,
): string =>
	spec.dimension === "length"
		? formatLength(value, reader, spec.kind)
		: formatMass(value, reader, spec.kind);

/** A refusal in words, naming the field, the value and the bounds. */
export function refusedWords(
	label: string,
	refusal: ParseRefusal,
	spec: QuantitySpec,
	reader: Reader,
): string {
	const { say } = reader;
	const write = (value: number) => written(value, spec, reader);
	const shared = {
		label,
		text: String(refusal.value),
		min: write(refusal.min),
		max: write(refusal.max),
	};
	const shaped = {
		...shared,
		dimension: spec.dimension,
		example: write((refusal.min + refusal.max) / 2),
	};
	switch (refusal.code) {
		case "empty":
			return say("field.empty", shared);
		case "not-a-number":
			return say("field.notANumber", shaped);
		case "unknown-unit":
			return say("field.unknownUnit", shaped);
		case "ambiguous":
			return say("field.ambiguous", shared);
		case "out-of-range":
			return say("field.outOfRange", {
				...shared,
				got:
					typeof refusal.value === "number"
						? write(refusal.value)
						: say("field.quoted", shared),
			});
	}
}
