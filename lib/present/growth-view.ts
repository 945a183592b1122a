import type { Advice } from "@/lib/advice/advise";
import {
	ageYearsOn,
	forecastSdMm,
	monthsAfter,
	staturePercentiles,
} from "@/lib/player/growth";
import type { Sex } from "@/lib/reference/body-adult";
import { CITATIONS } from "@/lib/reference/citations";
import { band90, type Estimate, Z90 } from "@/lib/reference/estimate";
import {
	type GrowthPlan,
	type GrowthStep,
	growthPlan,
} from "@/lib/stance/growth-plan";
import type { Reader } from "@/lib/words/reader";
import { formatDay } from "./dates";
import { formatLength, formatLengthBand, formatNumber } from "./figures";
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
					text: "At this height the children’s tables are used. With age or date of birth there is an outlook on growth.",
				}
			: { kind: "none" };
	if (ageYears >= GROWN_UP_YEARS) return { kind: "none" };
	if (player.statureMm === undefined)
		return {
			kind: "wanting",
			text: "With the height measured there is an outlook on growth.",
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
			age: `${formatNumber(ageYears, reader, 1)} years`,
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
				CITATIONS["cdc-2000"].title,
				CITATIONS["berkeley-growth"].title,
			],
		},
	};
}

const CHILDREN: Readonly<Record<Sex, string>> = {
	female: "girls",
	male: "boys",
};

function percentileText(
	{
		sex,
		percentile,
		ageYears,
	}: { sex: Sex; percentile: number; ageYears: number },
	reader: Reader,
): string {
	const of = `${CHILDREN[sex]} of ${formatNumber(ageYears, reader, 1)} years (CDC 2000)`;
	if (percentile < 1) return `Below the 1st percentile of ${of}.`;
	if (percentile > 99) return `Above the 99th percentile of ${of}.`;
	const rank = Math.round(percentile);
	return `${ordinal(rank, reader)} percentile: taller than about ${formatNumber(rank, reader)} in 100 ${of}.`;
}

function ordinal(rank: number, reader: Reader): string {
	const ENDINGS: Readonly<Record<number, string>> = {
		1: "st",
		2: "nd",
		3: "rd",
	};
	const teen = rank % 100 >= 11 && rank % 100 <= 13;
	return `${formatNumber(rank, reader)}${teen ? "th" : (ENDINGS[rank % 10] ?? "th")}`;
}

const range = (
	estimate: Estimate,
	reader: Reader,
	kind: "body" | "length" | "diameter",
): string => formatLengthBand(band90(estimate), reader, kind);

const MONTH = new Intl.DateTimeFormat("en-GB", {
	month: "long",
	year: "numeric",
	timeZone: "UTC",
});
const isoDate = (date: string): Date => new Date(`${date}T00:00:00Z`);

function whenText(months: number, reader: Reader): string {
	if (months === 0) return "Today";
	if (months < 12) return `In ${months} months`;
	return months === 12
		? "In a year"
		: `In ${formatNumber(months / 12, reader)} years`;
}

function rowOf(
	step: GrowthStep,
	cueLengthMm: number,
	reader: Reader,
): GrowthRow {
	return {
		when: whenText(step.months, reader),
		date: formatDay(isoDate(step.onDate), reader),
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
	const lack = formatLength(Math.max(0, lengthMm.value - cueLengthMm), reader);
	const between =
		months === 0
			? ""
			: ` (${formatLengthBand({ low: Math.max(0, lackMm.low), high: Math.max(0, lackMm.high) }, reader)})`;
	switch (fitting) {
		case "as-it-is":
			return "The cue as it is";
		case "end-piece":
			return `An end piece of about ${lack}${between}`;
		case "extension":
			return `An extension of about ${lack}${between}`;
		case "new-cue":
			return `A longer cue: about ${lack} is lacking${between}`;
	}
}

function planTexts(plan: GrowthPlan, today: string, reader: Reader): string[] {
	const texts: string[] = [];
	const about = (months: number) =>
		MONTH.format(isoDate(monthsAfter(today, months)));
	if (plan.remeasureOn !== null)
		texts.push(
			`Measure again about ${formatDay(isoDate(plan.remeasureOn), reader)}, in ${formatNumber(plan.remeasureMonths ?? 0, reader)} months.`,
		);
	const { addPieceMonths, cueLengthMm } = plan;
	const cue = formatLength(cueLengthMm, reader);
	if (addPieceMonths === null)
		texts.push(`A cue of ${cue} is already short of the preferred length.`);
	else if (addPieceMonths.soonest === null)
		texts.push(`A cue of ${cue} is not outgrown before 20 in this outlook.`);
	else
		texts.push(
			`A piece on a cue of ${cue} is worth adding from about ${about(addPieceMonths.soonest)} at the soonest${addPieceMonths.likely === null ? "; at the held percentile not before 20" : `, at the held percentile from about ${about(addPieceMonths.likely)}`}.`,
		);
	texts.push(
		"Plan the length in pieces: a butt end that takes an end piece, then an extension, before another cue.",
	);
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
	return `How well such an outlook held in a published study of children: nine in ten within ${within(1)} after one year and ${within(2)} after two. The ranges carry it; the cue lengths carry today’s own doubt as well, the same in every row.`;
}
