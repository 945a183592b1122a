import type { Advice } from "@/lib/advice/advise";
import {
	ageYearsOn,
	forecastSdMm,
	monthsAfter,
	staturePercentiles,
} from "@/lib/player/growth";
import type { Sex } from "@/lib/reference/body-adult";
import { band90, type Estimate, Z90 } from "@/lib/reference/estimate";
import {
	type GrowthPlan,
	type GrowthStep,
	growthPlan,
} from "@/lib/stance/growth-plan";
import type { Reader } from "@/lib/words/reader";
import { formatDay, formatMonth } from "./dates";
import { formatLength, formatLengthBand, formatNumber } from "./figures";
import { citationTitle } from "./labels";
import { cautionText, refusalView } from "./notices";

/** Growth is shown up to this age; the forecast's own studies end there. */
export const GROWN_UP_YEARS = 18;

export interface GrowthRow {
	readonly when: string;
	readonly date: string;
	readonly height: string;
	readonly length: string;
	readonly ring: string;
	readonly needs: string;
}

export interface GrowthView {
	readonly age: string;
	readonly percentiles: readonly string[];
	readonly rows: readonly GrowthRow[];
	readonly plan: readonly string[];
	readonly error: string;
	readonly cautions: readonly string[];
	readonly sources: readonly string[];
}

export type Growth =
	/** Grown up, or nothing says that the player is young. */
	| { readonly kind: "none" }
	| { readonly kind: "wanting"; readonly text: string }
	| { readonly kind: "refused"; readonly texts: readonly string[] }
	| { readonly kind: "shown"; readonly view: GrowthView };

/** Years at a date, from the date of birth where one is given, else as answered. */
export const ageOn = (p: {
	bornOn: string | null;
	ageYears: number | undefined;
	today: string;
}): number | undefined =>
	p.bornOn === null
		? p.ageYears
		: ageYearsOn({ bornOn: p.bornOn, on: p.today });

/** A junior's outlook: percentile, ranges to come, and when to look again. `today` is an ISO date. */
export function growthOf(
	{
		advice,
		bornOn,
		today,
	}: { advice: Advice; bornOn: string | null; today: string },
	reader: Reader,
): Growth {
	const { player, stance } = advice.input;
	const ageYears = ageOn({ bornOn, ageYears: player.ageYears, today });
	if (ageYears === undefined)
		return advice.body.isChildModel
			? {
					kind: "wanting",
					text: reader.say("growth.noAge"),
				}
			: { kind: "none" };
	if (ageYears >= GROWN_UP_YEARS) return { kind: "none" };
	if (player.statureMm === undefined)
		return {
			kind: "wanting",
			text: reader.say("growth.noHeight"),
		};
	const plan = growthPlan({
		measures: { ...player, ageYears },
		answers: stance,
		cueLengthMm: advice.length.value,
		circleMm: advice.grip.circleMm,
		today,
	});
	const percentiles = staturePercentiles({
		ageYears,
		statureMm: player.statureMm,
		sex: player.sex,
	});
	if (!percentiles.ok || !plan.ok) {
		const refused = percentiles.ok ? plan : percentiles;
		return {
			kind: "refused",
			texts: refused.ok
				? []
				: refused.refusals.map((refusal) => refusalView(refusal, reader).text),
		};
	}
	return {
		kind: "shown",
		view: {
			age: reader.say("growth.years", {
				years: formatNumber(ageYears, reader, 1),
			}),
			percentiles: percentiles.value.map(({ sex, percentile }) =>
				percentileText({ sex, percentile, ageYears }, reader),
			),
			rows: plan.value.steps.map((step) =>
				rowOf(step, plan.value.cueLengthMm, reader),
			),
			plan: planTexts(plan.value, today, reader),
			error: errorText(player.sex, ageYears, reader),
			cautions: plan.value.cautions.map((caution) =>
				cautionText(caution, reader),
			),
			sources: [
				citationTitle("cdc-2000", reader),
				citationTitle("berkeley-growth", reader),
			],
		},
	};
}

