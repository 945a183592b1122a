import { advise } from "@/lib/advice/advise";
import type { FittingInput } from "@/lib/advice/input";
import { recommend } from "@/lib/advice/recommend";
import { type SpecContent, specFrom } from "@/lib/advice/spec";
import { planAddedWeight } from "@/lib/build/added-weight";
import { sheetStations } from "@/lib/build/stations";
import type { CueRequest } from "@/lib/cue/design";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";
import { withStature } from "../../support/inputs";

/** As it comes back from the database: plain JSON. */
const stored = (content: SpecContent): SpecContent =>
	JSON.parse(JSON.stringify(content));

export const specOf = (input: FittingInput): SpecContent =>
	stored(must(specFrom(must(advise(input)), null)));

/** The best cue that the search finds, with what it says of it. */
export function searchedSpec(): SpecContent {
	const found = must(recommend(withStature(1780)));
	return stored(must(specFrom(found, found.search)));
}

/** A usual snooker cue with metal in it. */
export const usualSpec = (): SpecContent =>
	specOf(
		withStature(1780, {
			hand: "right",
			player: { statureMm: 1780, gripCircleReadingsMm: [27.5, 28] },
			wishes: { buttWood: "gaboon-ebony", massG: 545 },
		}),
	);

/** A usual spec with another cue in it, planned and stationed anew. */
export function specWith(
	change: Partial<CueRequest>,
	wantedMassG = 560,
): SpecContent {
	const usual = usualSpec();
	const request = { ...usual.request, ...change };
	const {
		finished,
		cautions: _,
		...addedWeight
	} = must(planAddedWeight({ design: must(designFrom(request)), wantedMassG }));
	return stored({
		...usual,
		request,
		addedWeight,
		design: finished,
		stations: sheetStations(finished, {}),
		figures: {
			...usual.figures,
			length: { ...usual.figures.length, value: request.lengthMm },
			butt: { ...usual.figures.butt, value: request.buttDiameterMm },
			tip: { ...usual.figures.tip, value: request.tipDiameterMm },
			mass: { ...usual.figures.mass, value: wantedMassG },
		},
	});
}

/** Eight points and a front wedge over two veneers each. */
export const richSpec = (): SpecContent => {
	const veneers = [
		{ wood: "sugar-maple", thicknessMm: 0.6 },
		{ wood: "african-padauk", thicknessMm: 0.6 },
	] as const;
	return specWith(
		{
			splice: "hand-four-point",
			layout: "three-quarter",
			splicing: {
				points: { veneers },
				pointsBetween: { wood: "cocobolo", veneers },
				frontWedge: { wood: "snakewood", veneers },
			},
			fittings: { endPieceMm: 150 },
		},
		500,
	);
};

/** All that can be planed into one butt: more lines than two pages hold. */
export const boundlessSpec = (): SpecContent => {
	const veneers = Array.from(
		{ length: 3 },
		() => ({ wood: "sugar-maple", thicknessMm: 0.6 }) as const,
	);
	return specWith(
		{
			splicing: {
				points: { veneers },
				pointsBetween: { wood: "cocobolo", veneers },
				frontWedge: { wood: "snakewood", veneers },
				allRound: { wood: "bubinga", count: 4, veneers },
			},
		},
		500,
	);
};
