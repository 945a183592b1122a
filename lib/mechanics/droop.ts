import { factor, multiply, solve } from "@/lib/numerics/banded";
import { type Axis, beamOf, sidewaysShift } from "./beam";
import type { BeamProfile } from "./profile";
import { cutOff, heldFreedoms, nodeAt } from "./support";

/** Standard gravity, exact by definition. */
const GRAVITY_M_PER_S2 = 9.80665;

export interface Droop {
	/** How far the tip hangs below the line of the cue at the clamp, under the cue's own weight. */
	readonly tipDroopMm: number;
	/** Slope of the tip below that line, degrees. */
	readonly tipSlopeDeg: number;
	/** How far the tip gives for one newton sideways. */
	readonly tipGiveMmPerN: number;
}

/** Own-weight droop and give of the tip of a level cue clamped at one station, by beam theory. */
export function droopClampedAt(p: {
	profile: BeamProfile;
	axis: Axis;
	clampStationMm: number;
	fineness?: number;
}): Droop {
	const beam = beamOf({
		profile: p.profile,
		fineness: p.fineness ?? 4,
		extraMm: [p.clampStationMm],
	});
	const freedoms = heldFreedoms(nodeAt(beam, p.clampStationMm), "clamped");
	const system = factor(cutOff(beam.stiffness[p.axis], freedoms, 1));
	const weight = new Float64Array(beam.mass.size);
	multiply(beam.mass, sidewaysShift(beam), weight);
	for (let i = 0; i < weight.length; i++)
		weight[i] = (weight[i] as number) * GRAVITY_M_PER_S2;
	for (const i of freedoms) weight[i] = 0;
	solve(system, weight);
	const push = new Float64Array(beam.mass.size);
	push[0] = freedoms.includes(0) ? 0 : 1;
	solve(system, push);
	return {
		tipDroopMm: 1000 * (weight[0] as number),
		tipSlopeDeg: (Math.abs(weight[1] as number) * 180) / Math.PI,
		tipGiveMmPerN: 1000 * (push[0] as number),
	};
}
