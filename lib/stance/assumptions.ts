import type { GameId } from "@/lib/reference/rules";

/**
 * Every assumed number of the stance, in one place. No published source gives them; they are set so
 * that the preferred lengths follow common practice (CALIBRATION below, checked by a test).
 * Each is a typical value and the spread between players who would give the same answer.
 */
export interface Assumed {
	readonly value: number;
	readonly sd: number;
}

/** Angle of the line through both shoulders to the shot, seen from above, deg; 90 faces it squarely. */
export const SHOULDER_YAW_DEG = {
	"side-on": { value: 38, sd: 6 },
	square: { value: 54, sd: 6 },
	unsaid: { value: 46, sd: 7 },
	seated: { value: 60, sd: 10 },
} as const satisfies Record<string, Assumed>;

/** Angle at the bridge elbow, deg; 180 is a straight arm. "unsaid" drifts with stature, see USUAL_CUE_PULL. */
export const BRIDGE_ELBOW_DEG = {
	straight: { value: 168, sd: 7 },
	bent: { value: 132, sd: 12 },
	unsaid: { value: 152, sd: 11 },
} as const satisfies Record<string, Assumed>;

/** Chin above the cue's axis, mm. */
export const CHIN_ABOVE_CUE_MM = {
	low: { value: 15, sd: 12 },
	upright: { value: 200, sd: 70 },
} as const satisfies Record<string, Assumed>;

/** Shoulders above the chin in a player bent over the cue, as shares of stature. */
export const SHOULDER_ABOVE_CHIN_SHARE = {
	bridge: { value: 0.02, sd: 0.015 },
	grip: { value: 0.065, sd: 0.015 },
} as const satisfies Record<string, Assumed>;

/** Cue's slope, deg, butt end up: it has to clear the cushion. */
export const CUE_ELEVATION_DEG: Assumed = { value: 3.5, sd: 1 };
/** Cue's axis above the cloth at the bridge hand, mm. */
export const BRIDGE_AXIS_HEIGHT_MM: Assumed = { value: 38, sd: 5 };
/** Cushion top above the cloth, mm: about 0.7 of a snooker ball, from memory. */
export const CUSHION_HEIGHT_MM = 37;
/** The bridge's groove lies this share of hand length beyond the centre of a gripped rod. */
export const BRIDGE_BEYOND_GRIP_SHARE = 0.1;
/** Shoulder to elbow joint over shoulder to underside of bent elbow: ANSUR II, ratio of mean shares. */
export const UPPER_ARM_LINK_SHARE = 0.925;
/** Elbow joint to grip centre over back of elbow to grip centre. */
export const FOREARM_LINK_SHARE = 0.945;

/** Where a player holds the cue, mm, an adult of REFERENCE_STATURE_MM. */
export const BRIDGE_LENGTH_MM: Readonly<Record<GameId, Assumed>> = {
	snooker: { value: 255, sd: 35 },
	"english-eight-ball": { value: 240, sd: 35 },
	"american-pool": { value: 240, sd: 35 },
	carom: { value: 215, sd: 35 },
};
export const GRIP_FROM_BUTT_MM: Readonly<Record<GameId, Assumed>> = {
	snooker: { value: 105, sd: 35 },
	"english-eight-ball": { value: 105, sd: 35 },
	"american-pool": { value: 120, sd: 40 },
	carom: { value: 120, sd: 40 },
};
/** Posture where it is not said. */
export const USUAL_POSTURE: Readonly<Record<GameId, "low" | "upright">> = {
	snooker: "low",
	"english-eight-ball": "low",
	"american-pool": "low",
	carom: "upright",
};

/** Bridge length a player can live with either side of the preferred, mm, and the same of the grip. */
export const BRIDGE_SLACK_MM = { shorter: 50, longer: 50 } as const;
/** Half a hand and a little wood must stay behind the middle of the grip; much more unbalances the cue. */
export const GRIP_LIMITS_MM = { least: 60, most: 180 } as const;

/**
 * Players settle into the usual 57–58 in cue: taller ones bend the bridge arm more and hold nearer the
 * butt end, smaller ones stretch and hold further up. t = tanh((stature − reference)/scale).
 */
export const USUAL_CUE_PULL = {
	referenceStatureMm: 1750,
	scaleMm: 200,
	elbowDegPerT: -10,
	gripMmPerT: -40,
	/** Bridge length follows stature below the reference with this power; constant above. */
	bridgePower: 0.5,
} as const;

/** What the model itself may miss in the bridge-to-grip span, mm. */
export const SPAN_MODEL_SD_MM = 25;

/** Seated player: seat above floor, mm, and shoulder above seat as a share of stature. */
export const SEAT_HEIGHT_MM: Assumed = { value: 510, sd: 40 };
export const SEATED_SHOULDER_SHARE: Assumed = { value: 0.345, sd: 0.012 };

/**
 * Common practice, no source (from memory of the trade): stature against usual cue length for snooker.
 * `usualIn` is what the trade would call usual.
 */
export const CALIBRATION: readonly {
	readonly statureMm: number;
	readonly ageYears?: number;
	readonly usualIn: readonly [number, number];
}[] = [
	{ statureMm: 1950, ageYears: 30, usualIn: [58.5, 61] },
	{ statureMm: 1850, ageYears: 30, usualIn: [57.5, 59.5] },
	{ statureMm: 1750, ageYears: 30, usualIn: [57, 58] },
	{ statureMm: 1650, ageYears: 30, usualIn: [55.5, 57.5] },
	{ statureMm: 1550, ageYears: 13, usualIn: [52, 56] },
	{ statureMm: 1400, ageYears: 11, usualIn: [48, 52] },
	{ statureMm: 1250, ageYears: 8, usualIn: [42, 48] },
	{ statureMm: 1100, ageYears: 6, usualIn: [36, 42] },
];
