import { outside, type Refusal } from "@/lib/numerics/outcome";
import type { GameId } from "@/lib/reference/rules";

/** How a player stands, as said or measured at the table. Everything but the game may be left out. */
export interface StanceAnswers {
	readonly gameId: GameId;
	readonly stance?: "side-on" | "square";
	readonly posture?: "low" | "upright";
	readonly bridgeArm?: "straight" | "bent";
	/** Tip to bridge hand at address. */
	readonly bridgeLengthMm?: number;
	/** Middle of the grip hand to the butt end. */
	readonly gripFromButtMm?: number;
	/** Bridge hand to middle of the grip hand, measured at the table. */
	readonly bridgeToGripMm?: number;
	readonly seated?: boolean;
	readonly standingFrame?: boolean;
	readonly glasses?: boolean;
	/** Hand that holds the butt; right where not said. The pose mirrors, no length changes. */
	readonly handed?: "right" | "left";
	/** Length of the cue held while the readings above were taken. */
	readonly cueInHandMm?: number;
	/** This table's own cloth above the floor. */
	readonly clothHeightMm?: number;
	/** What the player's body allows: trunk from upright, head bent back against the trunk, bridge elbow. */
	readonly trunkMaxDeg?: number;
	readonly neckExtensionMaxDeg?: number;
	readonly bridgeElbowMaxDeg?: number;
}

type Numeric =
	| "bridgeLengthMm"
	| "gripFromButtMm"
	| "bridgeToGripMm"
	| "cueInHandMm"
	| "clothHeightMm"
	| "trunkMaxDeg"
	| "neckExtensionMaxDeg"
	| "bridgeElbowMaxDeg";

/** Outside these a reading is refused: beyond people and cues, or a slip of unit. Project judgement. */
export const ANSWER_BOUNDS: Readonly<
	Record<Numeric, readonly [number, number]>
> = {
	bridgeLengthMm: [60, 600],
	gripFromButtMm: [0, 600],
	bridgeToGripMm: [300, 1700],
	cueInHandMm: [700, 1700],
	clothHeightMm: [600, 950],
	trunkMaxDeg: [5, 95],
	neckExtensionMaxDeg: [0, 65],
	bridgeElbowMaxDeg: [60, 180],
};

/** Standard deviation of one reading at the table, mm: players do not set down in one place. Assumed. */
export const ANSWER_SD_MM = {
	bridgeLengthMm: 15,
	gripFromButtMm: 12,
	bridgeToGripMm: 15,
} as const;

/** Refusals of single answers; empty when each is within its bounds. */
export function answerRefusals(answers: StanceAnswers): Refusal[] {
	return (Object.keys(ANSWER_BOUNDS) as Numeric[]).flatMap((field) => {
		const value = answers[field];
		if (value === undefined) return [];
		const [min, max] = ANSWER_BOUNDS[field];
		return outside(field, value, min, max) ?? [];
	});
}
