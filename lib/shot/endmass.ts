import type { Estimate } from "@/lib/reference/estimate";
import { METALS, type MetalId, TIP_LEATHER } from "@/lib/reference/metals";
import { WOODS, type Wood, type WoodId } from "@/lib/reference/woods";
import { positive } from "./argument";
import { LEATHER_CONTACT_MS } from "./published";

/**
 * Effective end mass of a slender uniform shaft: sideways impulse over sideways tip speed at the
 * end of contact. A semi-infinite Euler–Bernoulli rod has the end impedance
 * F = (m′/√2)(EI/m′)^¼ √s · v, so the impulse is a half-integral of v. When the tip rides on the
 * turning ball under a half-sine forward force, v ∝ 1 − cos(πt/τ) and
 *   m_e = k m′ ℓ,  ℓ = √(τ √(EI/m′)),  k = [2 + ∫₀¹ cos(πy)/√y dy]/(2√(2π)) = 0.5481.
 * Mass fixed at the tip adds to m_e as it is. Derived here, not published.
 */
export const FOLLOWING_BALL_FACTOR = 0.548139844795;

/**
 * The same rod under a half-sine sideways force of its own, k = √(2/π)/∫₀¹ sin(πy)/√y dy. Friction
 * holds the tip to the ball only while there is forward force, so a real hit lies between the two.
 */
export const HALF_SINE_FORCE_FACTOR = 0.790212241411;

/** Thickness of tip leather in use. Common practice, no source. */
const TIP_HEIGHT_MM = 5;
/** Wall of a metal ferrule. Common practice, no source. */
const FERRULE_WALL_MM = 0.8;

/** Printed centre-loaded moduli hold some shear: add a tenth for bending alone (Wood Handbook, table 5-3 note). */
const SHEAR_FREE = 1.1;
/** Modulus over density where a wood's modulus is not known, GPa per kg/m³, and its spread. Assumed. */
const MODULUS_PER_DENSITY = 0.018;
const ASSUMED_MODULUS_CV = 0.25;

function shearFreeModulus(wood: Wood): { valueGPa: number; cv: number } {
	const printed = wood.modulusGPa;
	if (printed === null)
		return {
			valueGPa: MODULUS_PER_DENSITY * wood.density12KgM3.value,
			cv: ASSUMED_MODULUS_CV,
		};
	return {
		valueGPa:
			printed.value * (wood.modulusLoading === "centre" ? SHEAR_FREE : 1),
		cv: printed.sd / printed.value,
	};
}

/** Closed form k m′ ℓ in grams for a uniform round shaft of one wood. */
export function slenderShaftEndMassG(p: {
	readonly diameterMm: number;
	readonly modulusGPa: number;
	readonly densityKgM3: number;
	readonly contactTimeMs: number;
	readonly factor?: number;
}): number {
	positive("diameterMm", p.diameterMm);
	positive("modulusGPa", p.modulusGPa);
	positive("densityKgM3", p.densityKgM3);
	positive("contactTimeMs", p.contactTimeMs);
	const diameterM = p.diameterMm / 1000;
	const massPerLengthKgM = p.densityKgM3 * Math.PI * (diameterM / 2) ** 2;
	const waveM2PerS =
		(diameterM / 4) * Math.sqrt((p.modulusGPa * 1e9) / p.densityKgM3);
	const reachM = Math.sqrt((p.contactTimeMs / 1000) * waveM2PerS);
	return 1000 * (p.factor ?? FOLLOWING_BALL_FACTOR) * massPerLengthKgM * reachM;
}

const ringAreaMm2 = (outerMm: number, wallMm: number): number =>
	Math.PI * wallMm * (outerMm - wallMm);

/**
 * Effective end mass in grams of a shaft of this tip diameter, uniform for its first 200 mm or so,
 * with the tip's leather and what a metal ferrule weighs beyond the wood it replaces. Spread: modulus,
 * density, contact time and half the gap between the two ways the tip may be driven.
 */
export function endMassG(p: {
	readonly tipDiameterMm: number;
	readonly shaftWood: WoodId;
	readonly ferruleMetal: MetalId;
	readonly ferruleLengthMm: number;
	/** Taken as known when given; otherwise a leather tip's. */
	readonly contactTimeMs?: number;
}): Estimate {
	positive("tipDiameterMm", p.tipDiameterMm);
	if (!(p.ferruleLengthMm >= 0))
		throw new RangeError(
			`ferruleLengthMm must not be negative, got ${p.ferruleLengthMm}`,
		);
	const wood = WOODS[p.shaftWood];
	const density = wood.density12KgM3;
	const metal = METALS[p.ferruleMetal].densityKgM3;
	const modulus = shearFreeModulus(wood);
	const contact = LEATHER_CONTACT_MS;
	const contactTimeMs = p.contactTimeMs ?? contact.value;
	const contactCv =
		p.contactTimeMs === undefined ? contact.sd / contact.value : 0;

	const rodG = slenderShaftEndMassG({
		diameterMm: p.tipDiameterMm,
		modulusGPa: modulus.valueGPa,
		densityKgM3: density.value,
		contactTimeMs,
	});
	const tipVolumeMm3 = Math.PI * (p.tipDiameterMm / 2) ** 2 * TIP_HEIGHT_MM;
	const ringVolumeMm3 =
		ringAreaMm2(p.tipDiameterMm, FERRULE_WALL_MM) * p.ferruleLengthMm;
	const tipG = tipVolumeMm3 * TIP_LEATHER.densityKgM3.value * 1e-6;
	const ferruleG = ringVolumeMm3 * (metal.value - density.value) * 1e-6;

	// m_e of the rod goes as ρ^¾ E^¼ √τ.
	const driveSpread = (HALF_SINE_FORCE_FACTOR / FOLLOWING_BALL_FACTOR - 1) / 2;
	const rodCv = Math.hypot(
		driveSpread,
		(3 / 4) * (density.sd / density.value),
		modulus.cv / 4,
		contactCv / 2,
	);
	return {
		value: rodG + tipG + ferruleG,
		sd: Math.hypot(
			rodG * rodCv,
			tipVolumeMm3 * TIP_LEATHER.densityKgM3.sd * 1e-6,
			ringVolumeMm3 * metal.sd * 1e-6,
		),
		standing: "derived",
		sources: [
			...new Set([
				density.source,
				...(wood.modulusGPa ? [wood.modulusGPa.source] : []),
				metal.source,
				TIP_LEATHER.densityKgM3.source,
				contact.source,
			]),
		],
	};
}
