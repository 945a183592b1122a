import { GRAMS_PER_OUNCE, MM_PER_INCH } from "@/lib/units/quantity";

/**
 * This project's judgements, in one place: nothing here has a published source. Each is open to the
 * coach through the answers that overrule it. Lengths mm, masses g.
 */

/** What a bench works to. Common practice, no source. */
export const STEP = {
	lengthMm: MM_PER_INCH / 4,
	massG: GRAMS_PER_OUNCE / 4,
	diameterMm: 0.25,
	balanceMm: MM_PER_INCH / 4,
} as const;

/** The smallest change most players would notice. Assumed. */
export const FELT = {
	lengthMm: MM_PER_INCH / 2,
	massG: GRAMS_PER_OUNCE / 2,
	buttDiameterMm: 0.75,
	tipDiameterMm: 0.25,
	balanceMm: MM_PER_INCH,
} as const;

/**
 * Lengths players of a stature usually have, snooker and pool, between which the line is straight:
 * juniors 36–54 in, adults 57–58, tall players 59 and over. Common practice, no source; the statures
 * beside them are this project's reading of it, the spread too.
 */
export const USUAL_LENGTHS = [
	{ statureMm: 1000, lengthMm: 38 * MM_PER_INCH },
	{ statureMm: 1250, lengthMm: 46 * MM_PER_INCH },
	{ statureMm: 1500, lengthMm: 54 * MM_PER_INCH },
	{ statureMm: 1700, lengthMm: 57.25 * MM_PER_INCH },
	{ statureMm: 1800, lengthMm: 57.75 * MM_PER_INCH },
	{ statureMm: 1950, lengthMm: 59.25 * MM_PER_INCH },
	{ statureMm: 2100, lengthMm: 60.5 * MM_PER_INCH },
] as const;
export const USUAL_LENGTH_SD_MM = MM_PER_INCH;

/** How far a complaint moves a figure from the present cue, and how sure that is. Assumed. */
export const COMPLAINT_STEP = {
	lengthMm: { by: MM_PER_INCH, sd: 15 },
	massG: { by: GRAMS_PER_OUNCE, sd: GRAMS_PER_OUNCE / 2 },
	buttDiameterMm: { by: 1, sd: 0.6 },
	tipDiameterMm: { by: 0.5, sd: 0.25 },
} as const;

/** How strongly a present cue that draws no complaint, or praise, holds its figure. Assumed. */
export const HABIT_SD = {
	lengthMm: { used: 20, liked: 8 },
	massG: { used: GRAMS_PER_OUNCE * 0.6, liked: GRAMS_PER_OUNCE * 0.25 },
	buttDiameterMm: { used: 1, liked: 0.35 },
	tipDiameterMm: { used: 0.25, liked: 0.1 },
} as const;

/** Wanted closure of the ring at the middle of the grip, mm of arc: + gap, − overlap. Assumed. */
export const CLOSURE_TARGET_MM = {
	touching: 0,
	"small-gap": 5,
	"small-overlap": -5,
} as const;
/** How far either side of the wanted closure still feels as wanted. Assumed. */
export const CLOSURE_TOLERANCE_MM = 4;
/** How far the hand slides along the butt from its usual place, either way. Assumed. */
export const GRIP_SLIDE_MM = 50;

/** Butts the trade turns. Common practice, no source. */
export const BUTT_LIMITS_MM = { min: 24, max: 31 } as const;

/** The equal-effort optimum is flat (±10 % of mass costs under 0.2 % of speed): weak evidence. */
export const EQUAL_EFFORT_SD_G = 2 * GRAMS_PER_OUNCE;

/** Tip against level: a beginner is served by a little more, a strong player by a little less. Assumed. */
export const LEVEL_TIP_SHIFT_MM = {
	new: 0.25,
	club: 0,
	county: -0.25,
} as const;

/** Body mass is not asked for: stature and a body-mass index stand in, kg/m². Assumed. */
export const BODY_MASS_INDEX = { adult: 24, child: 17 } as const;

/** Balance point usually asked for, from the butt end. Common practice, no source (from memory). */
const USUAL_BALANCE_MM = { min: 15 * MM_PER_INCH, max: 19 * MM_PER_INCH };
/** The cue length that window belongs to. */
const USUAL_BALANCE_LENGTH_MM = 57.5 * MM_PER_INCH;

