import type { CueDesign, Joint } from "@/lib/cue/design";
import { bendingModulusGPa, densityKgM3 } from "@/lib/cue/materials";
import { diameterAtMm } from "@/lib/cue/taper";
import { woodKernel } from "@/lib/cue/wood-kernel";
import { gaussLegendre } from "@/lib/numerics/quadrature";
import {
	addAt,
	type GeometryTable,
	slotOfWood,
	WoodSection,
} from "./geometry-table";

/** Points on each stretch of a joint. */
const JOINT_RULE = 3;

/**
 * A table with a metal joint put in: pin and collars take the place of wood. `plain` is the table of
 * the same design without the joint. Throws where the joint reaches past the tip, the butt edge or
 * the clamp.
 */
export function withJoint(p: {
	plain: GeometryTable;
	design: CueDesign;
	joint: Joint;
}): GeometryTable {
	const { plain, design, joint } = p;
	const { lengthMm } = design;
	const { stationMm, pinReachMm, collarMm } = joint;
	if (
		stationMm - pinReachMm < design.tip.heightMm + design.ferrule.lengthMm ||
		stationMm + pinReachMm > lengthMm - design.buttEndRadiusMm
	)
		throw new RangeError(`a joint at ${stationMm} mm leaves the wood`);
	const section = new WoodSection();
	const wood = woodKernel(design, slotOfWood(design));
	const shaft = { ...plain.shaft };
	const butt = { ...plain.butt };
	const fixed = { ...plain.fixed };
	const gPerMm3 = densityKgM3(design, joint.metal).value * 1e-6;
	const modulus = bendingModulusGPa(joint.metal).value * 1e3;
	const pinMm = joint.pinDiameterMm / 2;
	// The joint of a plain butt stands where its woods meet, so its middle is an edge too.
	const edges = [-pinReachMm, -collarMm, 0, collarMm, pinReachMm];
	const give: number[] = [];
	const { nodes, weights } = gaussLegendre(JOINT_RULE);
	for (let k = 0; k + 1 < edges.length; k++) {
		const from = stationMm + (edges[k] as number);
		const span = (edges[k + 1] as number) - (edges[k] as number);
		for (let i = 0; i < JOINT_RULE; i++) {
			const at = from + (span * ((nodes[i] as number) + 1)) / 2;
			const weightMm = (span * (weights[i] as number)) / 2;
			const surfaceMm = diameterAtMm(design, at) / 2;
			const isCollar = k === 1 || k === 2;
			const radius = isCollar ? surfaceMm : Math.min(pinMm, surfaceMm);
			const x = lengthMm - at;
			section.clear();
			wood(at, radius, section.add);
			const [area0, area1] = section.areas as [number, number];
			const [polar0, polar1] = section.polars as [number, number];
			addAt(shaft, x, { amount: -weightMm * area0, polar: -weightMm * polar0 });
			addAt(butt, x, { amount: -weightMm * area1, polar: -weightMm * polar1 });
			const polar = (Math.PI / 2) * radius ** 4;
			addAt(fixed, x, {
				amount: weightMm * Math.PI * radius * radius * gPerMm3,
				polar: weightMm * polar * gPerMm3,
			});
			if (at > plain.clampStationMm) continue;
			// The wooden section is taken out again and the jointed one put in its place.
			section.clear();
			wood(at, surfaceMm, section.add);
			const [whole0, whole1] = section.polars as [number, number];
			const lever = weightMm * at * at;
			give.push(-lever, whole0, whole1, 0);
			give.push(lever, whole0 - polar0, whole1 - polar1, modulus * polar);
		}
	}
	const behindJointMm = lengthMm - (stationMm + pinReachMm);
	return {
		...plain,
		shaft,
		butt,
		fixed,
		give: [...plain.give, give],
		bores: plain.bores.flatMap((bore) => bore.within(behindJointMm)),
	};
}
