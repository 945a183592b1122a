import { rootBetween } from "@/lib/numerics/roots";
import {
	ARM_LIFT_MAX_RATIO,
	CHIN_ABOVE_CUE_MM,
	LEAST_TRUNK_DEG,
	STEP_MAX_MM,
} from "./assumptions";
import type { Figure } from "./figure";
import {
	placeAt,
	type Situation,
	type StyleValues,
	solveLinkage,
} from "./linkage";
import { radians } from "./vector";

/** Search interval for the step, mm: the heights that help span more than this. */
const SCAN_MM = 20;

/** Chin over the cue of a player bent no more than it takes to play at all, mm. */
export const uprightChinMm = (
	figure: Figure,
	style: StyleValues,
	at: Situation,
): number =>
	placeAt(figure, style, at, radians(LEAST_TRUNK_DEG)).chinAboveCueMm;

/**
 * Least step that brings the chin over the cue and the elbow over the hand, mm. 0 when none is
 * needed, null when none up to STEP_MAX_MM helps or the player is seated.
 */
export function stepNeededMm(
	figure: Figure,
	style: StyleValues,
	at: Situation,
): number | null {
	const chinMm = Math.min(style.chinAboveCueMm, CHIN_ABOVE_CUE_MM.low.value);
	// Positive while something is out of reach, mm.
	const lack = (stepMm: number): number => {
		const on = { ...at, stepMm };
		const arm =
			solveLinkage(figure, style, on).armLiftRatio - ARM_LIFT_MAX_RATIO;
		return Math.max(
			chinMm - uprightChinMm(figure, style, on),
			arm * figure.upperArmMm,
		);
	};
	if (lack(0) <= 0) return 0;
	if (at.support === "seated") return null;
	for (let to = SCAN_MM; to <= STEP_MAX_MM; to += SCAN_MM) {
		if (lack(to) > 0) continue;
		const root = rootBetween({
			f: lack,
			from: to - SCAN_MM,
			to,
			tolerance: 1e-6,
		});
		return root.converged ? root.root : null;
	}
	return null;
}
