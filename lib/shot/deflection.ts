import { offsetShare, positive } from "./argument";

/**
 * Angle between the cue's line and the line the cue ball leaves on, for side applied level.
 * Symbols: x = b/R, m ball mass, m_e effective end mass of the cue, α the angle.
 * Measured angles do not depend on the speed of the shot (TP B.1 and the tests it quotes).
 */

const DEG = 180 / Math.PI;

interface Impact {
	readonly offsetRatio: number;
	readonly ballMassG: number;
	readonly endMassG: number;
}

function ballOverEnd(p: Impact): number {
	offsetShare("offsetRatio", p.offsetRatio);
	positive("ballMassG", p.ballMassG);
	positive("endMassG", p.endMassG);
	return p.ballMassG / p.endMassG;
}

/**
 * Offset read from the cue's axis (Alciatore TP A.31 eq. 13):
 * tan α = (5/2) x √(1 − x²) / [1 + m/m_e + (5/2)(1 − x²)].
 */
export function squirtDeg(p: Impact): number {
	const x = p.offsetRatio;
	const ratio = ballOverEnd(p);
	const across = 1 - x * x;
	return (
		DEG * Math.atan((2.5 * x * Math.sqrt(across)) / (1 + ratio + 2.5 * across))
	);
}

/**
 * Offset read from the line the impulse acts along (Shepard 2001):
 * tan α = (5/2) x √(1 − x²) / [1 + m/m_e + (5/2) x²].
 */
export function squirtFromImpulseLineDeg(p: Impact): number {
	const x = p.offsetRatio;
	const ratio = ballOverEnd(p);
	return (
		DEG *
		Math.atan((2.5 * x * Math.sqrt(1 - x * x)) / (1 + ratio + 2.5 * x * x))
	);
}

/** The offset from the impulse line that the same hit has, given the offset from the cue's axis. Exact. */
export const impulseLineOffsetRatio = (p: Impact): number =>
	Math.sin(Math.asin(p.offsetRatio) - squirtDeg(p) / DEG);

/** Effective end mass from a measured angle: TP A.31 eq. 13 solved for m_e. Null where no end mass gives it. */
export function endMassFromSquirtG(p: {
	readonly offsetRatio: number;
	readonly ballMassG: number;
	readonly squirtDeg: number;
}): number | null {
	offsetShare("offsetRatio", p.offsetRatio);
	positive("ballMassG", p.ballMassG);
	const x = Math.abs(p.offsetRatio);
	const across = 1 - x * x;
	const tangent = Math.tan(Math.abs(p.squirtDeg) / DEG);
	if (tangent === 0) return 0;
	const ratio = (2.5 * x * Math.sqrt(across)) / tangent - 1 - 2.5 * across;
	return ratio > 0 ? p.ballMassG / ratio : null;
}

/**
 * Distance from tip to the bridge at which turning the cue by the deflection cancels it,
 * p = (R + r) b/(R sin α) − R with r the dome's radius (TP B.1 eq. 3). `offsetRatio` is of the
 * contact point. Throws at no offset, where the length is not defined by this formula.
 */
export function pivotLengthMm(p: {
	readonly offsetRatio: number;
	readonly squirtDeg: number;
	readonly ballDiameterMm: number;
	readonly domeRadiusMm: number;
}): number {
	positive("offsetRatio", p.offsetRatio);
	positive("squirtDeg", p.squirtDeg);
	positive("ballDiameterMm", p.ballDiameterMm);
	const radiusMm = p.ballDiameterMm / 2;
	return (
		((radiusMm + p.domeRadiusMm) * p.offsetRatio) /
			Math.sin(p.squirtDeg / DEG) -
		radiusMm
	);
}

/**
 * Shepard's pivot length, a point tip and the offset from the impulse line:
 * D/R = [2 m/m_e + 7 − 5√(1 − x²)]/[5√(1 − x²)]. Defined at no offset too.
 */
export function pivotFromImpulseLineMm(
	p: Impact & { readonly ballDiameterMm: number },
): number {
	positive("ballDiameterMm", p.ballDiameterMm);
	const five = 5 * Math.sqrt(1 - p.offsetRatio ** 2);
	return (p.ballDiameterMm / 2) * ((2 * ballOverEnd(p) + 7 - five) / five);
}
