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
	const { lengthMm, tip } = design;
	const tipSection = tipSectionOf(design, bendingSectionAt);
	return {
		lengthMm,
		breaksMm: breaksOf(design),
		sectionAt: (stationMm) =>
			stationMm < tip.heightMm
				? tipSection
				: bendingSectionAt(design, stationMm),
	};
}

/** The tip's section: its mass over its height, and the stiffness of what is behind the ferrule. */
export function tipSectionOf(
	design: CueDesign,
	sectionAt: (design: CueDesign, stationMm: number) => BendingSection,
): BendingSection {
	const { tip, ferrule } = design;
	const behind = sectionAt(design, tip.heightMm + ferrule.lengthMm);
	const massG =
		densityKgM3(design, "tip-leather").value * tipVolumeMm3(design) * 1e-6;
	return {
		massPerLengthKgM: massG / tip.heightMm,
		stiffnessXNm2: behind.stiffnessXNm2,
		stiffnessYNm2: behind.stiffnessYNm2,
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

/**
 * Stations where a body begins or ends, butt wood is joined on or the butt edge begins, and both ends,
 * ascending; those closer than a tenth of a millimetre are merged.
 */
export function breaksOf(design: CueDesign): readonly number[] {
	const { lengthMm, splice } = design;
	const inside: number[] = [lengthMm - design.buttEndRadiusMm];
	for (const body of sleevesOf(design))
		inside.push(body.fromStationMm, body.toStationMm);
	if (splice.base.kind === "tenon")
		inside.push(
			splice.base.joinStationMm,
			splice.base.joinStationMm + splice.base.tenonLengthMm,
		);
	inside.sort((a, b) => a - b);
	const merged = [0];
	let last = 0;
	for (const station of inside) {
		if (station - last <= 0.1 || station >= lengthMm - 0.1) continue;
		merged.push(station);
		last = station;
	}
	merged.push(lengthMm);
	return merged;
}
