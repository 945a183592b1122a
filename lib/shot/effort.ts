import type { Estimate } from "@/lib/reference/estimate";
import { positive } from "./argument";

/**
 * Ball speed at equal effort. Cue and arm share a fixed energy, so cue speed falls as
 * (M + m_a)^(−1/2), with m_a the mass of forearm and hand felt at the grip. Shepard 1997 P3.3
 * with the forearm a uniform rod has m_a = M_f/3; the general form is derived from it.
 * Restitution cancels out of the best mass.
 */

interface Arm {
	readonly ballMassG: number;
	readonly armMassG: number;
}

/** Cue mass of most ball speed at equal effort: M* = [m + √(m² + 8 m m_a)]/2. */
export function bestMassAtEqualEffortG({ ballMassG, armMassG }: Arm): number {
	positive("ballMassG", ballMassG);
	if (!(armMassG >= 0))
		throw new RangeError(`armMassG must not be negative, got ${armMassG}`);
	return (ballMassG + Math.sqrt(ballMassG ** 2 + 8 * ballMassG * armMassG)) / 2;
}

/** Ball speed at equal effort up to a constant factor: M/[(M + m)√(M + m_a)]. */
const speedShape = (p: Arm & { readonly cueMassG: number }): number =>
	p.cueMassG /
	((p.cueMassG + p.ballMassG) * Math.sqrt(p.cueMassG + p.armMassG));

/** Ball speed at equal effort as a share of the speed with the best mass: 1 there, below 1 elsewhere. */
export function equalEffortSpeedFraction(
	p: Arm & { readonly cueMassG: number },
): number {
	positive("cueMassG", p.cueMassG);
	const best = bestMassAtEqualEffortG(p);
	return speedShape(p) / speedShape({ ...p, cueMassG: best });
}

/**
 * n in v ∝ M^(−n) at this cue mass, ½M/(M + m_a). For comparison with measured swings:
 * 0.21–0.27 for thrown and swung objects (Cross & Bower 2006 and the work they quote).
 */
export function swingExponent(p: {
	readonly cueMassG: number;
	readonly armMassG: number;
}): number {
	positive("cueMassG", p.cueMassG);
	return (0.5 * p.cueMassG) / (p.cueMassG + p.armMassG);
}

interface Segments {
	readonly bodyMassKg: number;
	readonly forearmShare: number;
	readonly forearmCentreRatio: number;
	readonly forearmGyrationRatio: number;
	readonly forearmLengthMm: number;
	readonly handShare: number;
	readonly handCentreRatio: number;
	readonly handLengthMm: number;
}

/**
 * De Leva 1996: shares of body mass, centres from the elbow end and gyration radii as shares of
 * segment length. Lengths and mean body masses of that sample are recalled from memory; only the
 * ratio of the lengths enters.
 */
const SEGMENTS: Readonly<Record<"female" | "male", Segments>> = {
	male: {
		bodyMassKg: 73,
		forearmShare: 0.0162,
		forearmCentreRatio: 0.4574,
		forearmGyrationRatio: 0.276,
		forearmLengthMm: 268.9,
		handShare: 0.0061,
		handCentreRatio: 0.79,
		handLengthMm: 86.2,
	},
	female: {
		bodyMassKg: 61.9,
		forearmShare: 0.0138,
		forearmCentreRatio: 0.4559,
		forearmGyrationRatio: 0.261,
		forearmLengthMm: 264.3,
		handShare: 0.0056,
		handCentreRatio: 0.7474,
		handLengthMm: 78,
	},
};

/**
 * Felt mass over body mass: the hand at its own centre, where the cue is held, plus the forearm's
 * inertia about the elbow divided by the square of the distance from elbow to grip.
 */
function feltShare(s: Segments): number {
	const gripFromElbowMm =
		s.forearmLengthMm + s.handCentreRatio * s.handLengthMm;
	const leverRatio = s.forearmLengthMm / gripFromElbowMm;
	return (
		s.handShare +
		s.forearmShare *
			(s.forearmCentreRatio ** 2 + s.forearmGyrationRatio ** 2) *
			leverRatio ** 2
	);
}

/** Person to person and stroke to stroke (some upper arm moves in a power shot). Assumed. */
const MODEL_SPREAD = 0.15;
/** Spread of adult body mass where it was not given. Assumed. */
const BODY_MASS_SPREAD = 0.18;

/** Mass of forearm and hand felt at the grip, in grams. Body mass and sex narrow it where given. */
export function feltArmMassG(p: {
	readonly bodyMassKg?: number;
	readonly sex?: "female" | "male";
}): Estimate {
	if (p.bodyMassKg !== undefined) positive("bodyMassKg", p.bodyMassKg);
	const of = (sex: "female" | "male"): number => {
		const segments = SEGMENTS[sex];
		return 1000 * feltShare(segments) * (p.bodyMassKg ?? segments.bodyMassKg);
	};
	const value = p.sex ? of(p.sex) : (of("female") + of("male")) / 2;
	const sexSpreadG = p.sex ? 0 : Math.abs(of("male") - of("female")) / 2;
	const massSpread = p.bodyMassKg === undefined ? BODY_MASS_SPREAD : 0;
	return {
		value,
		sd: Math.hypot(value * MODEL_SPREAD, value * massSpread, sexSpreadG),
		standing: "derived",
		sources: ["de-leva-1996", "shepard-1997"],
	};
}
