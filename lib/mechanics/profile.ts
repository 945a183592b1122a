import type { CueDesign } from "@/lib/cue/design";
import { sleevesOf } from "@/lib/cue/layers";
import { type BendingSection, bendingSectionAt } from "@/lib/cue/section";

/** A straight bar as bending sees it. Stations from the tip's crown. */
export interface BeamProfile {
	readonly lengthMm: number;
	/** Stations where mass or stiffness jumps, the two ends included, ascending. */
	readonly breaksMm: readonly number[];
	sectionAt(stationMm: number): BendingSection;
}

/**
 * The cue as a bar. The tip's leather counts with its mass and is taken as stiff as the wood behind
 * the ferrule: its own give is not known well enough, and at a free end there is hardly any bending.
 */
export function beamProfileOf(design: CueDesign): BeamProfile {
	const { lengthMm, tip, ferrule, splice } = design;
	const behindFerrule = bendingSectionAt(
		design,
		tip.heightMm + ferrule.lengthMm,
	);
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
		sectionAt(stationMm) {
			const section = bendingSectionAt(design, stationMm);
			return stationMm < tip.heightMm
				? {
						massPerLengthKgM: section.massPerLengthKgM,
						stiffnessXNm2: behindFerrule.stiffnessXNm2,
						stiffnessYNm2: behindFerrule.stiffnessYNm2,
					}
				: section;
		},
	};
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
