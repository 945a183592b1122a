import type { CueRequest } from "@/lib/cue/design";
import { must } from "@/lib/numerics/outcome";
import { estimatePrice } from "@/lib/price/estimate";
import { INVENTED_PRICE_LIST } from "@/lib/price/list";
import {
	buildFromRequest,
	type JobContent,
	type Quote,
} from "@/lib/workshop/job-content";
import { NO_EXTRAS } from "@/lib/workshop/job-extras";

export const request: CueRequest = {
	lengthMm: 1473.2,
	buttDiameterMm: 29,
	tipDiameterMm: 9.5,
	taperShape: "even",
	shaftWood: "white-ash",
	buttWood: "gaboon-ebony",
	splice: "hand-four-point",
	layout: "three-quarter",
	ferruleMetal: "brass",
};

/** A cue asked for by its figures, priced by the invented list, not yet quoted. */
export function askedContent(
	change: Partial<CueRequest> = {},
	massG = 540,
): JobContent {
	const wanted = { ...request, ...change };
	const build = must(
		buildFromRequest({
			request: wanted,
			gameId: "snooker",
			massG,
			balanceFromButtMm: null,
		}),
	);
	const { currency, minorPerUnit, basis, lines, totalMinor } = must(
		estimatePrice({
			list: INVENTED_PRICE_LIST,
			request: wanted,
			hasAddedWeight: build.addedWeight.metalMassG > 0,
		}),
	);
	return {
		schemaVersion: 1,
		build,
		extras: NO_EXTRAS,
		price: { currency, minorPerUnit, basis, lines, totalMinor },
		quote: null,
		settingVersions: {},
	};
}

export const quoteUntil = (
	validUntil: string,
	change: Partial<Quote> = {},
): Quote => ({
	priceMinor: 48_000,
	currency: "GBP",
	minorPerUnit: 100,
	validUntil,
	mayVary: [
		{ code: "mass-g", within: 7 },
		{ code: "grain-and-colour", within: null },
	],
	note: "",
	...change,
});
