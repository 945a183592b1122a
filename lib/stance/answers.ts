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
}

type Measured = "bridgeLengthMm" | "gripFromButtMm" | "bridgeToGripMm";

/** Outside these a reading is refused: beyond people and cues, or a slip of unit. Project judgement. */
export const ANSWER_BOUNDS: Readonly<
	Record<Measured, readonly [number, number]>
> = {
	bridgeLengthMm: [60, 600],
	gripFromButtMm: [0, 600],
	bridgeToGripMm: [300, 1700],
};

/** Standard deviation of one reading at the table, mm: players do not set down in one place. Assumed. */
export const ANSWER_SD_MM: Readonly<Record<Measured, number>> = {
	bridgeLengthMm: 15,
	gripFromButtMm: 12,
	bridgeToGripMm: 15,
};

/** Refusals of single answers; empty when each is within its bounds. */
export function answerRefusals(answers: StanceAnswers): Refusal[] {
	return (Object.keys(ANSWER_BOUNDS) as Measured[]).flatMap((field) => {
		const value = answers[field];
		if (value === undefined) return [];
		const [min, max] = ANSWER_BOUNDS[field];
		return outside(field, value, min, max) ?? [];
	});
}
