import type { CueDesign } from "@/lib/cue/design";
import { diameterAtMm, outlineRadiusMm } from "@/lib/cue/taper";
import { rootBetween } from "@/lib/numerics/roots";
import type { MetalId } from "@/lib/reference/metals";

/** What can be drilled from the butt end, mm. Common practice, no source. */
export const BORE = {
	/** Drill sizes, slimmest first. */
	diametersMm: [8, 9, 10, 11, 12, 13, 14],
	/** Wood that must stay round the bore. */
	minWallMm: 5,
	maxDepthMm: 300,
	/** The wooden plug that closes the bore is at least this long. */
	minPlugMm: 15,
	/** Wood left between the bore and a joint's pin or a tenon. */
	clearanceMm: 10,
	/** A slug longer than this asks for the next drill. */
	preferredSlugMm: 150,
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

/** Station in front of which nothing may be drilled. */
function frontOfBoreMm(design: CueDesign): number {
	const { base } = design.splice;
	const jointEndMm = design.joint
		? design.joint.stationMm + design.joint.pinReachMm
		: 0;
	const tenonEndMm =
		base.kind === "tenon" ? base.joinStationMm + base.tenonLengthMm : 0;
	const ferruleEndMm = design.tip.heightMm + design.ferrule.lengthMm;
	return Math.max(jointEndMm, tenonEndMm, ferruleEndMm) + BORE.clearanceMm;
}

export interface SlugPlacement {
	readonly metal: MetalId;
	readonly diameterMm: number;
	readonly slugLengthMm: number;
	/** From the butt end to the slug's rear face; the plug fills it. */
	readonly slugFromButtMm: number;
}

/** The design with a slug in a bore from the butt end, closed behind it by a plug of butt wood. */
export function withSlug(
	design: CueDesign,
	placement: SlugPlacement,
): CueDesign {
	const rearMm = design.lengthMm - placement.slugFromButtMm;
	return {
		...design,
		addedWeight: [
			...design.addedWeight,
			{
				fromStationMm: rearMm - placement.slugLengthMm,
				toStationMm: rearMm,
				diameterMm: placement.diameterMm,
				metal: placement.metal,
			},
		],
		plugs: [
			...design.plugs,
			{
				fromStationMm: rearMm,
				toStationMm: design.lengthMm,
				diameterMm: placement.diameterMm,
				wood: design.buttWood,
			},
		],
	};
}
