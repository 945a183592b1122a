import type { CueDesign } from "@/lib/cue/design";
import { sleevesOf } from "@/lib/cue/layers";
import { densityKgM3 } from "@/lib/cue/materials";
import { type BendingSection, bendingSectionAt } from "@/lib/cue/section";
import { diameterAtMm, domeDepthMm } from "@/lib/cue/taper";

/** A straight bar as bending sees it. Stations from the tip's crown. */
export interface BeamProfile {
	readonly lengthMm: number;
	/** Stations where mass or stiffness jumps, the two ends included, ascending. */
	readonly breaksMm: readonly number[];
	sectionAt(stationMm: number): BendingSection;
}

/**
 * The cue as a bar. The tip's leather counts with its mass, spread evenly over its height, and is
 * taken as stiff as the wood behind the ferrule: its own give is not known well enough, and at a free
 * end there is hardly any bending.
 */
export function beamProfileOf(design: CueDesign): BeamProfile {
	const { lengthMm, tip, ferrule, splice } = design;
	const behindFerrule = bendingSectionAt(
		design,
		tip.heightMm + ferrule.lengthMm,
	);
	const tipSection: BendingSection = {
		massPerLengthKgM:
			(densityKgM3(design, "tip-leather").value * tipVolumeMm3(design) * 1e-6) /
			tip.heightMm,
		stiffnessXNm2: behindFerrule.stiffnessXNm2,
		stiffnessYNm2: behindFerrule.stiffnessYNm2,
	};
	return {
		lengthMm,
		breaksMm: breaksOf(
			lengthMm,
			sleevesOf(design).flatMap((body) => [
				body.fromStationMm,
				body.toStationMm,
			]),
			[lengthMm - design.buttEndRadiusMm],
			splice.base.kind === "tenon"
				? [
						splice.base.joinStationMm,
						splice.base.joinStationMm + splice.base.tenonLengthMm,
					]
				: [],
		),
		sectionAt: (stationMm) =>
			stationMm < tip.heightMm
				? tipSection
				: bendingSectionAt(design, stationMm),
	};
}

/** A spherical cap on a cylinder as wide as the cue in the middle of the tip. */
function tipVolumeMm3(design: CueDesign): number {
	const { heightMm, domeRadiusMm } = design.tip;
	const radiusMm = diameterAtMm(design, heightMm / 2) / 2;
	const depthMm = Math.min(domeDepthMm(design), heightMm);
	return (
		Math.PI *
		((depthMm * depthMm * (3 * domeRadiusMm - depthMm)) / 3 +
			radiusMm * radiusMm * (heightMm - depthMm))
	);
}

/** Ends and breaks within them, ascending, those closer than a tenth of a millimetre merged. */
function breaksOf(
	lengthMm: number,
	...groups: readonly (readonly number[])[]
): readonly number[] {
	const inside = groups
		.flat()
		.filter((station) => station > 0.1 && station < lengthMm - 0.1)
		.sort((a, b) => a - b);
	const merged = [0];
	for (const station of inside)
		if (station - (merged[merged.length - 1] as number) > 0.1)
			merged.push(station);
	merged.push(lengthMm);
	return merged;
}
