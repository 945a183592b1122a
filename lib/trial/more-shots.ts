import { Z90 } from "@/lib/reference/estimate";
import { LUCK_BOUNDS, PLANNED_POWER, WORTH_HAVING } from "./assumptions";
import { normalQuantile } from "./normal";

/** Shots with each cue, in all. */
export interface ShotsNeeded {
	/** Until the 90 % interval of the difference reaches no further than `halfWidth` to each side. */
	readonly forWidth: { readonly halfWidth: number; readonly shotsEach: number };
	/** To see a true difference of `difference`, null where it is too small to be worth chasing. */
	readonly forPower: {
		readonly difference: number;
		readonly power: number;
		readonly luck: number;
		readonly shotsEach: number;
	} | null;
}

/**
 * Shots with each cue so that Z90 √(v/n) ≤ halfWidth, v being the variance of one difference:
 * p₁q₁ + p₂q₂ on separate shots, δ − (p₁ − p₂)² on pairs.
 */
export const shotsForWidth = (variance: number, halfWidth: number): number =>
	Math.ceil(variance * (Z90 / halfWidth) ** 2);

/**
 * Shots with each cue to see a difference of two shares, two-sided, on separate shots:
 * n = (z_α √(2 p̄ q̄) + z_β √(p₁q₁ + p₂q₂))² / (p₁ − p₂)²; Fleiss, Levin & Paik, Statistical Methods
 * for Rates and Proportions, 3rd ed., section 4.2 (from memory), without continuity correction.
 */
export function shotsForPower(p: {
	first: number;
	second: number;
	power: number;
	luck: number;
}): number {
	const mean = (p.first + p.second) / 2;
	const half = Math.sqrt(2 * mean * (1 - mean));
	const whole = Math.sqrt(p.first * (1 - p.first) + p.second * (1 - p.second));
	return (
		((normalQuantile(1 - p.luck / 2) * half + normalQuantile(p.power) * whole) /
			(p.first - p.second)) **
		2
	);
}

/**
 * The same on pairs, of which a share `differing` come out differently:
 * n = (z_α √δ + z_β √(δ − d²))² / d²; Connor, Biometrics 43 (1987) 207 (from memory).
 */
export function pairsForPower(p: {
	differing: number;
	difference: number;
	power: number;
	luck: number;
}): number {
	return (
		((normalQuantile(1 - p.luck / 2) * Math.sqrt(p.differing) +
			normalQuantile(p.power) * Math.sqrt(p.differing - p.difference ** 2)) /
			p.difference) **
		2
	);
}

/** How many shots with each cue would settle it, taking the shares seen so far as true. */
export function shotsNeeded(p: {
	first: number;
	second: number;
	/** Share of pairs that come out differently; null on separate shots. */
	differing: number | null;
	halfWidth?: number;
}): ShotsNeeded {
	const halfWidth = p.halfWidth ?? WORTH_HAVING;
	const difference = p.first - p.second;
	const variance =
		p.differing === null
			? p.first * (1 - p.first) + p.second * (1 - p.second)
			: p.differing - difference ** 2;
	const plan = { power: PLANNED_POWER, luck: LUCK_BOUNDS.clear };
	return {
		forWidth: { halfWidth, shotsEach: shotsForWidth(variance, halfWidth) },
		forPower:
			Math.abs(difference) < halfWidth / 4
				? null
				: {
						difference,
						...plan,
						shotsEach: Math.ceil(
							p.differing === null
								? shotsForPower({ first: p.first, second: p.second, ...plan })
								: pairsForPower({
										differing: p.differing,
										difference,
										...plan,
									}),
						),
					},
	};
}
