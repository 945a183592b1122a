import { ageYearsOn, monthsAfter, monthsToRemeasure } from "./growth";

export interface Remeasure {
	/** ISO date. */
	readonly on: string;
	/** `coach`: set by hand; `growth`: by the growth tables' rhythm for the age. */
	readonly by: "coach" | "growth";
	readonly isOverdue: boolean;
}

/**
 * When a player is to be measured again; null where nothing asks for it. A day set by the coach goes
 * first until the player was measured on or after it. Otherwise a junior is due as long after the last
 * measuring as growth at the age of that day allows (`monthsToRemeasure`); on the day itself it is not
 * yet overdue. Dates are ISO text.
 */
export function remeasureDue(p: {
	setOn: string | null;
	/** Day of the last fitting; null before the first. */
	measuredOn: string | null;
	bornOn: string | null;
	/** Age as answered on the day of measuring, used where there is no date of birth. */
	answeredAgeYears: number | undefined;
	today: string;
}): Remeasure | null {
	const { setOn, measuredOn, today } = p;
	if (setOn !== null && (measuredOn === null || measuredOn < setOn))
		return { on: setOn, by: "coach", isOverdue: setOn < today };
	if (measuredOn === null) return null;
	const ageYears =
		p.bornOn === null
			? p.answeredAgeYears
			: ageYearsOn({ bornOn: p.bornOn, on: measuredOn });
	const months = ageYears === undefined ? null : monthsToRemeasure(ageYears);
	if (months === null) return null;
	const on = monthsAfter(measuredOn, months);
	return { on, by: "growth", isOverdue: on < today };
}