/** The usual balance window of a cue: that of a full-length one, in proportion on a shorter one (assumed). */
export function usualBalanceMm(lengthMm: number): { min: number; max: number } {
	const scale = Math.min(1, lengthMm / USUAL_BALANCE_LENGTH_MM);
	return {
		min: scale * USUAL_BALANCE_MM.min,
		max: scale * USUAL_BALANCE_MM.max,
	};
}

/** Shafts for the large tip of American pool are usually maple; elsewhere ash. Common practice. */
export const USUAL_SHAFT = {
	snooker: "white-ash",
	"english-eight-ball": "white-ash",
	"american-pool": "sugar-maple",
	carom: "sugar-maple",
} as const;

/** Layout usually carried. Common practice. */
export const USUAL_LAYOUT = {
	snooker: "three-quarter",
	"english-eight-ball": "three-quarter",
	"american-pool": "centre",
	carom: "centre",
} as const;

/** Woods and splice a budget points to, dearest part first (common practice: ebony over rosewood, hand over machine). */
export const BUDGET_BUILD = {
	low: {
		splice: "machine-four-point",
		buttWoods: ["black-walnut", "indian-rosewood"],
	},
	middle: {
		splice: "hand-four-point",
		buttWoods: ["indian-rosewood", "black-walnut"],
	},
	open: {
		splice: "hand-four-point",
		buttWoods: ["gaboon-ebony", "indian-rosewood", "black-walnut"],
	},
} as const;

/**
 * How wide the candidate search takes a need to be. `idealShare` of what a player can feel is as good
 * as the need itself; unacceptable lies `limitFelt` felt differences away, or further where the need
 * itself is not better known. Assumed.
 */
export const NEED_ZONE = { idealShare: 0.5, limitFelt: 3 } as const;

/** Closure this far from the wanted is unacceptable, mm of arc. Assumed. */
export const CLOSURE_LIMIT_MM = 12;

/** Feel kept from the present cue, or that of the usual build: shares of the value. Assumed. */
export const FEEL_ZONE = {
	steadiness: {
		"present-cue": { ideal: 0.04, limit: 0.25 },
		"usual-build": { ideal: 0.08, limit: 0.35 },
	},
	stiffness: {
		"present-cue": { ideal: 0.07, limit: 0.4 },
		"usual-build": { ideal: 0.12, limit: 0.5 },
	},
} as const;
/** How much steadier, livelier, stiffer or softer a wish without a figure asks for, as a share. Assumed. */
export const FEEL_SHIFT = 0.08;

/** A balance this far outside the usual window is unacceptable; how far a complaint moves it. Assumed. */
export const BALANCE_LIMIT_MM = 1.5 * MM_PER_INCH;
export const BALANCE_COMPLAINT_MM = MM_PER_INCH;

/** Metal a bench adds without a second thought, and more than it wants to; bore beyond the core. Assumed. */
export const BENCH_ZONE = {
	addedG: { ideal: 60, limit: 200 },
	boreBeyondCoreMm: { ideal: 0.5, limit: 4 },
} as const;

/** Side a level plays with, as a share of the ball radius, and how truly. Assumed. */
export const LEVEL_SIDE = {
	new: { offsetRatio: 0.25, sdRatio: 0.1 },
	club: { offsetRatio: 0.33, sdRatio: 0.07 },
	county: { offsetRatio: 0.4, sdRatio: 0.05 },
} as const;

/** Tips this much outside the game's usual ones mark unacceptable deflection and forgiveness. Assumed. */
export const TIP_ZONE_MM = { deflection: 1.5, forgiveness: 1 } as const;

/**
 * Weights of the criteria where the user sets none: figures of the body and of weight count in full,
 * feel a little less, what coaches weigh differently and what concerns looks less again. Assumed.
 */
export const USUAL_WEIGHT = {
	closure: 1,
	reach: 1,
	weight: 1,
	steadiness: 0.75,
	balance: 0.75,
	deflection: 0.5,
	forgiveness: 0.5,
	tip: 1,
	stiffness: 0.5,
	build: 0.5,
	price: 0.75,
	finish: 0.5,
	carrying: 0.25,
} as const;

/** A price this share above a tier's own cue is out of it; the tier's own is as good as any below. Assumed. */
export const PRICE_LIMIT_SHARE = 1.3;
