import type { CueDesign, Plug, Slug } from "@/lib/cue/design";
import { diameterAtMm, outlineRadiusMm } from "@/lib/cue/taper";
import { rootBetween } from "@/lib/numerics/roots";
import type { MetalId } from "@/lib/reference/metals";

/** What can be drilled, mm. Common practice, no source. */
export const BORE = {
	/** Drill sizes, slimmest first. */
	diametersMm: [8, 9, 10, 11, 12, 13, 14],
	/** Wood that must stay round the bore. */
	minWallMm: 5,
	maxDepthMm: 300,
	/** The wooden plug that closes the bore at the butt end is at least this long. */
	minPlugMm: 15,
	/** Wood left between a bore and a joint's pin or a tenon, and between two bores. */
	clearanceMm: 10,
	/** A slug longer than this asks for the next drill. */
	preferredSlugMm: 150,
	/** Deepest slug behind a joint, counted from the end of the joint's pin. */
	maxJointSlugMm: 150,
} as const;

/** Deepest bore of a diameter from the butt end that keeps the wall and the joint sound; 0 if none. */
export function deepestBoreMm(design: CueDesign, diameterMm: number): number {
	const needed = diameterMm + 2 * BORE.minWallMm;
	const edgeMm = 2 * outlineRadiusMm(design, design.lengthMm);
	if (edgeMm < diameterMm || diameterAtMm(design, design.lengthMm) < needed)
		return 0;
	const behindJointMm = design.lengthMm - frontOfBoreMm(design);
	const limitMm = Math.max(0, Math.min(BORE.maxDepthMm, behindJointMm));
	const wall = (depthMm: number) =>
		diameterAtMm(design, design.lengthMm - depthMm) - needed;
	if (wall(limitMm) >= 0) return limitMm;
	const result = rootBetween({
		f: wall,
		from: 0,
		to: limitMm,
		tolerance: 1e-6,
	});
	return result.converged ? Math.max(0, result.root - 1e-6) : 0;
}

/** Station in front of which nothing may be drilled from the butt end. */
function frontOfBoreMm(design: CueDesign): number {
	const { base } = design.splice;
	const jointEndMm = Math.max(
		0,
		...[design.joint, design.endJoint].map((joint) =>
			joint ? joint.stationMm + joint.pinReachMm : 0,
		),
	);
	const tenonEndMm =
		base.kind === "tenon" ? base.joinStationMm + base.tenonLengthMm : 0;
	const ferruleEndMm = design.tip.heightMm + design.ferrule.lengthMm;
	return Math.max(jointEndMm, tenonEndMm, ferruleEndMm) + BORE.clearanceMm;
}

/** A slug behind the joint's pin, set in from the joint face; null where there is no joint or no room. */
export function jointBore(
	design: CueDesign,
): { fromStationMm: number; diameterMm: number; maxLengthMm: number } | null {
	const { joint } = design;
	if (!joint) return null;
	const fromStationMm = joint.stationMm + joint.pinReachMm;
	const wallMm =
		(diameterAtMm(design, fromStationMm) - joint.pinDiameterMm) / 2;
	const { endJoint } = design;
	const endMm = endJoint
		? endJoint.stationMm - endJoint.pinReachMm
		: design.lengthMm;
	const roomMm = endMm - fromStationMm - BORE.clearanceMm;
	if (wallMm < BORE.minWallMm || roomMm <= BORE.clearanceMm) return null;
	return {
		fromStationMm,
		diameterMm: joint.pinDiameterMm,
		maxLengthMm: Math.min(BORE.maxJointSlugMm, roomMm),
	};
}

export interface EndSlug {
	readonly diameterMm: number;
	readonly slugLengthMm: number;
	/** From the butt end to the slug's rear face; a plug of butt wood fills it. */
	readonly slugFromButtMm: number;
}

export interface JointSlug {
	readonly fromStationMm: number;
	readonly diameterMm: number;
	readonly slugLengthMm: number;
}

export interface Placement {
	readonly metal: MetalId;
	readonly end: EndSlug | null;
	readonly joint: JointSlug | null;
}

/** The design with the metal of a placement in it. */
export function withMetal(design: CueDesign, placement: Placement): CueDesign {
	const { metal, end, joint } = placement;
	const addedWeight: Slug[] = [...design.addedWeight];
	const plugs: Plug[] = [...design.plugs];
	if (joint)
		addedWeight.push({
			fromStationMm: joint.fromStationMm,
			toStationMm: joint.fromStationMm + joint.slugLengthMm,
			diameterMm: joint.diameterMm,
			metal,
		});
	if (end) {
		const rearMm = design.lengthMm - end.slugFromButtMm;
		addedWeight.push({
			fromStationMm: rearMm - end.slugLengthMm,
			toStationMm: rearMm,
			diameterMm: end.diameterMm,
			metal,
		});
		plugs.push({
			fromStationMm: rearMm,
			toStationMm: design.lengthMm,
			diameterMm: end.diameterMm,
			wood: design.buttWood,
		});
	}
	return { ...design, addedWeight, plugs };
}
