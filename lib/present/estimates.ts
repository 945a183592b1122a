import type { Advice } from "@/lib/advice/advise";
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
	advice: Advice,
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

function estimateOf(
	name: FieldName,
	{ body, grip, reach }: Advice,
): { estimate: Estimate; kind: LengthKind } | null {
	switch (name) {
		case "stature":
			return { estimate: body.statureMm, kind: "body" };
		case "armSpan":
			return { estimate: body.armSpanMm, kind: "body" };
		case "handLength":
			return { estimate: body.handLengthMm, kind: "length" };
		case "shoulderToElbow":
			return { estimate: body.shoulderToElbowMm, kind: "limb" };
		case "elbowToGrip":
			return { estimate: body.elbowToGripMm, kind: "limb" };
		case "shoulderBreadth":
			return { estimate: body.shoulderBreadthMm, kind: "limb" };
		case "gripReadings":
			return { estimate: grip.circleMm, kind: "diameter" };
		case "bridgeLength":
			return { estimate: reach.bridgeLengthMm, kind: "limb" };
		case "gripFromButt":
			return { estimate: reach.gripFromButtMm, kind: "limb" };
		case "bridgeToGrip":
			return { estimate: reach.bridgeToGripMm, kind: "limb" };
		default:
			return null;
	}
}
