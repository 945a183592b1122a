import type { GameId } from "@/lib/reference/rules";

/**
 * Every assumed number of the stance, in one place. No published source gives them; they are set so
 * that preferred cue lengths follow common practice (CALIBRATION below, checked by a test).
 * Each is a typical value and the spread between players who would give the same answer.
 */
export interface Assumed {
	readonly value: number;
	readonly sd: number;
}

/** Angle of the line through both shoulders to the shot, seen from above, deg; 90 faces it squarely. */
export const SHOULDER_YAW_DEG = {
	"side-on": { value: 45, sd: 6 },
	square: { value: 61, sd: 6 },
	unsaid: { value: 53, sd: 7 },
	seated: { value: 60, sd: 10 },
} as const satisfies Record<string, Assumed>;

/** Angle at the bridge elbow, deg; 180 is a straight arm. "unsaid" drifts with stature, see USUAL_CUE_PULL. */
export const BRIDGE_ELBOW_DEG = {
	straight: { value: 166, sd: 7 },
	bent: { value: 130, sd: 12 },
	unsaid: { value: 147, sd: 11 },
} as const satisfies Record<string, Assumed>;

/** Chin above the cue's axis, mm; glasses ask for a little more room to look through the lenses. */
export const CHIN_ABOVE_CUE_MM = {
	low: { value: 15, sd: 12 },
	upright: { value: 200, sd: 70 },
} as const satisfies Record<string, Assumed>;
export const GLASSES_CHIN_MM = 25;

/** Head bent forward of its upright carriage, deg: the eyes roll up, less so behind glasses. */
export const HEAD_INCLINATION_DEG = {
	plain: { value: 28, sd: 8 },
	glasses: { value: 18, sd: 8 },
} as const satisfies Record<string, Assumed>;

/** How far each half of the shoulder girdle rises outward, deg: the cueing shoulder lifts, the other drops. */
export const GRIP_SHOULDER_RISE_DEG: Assumed = { value: 28, sd: 7 };
export const BRIDGE_SHOULDER_RISE_DEG: Assumed = { value: -5, sd: 7 };
/** Heading of the bent trunk, deg from the shot toward the grip side. */
export const TRUNK_HEADING_DEG: Assumed = { value: 10, sd: 6 };
/** Neck leaning sideways to bring the chin over the cue, deg. */
export const NECK_LEAN_DEG: Assumed = { value: 15, sd: 6 };
/** Forearm off the upright at address, in the plane of the cue, deg; positive: hand ahead of the elbow. */
export const FOREARM_TILT_DEG: Assumed = { value: 0, sd: 4 };
/**
 * Feet apart and a bent front knee lower the hips by this share of their height times tan²(θ/2) of
 * the trunk's inclination θ: about a tenth in a low stance.
 */
export const LEG_DROP_RATIO: Assumed = { value: 0.16, sd: 0.04 };

/** The cue's slope comes from clearing the cushion: axis this far above its top, this far behind the bridge. */
export const CUE_OVER_CUSHION_MM = 24;
export const BRIDGE_TO_CUSHION_MM: Assumed = { value: 420, sd: 120 };
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

/** Shares of stature. Base of neck above the shoulder line: ANSUR II cervicale less acromial height. */
export const NECK_SHARES = { girdleToBase: 0.043, forward: 0.02 } as const;
/** Shares of chin-to-crown height, from the pivot of the head. From memory. */
export const HEAD_SHARES = {
	chinForward: 0.36,
	chinDown: 0.35,
	eyeForward: 0.36,
} as const;
/** Hip joint to mid-line over stature; thigh and shank over hip height (Winter: .245, .246 of .530). */
export const HIP_HALF_BREADTH_SHARE = 0.05;
export const LEG_SHARES = { thigh: 0.462, shank: 0.464, ankle: 0.074 } as const;

/** Where a player holds the cue, mm, an adult of USUAL_CUE_PULL.referenceStatureMm. */
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
	elbowDegPerT: -14,
	gripMmPerT: -50,
	/** Bridge length follows stature below the reference with this power; constant above. */
	bridgePower: 0.5,
} as const;

/** What the model itself may miss in the bridge-to-grip span, mm. */
export const SPAN_MODEL_SD_MM = 25;

/** Seat above floor, mm, and hip joint above the seat as a share of stature. */
export const SEAT_HEIGHT_MM: Assumed = { value: 510, sd: 40 };
export const SEATED_HIP_ABOVE_SEAT_SHARE = 0.045;

/** Limits of the figure, deg: trunk from upright, neck bent back against the trunk, and what a frame allows. */
export const TRUNK_MAX_DEG = { standing: 95, seated: 75, frame: 60 } as const;
export const NECK_EXTENSION_MAX_DEG = 65;
/** Shoulder to the elbow's line over upper arm: past this the arm is lifted as far as it goes. */
export const ARM_LIFT_MAX_RATIO = 0.92;
/** A bridge arm that has to reach this much of its chord straight down and across opens at the elbow, up to nearly straight. */
export const BRIDGE_REACH_EASY_RATIO = 0.85;
export const BRIDGE_ELBOW_OPEN_DEG = 176;
/** A player leans over the cue at least this far, deg; one who would have to stand straighter wants a step. */
export const LEAST_TRUNK_DEG = 12;
/** A step higher than this is no longer a step, mm. */
export const STEP_MAX_MM = 400;

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
