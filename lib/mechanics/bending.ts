import type { CueDesign } from "@/lib/cue/design";
import { bendingModulusGPa, densityKgM3 } from "@/lib/cue/materials";
import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import type { Axis } from "./beam";
import { droopClampedAt } from "./droop";
import { beamProfileOf } from "./profile";
import { freeModes, heldModes } from "./vibration";

/** How a cue bends in one plane of its section. */
export interface PlaneBending {
	/** First three frequencies hanging free. */
	readonly freeHz: readonly Estimate[];
	/** Stations, mm from the tip, that stay still in the first free bending. */
	readonly stillMm: readonly number[];
	/** First bending frequency held at the grip: a light hand is nearer the first, a fist the second. */
	readonly heldHz: { readonly pinned: Estimate; readonly clamped: Estimate };
	/** Tip below the line of the grip under the cue's own weight, clamped at the grip. */
	readonly droopMm: Estimate;
	/** Sideways give of the tip, clamped at the grip. */
	readonly giveMmPerN: Estimate;
}

export interface CueBending {
	/** Bending that moves the axis along x, the first splice's side, and along y. */
	readonly planes: Readonly<Record<Axis, PlaneBending>>;
	/** Stiffest over softest plane in the first free frequency, 1 where the section has no side. */
	readonly sideRatio: number;
}

/**
 * Bending figures of a design with bands. The spread of modulus and density is taken as shared by all
 * its woods, which errs wide: frequency as √(E/ρ), droop as ρ/E, give as 1/E. Refuses a grip within
 * 10 mm of the butt end or past the middle of the cue.
 */
export function bendingOf(p: {
	design: CueDesign;
	gripFromButtMm: number;
}): Outcome<CueBending> {
	const { design, gripFromButtMm } = p;
	const refusal = outside(
		"gripFromButtMm",
		gripFromButtMm,
		10,
		design.lengthMm / 2,
	);
	if (refusal) return refuse(refusal);
	const x = plane(design, design.lengthMm - gripFromButtMm, "x");
	const y = plane(design, design.lengthMm - gripFromButtMm, "y");
	const first = (one: PlaneBending): number => one.freeHz[0]?.value ?? 0;
	return accept({
		planes: { x, y },
		sideRatio: Math.max(first(x), first(y)) / Math.min(first(x), first(y)),
	});
}

function plane(
	design: CueDesign,
	gripStationMm: number,
	axis: Axis,
): PlaneBending {
	const profile = beamProfileOf(design);
	const spread = woodSpread(design);
	const estimate = (value: number, cv: number): Estimate => ({
		value,
		sd: value * cv,
		standing: "derived",
		sources: spread.sources,
	});
	const frequency = (value: number): Estimate =>
		estimate(value, Math.hypot(spread.modulusCv, spread.densityCv) / 2);
	const free = freeModes({ profile, axis, count: 3 });
	const held = (hold: "pinned" | "clamped"): Estimate => {
		const [mode] = heldModes({ profile, axis, count: 1, gripStationMm, hold });
		if (!mode) throw new Error(`no ${hold} mode at ${gripStationMm} mm`);
		return frequency(mode.frequencyHz);
	};
	const droop = droopClampedAt({
		profile,
		axis,
		clampStationMm: gripStationMm,
	});
	return {
		freeHz: free.map((mode) => frequency(mode.frequencyHz)),
		stillMm: free[0]?.nodesMm ?? [],
		heldHz: { pinned: held("pinned"), clamped: held("clamped") },
		droopMm: estimate(
			droop.tipDroopMm,
			Math.hypot(spread.modulusCv, spread.densityCv),
		),
		giveMmPerN: estimate(droop.tipGiveMmPerN, spread.modulusCv),
	};
}

/** The wider relative spread of the shaft's and the butt's wood, with what both rest on. */
export function woodSpread(design: CueDesign): {
	readonly modulusCv: number;
	readonly densityCv: number;
	readonly sources: Estimate["sources"];
} {
	const woods = [design.shaftWood, design.buttWood];
	const moduli = woods.map(bendingModulusGPa);
	const densities = woods.map((wood) => densityKgM3(design, wood));
	const widest = (all: readonly Estimate[]): number =>
		Math.max(...all.map((one) => one.sd / one.value));
	return {
		modulusCv: widest(moduli),
		densityCv: widest(densities),
		sources: [
			...new Set([...moduli, ...densities].flatMap((one) => one.sources)),
		],
	};
}
