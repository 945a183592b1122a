import type { BeamProfile } from "@/lib/mechanics/profile";

/** A round bar of one material whose diameter runs straight from tip to butt. */
export interface RoundBar {
	readonly lengthMm: number;
	readonly tipMm: number;
	readonly buttMm: number;
	readonly modulusGPa: number;
	readonly densityKgM3: number;
}

export const diameterOf = (bar: RoundBar, stationMm: number): number =>
	bar.tipMm + ((bar.buttMm - bar.tipMm) * stationMm) / bar.lengthMm;

export const areaM2 = (diameterMm: number): number =>
	Math.PI * (diameterMm / 2000) ** 2;

export const secondMomentM4 = (diameterMm: number): number =>
	(Math.PI / 4) * (diameterMm / 2000) ** 4;

export const roundProfile = (bar: RoundBar): BeamProfile => ({
	lengthMm: bar.lengthMm,
	breaksMm: [0, bar.lengthMm],
	sectionAt(stationMm) {
		const diameterMm = diameterOf(bar, stationMm);
		const stiffness = bar.modulusGPa * 1e9 * secondMomentM4(diameterMm);
		return {
			massPerLengthKgM: bar.densityKgM3 * areaM2(diameterMm),
			stiffnessXNm2: stiffness,
			stiffnessYNm2: stiffness,
		};
	},
});

/** Ω = ωL²√(m′/EI) with m′ and EI of the butt end. */
export const asOmega = (bar: RoundBar, frequencyHz: number): number =>
	2 *
	Math.PI *
	frequencyHz *
	(bar.lengthMm / 1000) ** 2 *
	Math.sqrt(
		(bar.densityKgM3 * areaM2(bar.buttMm)) /
			(bar.modulusGPa * 1e9 * secondMomentM4(bar.buttMm)),
	);