function percentileText(
	{
		sex,
		percentile,
		ageYears,
	}: { sex: Sex; percentile: number; ageYears: number },
	reader: Reader,
): string {
	const { say } = reader;
	const of = say("growth.children", {
		sex,
		years: formatNumber(ageYears, reader, 1),
	});
	if (percentile < 1) return say("growth.below", { of });
	if (percentile > 99) return say("growth.above", { of });
	const rank = Math.round(percentile);
	return say("growth.percentile", {
		rank,
		taller: formatNumber(rank, reader),
		of,
	});
}

const range = (
	estimate: Estimate,
	reader: Reader,
	kind: "body" | "length" | "diameter",
): string => formatLengthBand(band90(estimate), reader, kind);

function whenText(months: number, reader: Reader): string {
	const { say } = reader;
	if (months === 0) return say("growth.today");
	if (months < 12) return say("growth.inMonths", { months: String(months) });
	return months === 12
		? say("growth.inAYear")
		: say("growth.inYears", { years: formatNumber(months / 12, reader) });
}

function rowOf(
	step: GrowthStep,
	cueLengthMm: number,
	reader: Reader,
): GrowthRow {
	return {
		when: whenText(step.months, reader),
		date: formatDay(step.onDate, reader),
		height: range(step.statureMm, reader, "body"),
		length: range(step.lengthMm, reader, "length"),
		ring:
			step.circleMm === null ? "–" : range(step.circleMm, reader, "diameter"),
		needs: needText(step, cueLengthMm, reader),
	};
}

function needText(
	{ fitting, lengthMm, lackMm, months }: GrowthStep,
	cueLengthMm: number,
	reader: Reader,
): string {
	const { say } = reader;
	return say(`growth.need.${fitting}`, {
		lack: formatLength(Math.max(0, lengthMm.value - cueLengthMm), reader),
		between:
			months === 0
				? ""
				: say("growth.need.between", {
						range: formatLengthBand(
							{ low: Math.max(0, lackMm.low), high: Math.max(0, lackMm.high) },
							reader,
						),
					}),
	});
}

function planTexts(plan: GrowthPlan, today: string, reader: Reader): string[] {
	const { say } = reader;
	const texts: string[] = [];
	const about = (months: number) =>
		formatMonth(monthsAfter(today, months), reader);
	if (plan.remeasureOn !== null)
		texts.push(
			say("growth.measureAgain", {
				date: formatDay(plan.remeasureOn, reader),
				months: formatNumber(plan.remeasureMonths ?? 0, reader),
			}),
		);
	const { addPieceMonths, cueLengthMm } = plan;
	const cue = formatLength(cueLengthMm, reader);
	if (addPieceMonths === null) texts.push(say("growth.short", { cue }));
	else if (addPieceMonths.soonest === null)
		texts.push(say("growth.notOutgrown", { cue }));
	else {
		const soonest = about(addPieceMonths.soonest);
		texts.push(
			addPieceMonths.likely === null
				? say("growth.addPieceLate", { cue, soonest })
				: say("growth.addPiece", {
						cue,
						soonest,
						likely: about(addPieceMonths.likely),
					}),
		);
	}
	texts.push(say("growth.pieces"));
	return texts;
}

/** The published study's own error, one and two years on; the wider of both sexes where none is given. */
function errorText(
	sex: Sex | undefined,
	ageYears: number,
	reader: Reader,
): string {
	const sexes: readonly Sex[] = sex ? [sex] : ["female", "male"];
	const within = (years: number) =>
		formatLength(
			Z90 * Math.max(...sexes.map((s) => forecastSdMm(s, ageYears, years))),
			reader,
			"body",
		);
	return reader.say("growth.error", { one: within(1), two: within(2) });
}
