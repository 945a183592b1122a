import { offsetShare, positive } from "./argument";

/**
 * Surface speed of the spin over the ball's speed, Rω/v = 2.5x, for a solid ball struck at
 * x = b/R. TP A.30, Kim 2022. 1 at x = 0.4: immediate roll (Shepard 1997 P3.5).
 */
export function spinRatio(offsetRatio: number): number {
	offsetShare("offsetRatio", offsetRatio);
	return 2.5 * offsetRatio;
}

/** Turns per second, ω/2π with ω = 5 v b/(2R²). */
export function spinRevPerS(p: {
	readonly offsetRatio: number;
	readonly ballSpeedMPerS: number;
	readonly ballDiameterMm: number;
}): number {
	positive("ballDiameterMm", p.ballDiameterMm);
	const radiusM = p.ballDiameterMm / 2000;
	return (
		(spinRatio(p.offsetRatio) * p.ballSpeedMPerS) / (2 * Math.PI * radiusM)
	);
}

/** Friction a contact at this offset needs, μ = x/√(1 − x²). Alciatore TP 2.1; Shepard 1997 P1.7. */
export function frictionNeededRatio(offsetRatio: number): number {
	offsetShare("offsetRatio", offsetRatio);
	return Math.abs(offsetRatio) / Math.sqrt(1 - offsetRatio ** 2);
}

/** Offset at which a tip with this friction starts to slip, x = μ/√(1 + μ²). Shepard 1997 P1.7. */
export function miscueOffsetRatio(frictionRatio: number): number {
	if (!(frictionRatio >= 0))
		throw new RangeError(
			`frictionRatio must not be negative, got ${frictionRatio}`,
		);
	return frictionRatio / Math.sqrt(1 + frictionRatio ** 2);
}

/**
 * Contact offset at which the edge of the tip's dome meets the ball. On the dome the shared normal
 * leans by asin x from the cue's axis, and at the edge by asin(d/2r), so x = d/(2r) whatever the
 * ball. A full half-sphere reaches the limb of the ball, x = 1, and no tip reaches past it. Derived.
 */
export function maxOffsetRatioForTip(p: {
	readonly tipDiameterMm: number;
	readonly domeRadiusMm: number;
}): number {
	positive("tipDiameterMm", p.tipDiameterMm);
	positive("domeRadiusMm", p.domeRadiusMm);
	return Math.min(1, p.tipDiameterMm / 2 / p.domeRadiusMm);
}

/** Distance of the cue's line from the ball's centre when the dome touches at this offset, (R + r)x. TP B.1 eq. 2. */
export function cueLineOffsetMm(p: {
	readonly offsetRatio: number;
	readonly ballDiameterMm: number;
	readonly domeRadiusMm: number;
}): number {
	offsetShare("offsetRatio", p.offsetRatio);
	positive("ballDiameterMm", p.ballDiameterMm);
	return (p.ballDiameterMm / 2 + p.domeRadiusMm) * p.offsetRatio;
}
