import type { CitationId } from "./citations";

/**
 * ISO 11226:2000, static working postures of healthy adults with little or no outside force: limits as
 * printed in a summary of the standard; its own tables were not readable. Angles are from the upright
 * rest posture, deg; times in minutes. Not written for juniors or for sport.
 */
export const POSTURE_SOURCE: CitationId = "iso-11226";

export interface HoldLimits {
	/** Up to here no time limit is printed. */
	readonly freeToDeg: number;
	/** From freeToDeg to here the holding time falls linearly; beyond, not acceptable whatever the time. */
	readonly limitDeg: number;
	readonly longestMin: number;
	readonly shortestMin: number;
	/** The printed rows. */
	readonly rows: readonly (readonly [angleDeg: number, minutes: number])[];
}

/** Line from hip to the seventh neck vertebra against the vertical. */
export const TRUNK_LIMITS: HoldLimits = {
	freeToDeg: 20,
	limitDeg: 60,
	longestMin: 4,
	shortestMin: 1,
	rows: [
		[20, 4],
		[30, 3.25],
		[40, 2.5],
		[50, 1.75],
		[60, 1],
	],
};

/** Line from ear to eye against its rest direction. */
export const HEAD_LIMITS: HoldLimits = {
	freeToDeg: 25,
	limitDeg: 85,
	longestMin: 8,
	shortestMin: 1,
	rows: [
		[25, 8],
		[35, 6 + 50 / 60],
		[45, 5 + 40 / 60],
		[55, 4.5],
		[65, 3 + 20 / 60],
		[75, 2 + 10 / 60],
		[85, 1],
	],
};

/** Head less trunk: bent back below 0 and bent forward past 25 are both outside. */
export const NECK_LIMITS = { minDeg: 0, maxDeg: 25 } as const;

/** The limits stand for this share of the longest time a posture can be held. */
export const HOLD_SHARE_OF_MAXIMUM = 0.2;
/** The summary's own example: minutes held at an angle, minutes upright to recover. */
export const RECOVERY_EXAMPLE = {
	angleDeg: 20,
	heldMin: 4,
	recoverMin: 12,
} as const;

/** A posture held longer than about this counts as static, s. From memory. */
export const STATIC_FROM_S = 4;
