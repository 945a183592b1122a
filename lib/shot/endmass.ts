import type { CueDesign } from "@/lib/cue/design";
import { bendingModulusGPa, densityKgM3 } from "@/lib/cue/materials";
import { TEMPLATE } from "@/lib/cue/template";
import { beamOf } from "@/lib/mechanics/beam";
import { type Drive, endMassOfBeamG } from "@/lib/mechanics/impulse";
import { beamProfileOf } from "@/lib/mechanics/profile";
import type { Estimate } from "@/lib/reference/estimate";
import { METALS, type MetalId, TIP_LEATHER } from "@/lib/reference/metals";
import { WOODS, type WoodId } from "@/lib/reference/woods";
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
 * with the project's usual tip height and ferrule wall: the leather, and what the ferrule weighs beyond
 * the wood it replaces. A shaft of the project's "even" taper comes within 2 %, other shapes within 10 %
 * (`endMassOfDesignG`). Spread: modulus, density, contact time and half the gap between the two ways the
 * tip may be driven.
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
	const density = WOODS[p.shaftWood].density12KgM3;
	const metal = METALS[p.ferruleMetal].densityKgM3;
	const modulus = bendingModulusGPa(p.shaftWood);
	const contact = LEATHER_CONTACT_MS;
	const contactTimeMs = p.contactTimeMs ?? contact.value;
	const contactCv =
		p.contactTimeMs === undefined ? contact.sd / contact.value : 0;

	const rodG = slenderShaftEndMassG({
		diameterMm: p.tipDiameterMm,
		modulusGPa: modulus.value,
		densityKgM3: density.value,
		contactTimeMs,
	});
	const tipVolumeMm3 =
		Math.PI * (p.tipDiameterMm / 2) ** 2 * TEMPLATE.tipHeightMm;
	const ringVolumeMm3 =
		ringAreaMm2(p.tipDiameterMm, TEMPLATE.ferruleWallMm) * p.ferruleLengthMm;
	const tipG = tipVolumeMm3 * TIP_LEATHER.densityKgM3.value * 1e-6;
	const ferruleG = ringVolumeMm3 * (metal.value - density.value) * 1e-6;

	// m_e of the rod goes as ρ^¾ E^¼ √τ.
	const driveSpread = (HALF_SINE_FORCE_FACTOR / FOLLOWING_BALL_FACTOR - 1) / 2;
	const rodCv = Math.hypot(
		driveSpread,
		(3 / 4) * (density.sd / density.value),
		modulus.sd / modulus.value / 4,
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
				...modulus.sources,
				metal.source,
				TIP_LEATHER.densityKgM3.source,
				contact.source,
			]),
		],
	};
}

/**
 * Effective end mass in grams of a whole design, from the transient of the composite bar with its tip
 * and ferrule, the tip following the ball. Spread: half the gap to a half-sine sideways force, modulus,
 * density and contact time.
 */
export function endMassOfDesignG(
	design: CueDesign,
	contactTimeMs?: number,
): Estimate {
	const beam = beamOf({ profile: beamProfileOf(design), fineness: 2 });
	const contact = LEATHER_CONTACT_MS;
	const known = contactTimeMs !== undefined;
	const at = (timeMs: number, drive: Drive = "following-ball"): number =>
		endMassOfBeamG({
			beam,
			axis: "x",
			contactTimeMs: timeMs,
			drive,
			steps: 24,
			reaches: 8,
		});
	const timeMs = contactTimeMs ?? contact.value;
	const value = at(timeMs);
	const modulus = bendingModulusGPa(design.shaftWood);
	const density = densityKgM3(design, design.shaftWood);
	const byTime = known
		? 0
		: (at(contact.value + contact.sd) - at(contact.value - contact.sd)) / 2;
	return {
		value,
		sd: Math.hypot(
			(at(timeMs, "half-sine-force") - value) / 2,
			// As for the slender rod; tip and ferrule do not share these, so this errs wide.
			(value * modulus.sd) / modulus.value / 4,
			(3 * value * density.sd) / density.value / 4,
			byTime,
		),
		standing: "derived",
		sources: [
			...new Set([
				...modulus.sources,
				...density.sources,
				...(known ? [] : [contact.source]),
			]),
		],
	};
}
