import { parseLength, parseMass } from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";
import type { LengthUnit, MassUnit } from "@/lib/units/unit-words";
import type { HomeMeasures } from "@/lib/workshop/online-measures";
import { BOUNDS, type QuantityBound } from "./bounds";

export type HomeQuestion =
	| {
			readonly kind: "length";
			readonly bound: QuantityBound;
			/** Unit of a bare number. */
			readonly bare: Readonly<Record<UnitSystem, LengthUnit>>;
	  }
	| {
			readonly kind: "mass";
			readonly bound: QuantityBound;
			readonly bare: Readonly<Record<UnitSystem, MassUnit>>;
	  };

const BODY = { metric: "cm", trade: "in" } as const;
const CUE = { metric: "mm", trade: "in" } as const;

/** What is asked of measures at home, all of it optional. */
export const HOME_QUESTIONS: Readonly<
	Record<keyof HomeMeasures, HomeQuestion>
> = {
	statureMm: { kind: "length", bound: BOUNDS.statureMm, bare: BODY },
	handLengthMm: { kind: "length", bound: BOUNDS.handLengthMm, bare: CUE },
	presentLengthMm: { kind: "length", bound: BOUNDS.cueLengthMm, bare: CUE },
	presentMassG: {
		kind: "mass",
		bound: BOUNDS.cueMassG,
		bare: { metric: "g", trade: "oz" },
	},
	presentButtMm: {
		kind: "length",
		bound: BOUNDS.presentButtDiameterMm,
		bare: CUE,
	},
	presentTipMm: { kind: "length", bound: BOUNDS.tipDiameterMm, bare: CUE },
};

export const HOME_FIELDS = Object.keys(
	HOME_QUESTIONS,
) as (keyof HomeMeasures)[];
/** As typed; missing or empty: not measured. */
export type HomeAnswers = Partial<Record<keyof HomeMeasures, string>>;

/** Measures as they can be read; what cannot be counts as not measured, and its field says so itself. */
export function readHome(
	answers: HomeAnswers,
	system: UnitSystem,
): HomeMeasures {
	const read: Partial<Record<keyof HomeMeasures, number>> = {};
	for (const field of HOME_FIELDS) {
		const text = answers[field]?.trim();
		if (!text) continue;
		const value = quantityOf(HOME_QUESTIONS[field], text, system);
		if (value !== null) read[field] = value;
	}
	return read;
}

function quantityOf(
	{ kind, bound: { min, max }, bare }: HomeQuestion,
	text: string,
	system: UnitSystem,
): number | null {
	if (kind === "mass") {
		const parsed = parseMass(text, {
			system,
			minG: min,
			maxG: max,
			defaultUnit: bare[system],
		});
		return parsed.ok ? parsed.g : null;
	}
	const parsed = parseLength(text, {
		system,
		minMm: min,
		maxMm: max,
		defaultUnit: bare[system],
	});
	return parsed.ok ? parsed.mm : null;
}
