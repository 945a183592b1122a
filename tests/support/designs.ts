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

/** Any cue the project builds. */
export const anyCue: fc.Arbitrary<CueDesign> = fc
	.record({
		lengthMm: fc.double({ min: 700, max: 1700, noNaN: true }),
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
		),
		buttWood: fc.constantFrom<CueRequest["buttWood"]>(
			"gaboon-ebony",
			"indian-rosewood",
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
		return cue({ ...rest, buttDiameterMm: least + growth * (34 - least) });
	});
