import fc from "fast-check";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";

/** A snooker cue as a workshop would make it unless asked otherwise. */
export const SNOOKER_REQUEST: CueRequest = {
	lengthMm: 1460,
	buttDiameterMm: 29,
	tipDiameterMm: 9.5,
	taperShape: "even",
	shaftWood: "white-ash",
	buttWood: "gaboon-ebony",
	splice: "hand-four-point",
	layout: "three-quarter",
	ferruleMetal: "brass",
};

export const cue = (change: Partial<CueRequest> = {}): CueDesign =>
	must(designFrom({ ...SNOOKER_REQUEST, ...change }));

/** The same half an inch longer, 58 in. */
export const SNOOKER_58: CueRequest = { ...SNOOKER_REQUEST, lengthMm: 1473 };

export const cue58 = (change: Partial<CueRequest> = {}): CueDesign =>
	must(designFrom({ ...SNOOKER_58, ...change }));

const requestsFrom = (shortestMm: number): fc.Arbitrary<CueRequest> =>
	fc
		.record({
			lengthMm: fc.double({ min: shortestMm, max: 1700, noNaN: true }),
			tipDiameterMm: fc.double({ min: 7, max: 14, noNaN: true }),
			growth: fc.double({ min: 0, max: 1, noNaN: true }),
			taperShape: fc.constantFrom<CueRequest["taperShape"]>(
				"straight",
				"even",
				"slim-forward",
				"full-forward",
			),
			shaftWood: fc.constantFrom<CueRequest["shaftWood"]>(
				"white-ash",
				"sugar-maple",
				"hornbeam",
			),
			buttWood: fc.constantFrom<CueRequest["buttWood"]>(
				"gaboon-ebony",
				"indian-rosewood",
				"black-walnut",
				"snakewood",
			),
			splice: fc.constantFrom<CueRequest["splice"]>(
				"plain",
				"hand-four-point",
				"machine-four-point",
			),
			layout: fc.constantFrom<CueRequest["layout"]>(
				"one-piece",
				"three-quarter",
				"centre",
			),
			ferruleMetal: fc.constantFrom<CueRequest["ferruleMetal"]>(
				"brass",
				"stainless-steel",
			),
		})
		.map(({ growth, ...rest }) => {
			const least = Math.max(22, rest.tipDiameterMm + 8);
			return { ...rest, buttDiameterMm: least + growth * (34 - least) };
		});

/** Requests inside the limits of `designFrom`, long enough for any usual splice. */
export const anyRequest = requestsFrom(900);

/** Any cue the project builds. */
export const anyCue: fc.Arbitrary<CueDesign> = requestsFrom(700).map(
	(request) => cue(request),
);

/** A bare solid of revolution of one wood: no leather, ferrule, joint or rounded edge. */
export function bareRound(p: {
	lengthMm: number;
	taper: CueDesign["taper"];
	wood?: CueDesign["shaftWood"];
	densityKgM3?: number;
}): CueDesign {
	const wood = p.wood ?? "white-ash";
	return {
		lengthMm: p.lengthMm,
		taper: p.taper,
		tip: { heightMm: 0, domeRadiusMm: 1000 },
		ferrule: { metal: "brass", lengthMm: 0, wallMm: 0.5 },
		shaftWood: wood,
		buttWood: wood,
		splice: { id: "plain", base: { kind: "through" }, cuts: [] },
		layout: "one-piece",
		joint: null,
		endJoint: null,
		addedWeight: [],
		plugs: [],
		buttEndRadiusMm: 0,
		densities: p.densityKgM3 ? { [wood]: { kgM3: p.densityKgM3, sd: 0 } } : {},
	};
}
