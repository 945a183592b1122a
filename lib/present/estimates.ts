import type { Advice } from "@/lib/advice/advise";
import type { MeasureName } from "@/lib/forms/choices";
import type { FieldName } from "@/lib/forms/fields";
import { band90, type Estimate } from "@/lib/reference/estimate";
import type { Reader } from "@/lib/words/reader";
import { formatLength, formatLengthBand, type LengthKind } from "./figures";
import { inSentence } from "./labels";

/** What stands in for a question left out, in words. */
export interface EstimateWords {
	readonly value: string;
	readonly band: string;
	readonly from: string;
}

/** The estimate behind an empty field with its band; null where nothing is estimated for it. */
export function estimateWords(
	name: FieldName,
	advice: Pick<Advice, "body" | "grip" | "reach">,
	reader: Reader,
): EstimateWords | null {
	const found = estimateOf(name, advice);
	if (found === null) return null;
	const { estimate, kind } = found;
	return {
		value: formatLength(estimate.value, reader, kind),
		band: formatLengthBand(band90(estimate), reader, kind),
		from: inSentence.basis(estimate.standing, reader),
	};
}

/** How each measure of a fitting is written. */
export const MEASURE_KIND: Readonly<Record<MeasureName, LengthKind>> = {
	stature: "body",
	armSpan: "body",
	handLength: "length",
	shoulderToElbow: "limb",
	elbowToGrip: "limb",
	shoulderBreadth: "limb",
	gripReadings: "diameter",
	bridgeLength: "limb",
	gripFromButt: "limb",
	bridgeToGrip: "limb",
	cueInHand: "length",
};

const isMeasure = (name: FieldName): name is MeasureName =>
	Object.hasOwn(MEASURE_KIND, name);

function estimateOf(
	name: FieldName,
	advice: Pick<Advice, "body" | "grip" | "reach">,
): { estimate: Estimate; kind: LengthKind } | null {
	const estimate = isMeasure(name) ? estimatedIn(name, advice) : null;
	return estimate && isMeasure(name)
		? { estimate, kind: MEASURE_KIND[name] }
		: null;
}

function estimatedIn(
	name: MeasureName,
	{ body, grip, reach }: Pick<Advice, "body" | "grip" | "reach">,
): Estimate | null {
	switch (name) {
		case "gripReadings":
			return grip.circleMm;
		case "bridgeLength":
		case "gripFromButt":
		case "bridgeToGrip":
			return reach[`${name}Mm`];
		case "cueInHand":
			return null;
		default:
			return body[`${name}Mm`];
	}
}
