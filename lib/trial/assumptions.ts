/**
 * This project's judgements about trials at the table, in one place: nothing here has a published
 * source unless its line names one. Lengths mm, masses g.
 */

/** The known figures of a cue that a trial can tell something about. */
export const TRIAL_FIELDS = [
	"lengthMm",
	"massG",
	"buttDiameterMm",
	"tipDiameterMm",
	"balanceFromButtMm",
] as const;
export type TrialField = (typeof TRIAL_FIELDS)[number];

/**
 * How far from the player's own best figure a cue may be before it costs half a unit of log-odds,
 * some 12 pots in 100 where half are potted. The cost grows with the square of the distance.
 */
export const FALL_OFF: Readonly<Record<TrialField, number>> = {
	lengthMm: 75,
	massG: 60,
	buttDiameterMm: 3,
	tipDiameterMm: 1.5,
	balanceFromButtMm: 60,
};

/** The fall-off is a guess: the wishes are computed with each of these multiples of its square. */
export const FALL_OFF_SQUARE_MULTIPLES = [0.5, 1, 2] as const;

/** What a cue has of its own beside the five figures, one standard deviation, log-odds. */
export const CUE_SD_LOG_ODDS = 0.2;

/**
 * How far the difficulty and the form of one session may lie from even, one standard deviation,
 * log-odds. Wide, so that only differences within a session tell anything about a cue.
 */
export const SESSION_SD_LOG_ODDS = 10;

/** How far a session may drift from its first shot to its last, one standard deviation, log-odds. */
export const DRIFT_SD_LOG_ODDS = 1;

/**
 * Prior counts of a pot and of a miss: Jeffreys' prior, recommended for intervals from few trials by
 * Brown, Cai & DasGupta, Statist. Sci. 16 (2001) 101.
 */
export const PRIOR_COUNT = 0.5;

/** The smallest difference in the share of pots that would be worth changing cues for. */
export const WORTH_HAVING = 0.1;

/** Luck rarer than `clear` tells two cues apart; rarer than `leaning`, the result leans. */
export const LUCK_BOUNDS = { clear: 0.05, leaning: 0.2 } as const;

/** With what certainty a true difference should be seen by a trial that is planned for it. */
export const PLANNED_POWER = 0.8;

/** Shots at the start that are compared with the rest. */
export const WARM_UP_SHOTS = 10;

/**
 * Shots with each cue that a proposal may ask for in one session, in steps that make an even number of
 * turns, and the number on which pairs are compared.
 */
export const SHOTS_EACH = {
	fewest: 10,
	usual: 20,
	most: 60,
	step: 10,
} as const;

/** Below this share of the doubt removed, a trial is said to say nothing about a figure. */
export const LEAST_SHARE_OF_DOUBT = 0.05;

/** Shots of one analysis: the exact tests stay within double precision. */
export const MOST_SHOTS = 1000;
