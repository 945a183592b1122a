import {
	type FittingInput,
	WISHED_FIGURES,
	type Wishes,
} from "@/lib/advice/input";
import type { Answers } from "./fields";
import { WISH_OF } from "./trial";

/** A wish that was taken from trials and not put back since. */
export interface TakenWish {
	/** Name of the answer. */
	readonly field: string;
	/** The answer as it was put in. */
	readonly after: string;
	/** One standard deviation of the figure, in the unit of its wish. */
	readonly sd: number;
	readonly sessions: number;
	readonly shots: number;
}

/**
 * The spread of every wish that still is what trials gave; a wish that was typed over is the
 * customer's own word again. `taken` latest first. Null where no wish is of trials.
 */
export function wishSpreadOf(p: {
	answers: Answers;
	wishes: Wishes;
	taken: readonly TakenWish[];
}): NonNullable<FittingInput["wishSpread"]> | null {
	const { answers, wishes, taken } = p;
	const spreads = WISHED_FIGURES.flatMap((figure) => {
		const field = WISH_OF[figure];
		const value = wishes[figure];
		if (field === null || value === undefined) return [];
		const wish = taken.find(
			(one) => one.field === field && one.after === answers[field],
		);
		if (wish === undefined) return [];
		const { sd, sessions, shots } = wish;
		return [[figure, { value, sd, sessions, shots }] as const];
	});
	return spreads.length === 0 ? null : Object.fromEntries(spreads);
}
