import fc from "fast-check";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";

/** A common snooker cue. */
export const SNOOKER: CueRequest = {
	lengthMm: 1473,
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
	must(designFrom({ ...SNOOKER, ...change }));

/** Requests inside the limits of `designFrom`. */
export const anyRequest: fc.Arbitrary<CueRequest> = fc
	.record({
		lengthMm: fc.double({ min: 900, max: 1700, noNaN: true }),
		tipDiameterMm: fc.double({ min: 7, max: 14, noNaN: true }),
		growthMm: fc.double({ min: 8, max: 20, noNaN: true }),
		taperShape: fc.constantFrom(
			"straight",
			"even",
			"slim-forward",
			"full-forward",
		),
		shaftWood: fc.constantFrom("white-ash", "sugar-maple", "hornbeam"),
		buttWood: fc.constantFrom(
			"indian-rosewood",
			"gaboon-ebony",
			"black-walnut",
			"snakewood",
		),
		splice: fc.constantFrom("plain", "hand-four-point", "machine-four-point"),
		layout: fc.constantFrom("one-piece", "three-quarter", "centre"),
		ferruleMetal: fc.constantFrom("brass", "stainless-steel"),
	})
	.map(({ growthMm, ...rest }) => ({
		...rest,
		buttDiameterMm: Math.min(34, Math.max(22, rest.tipDiameterMm + growthMm)),
	})) as fc.Arbitrary<CueRequest>;

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
