import type { CueChoice } from "@/lib/advice/choice";
import type { CriterionId } from "@/lib/advice/criteria";
import type { CueOption } from "@/lib/advice/option";
import type { Compared, SearchReport } from "@/lib/advice/search";
import type { SoftenedLimit } from "@/lib/advice/soften";
import type { FieldName } from "@/lib/forms/fields";
import type { Refusal } from "@/lib/numerics/outcome";
import {
	gramsToOunces,
	mmToInches,
	type UnitSystem,
} from "@/lib/units/quantity";
import { CRITERION_WORDS, formatMeasure, formatMoney } from "./criterion-words";
import {
	formatLength,
	formatLengthDifference,
	formatMass,
	formatMassDifference,
	formatNumber,
	formatPercent,
} from "./figures";
import {
	choiceLabel,
	FIELD_LABELS,
	LAYOUT_LABELS,
	SPLICE_LABELS,
	TAPER_LABELS,
	woodName,
} from "./labels";

/** "Best of 112,320 cues; 1,684 are beaten by none." */
export const countsText = ({ counts }: Pick<SearchReport, "counts">): string =>
	`Best of ${formatNumber(counts.candidates)} cues; ${formatNumber(counts.nonDominated)} are beaten by none.`;

/** One answer to be put in, as it would be typed; empty text leaves the question open. */
export interface WishAnswer {
	readonly field: FieldName;
	readonly answer: string;
}

const plain = (value: number, decimals: number): string =>
	String(Number(value.toFixed(decimals)));

/** A weight as it would be typed: to the bench's step where it lies on one. */
const massText = (g: number, system: UnitSystem): string =>
	system === "metric" ? `${plain(g, 2)} g` : `${plain(gramsToOunces(g), 3)} oz`;
const lengthText = (mm: number, system: UnitSystem): string =>
	system === "metric" ? `${plain(mm, 2)} mm` : `${plain(mmToInches(mm), 4)} in`;

/** A cue as wishes. The wood's own weight leaves the weight open: it is what the wood turns out to give. */
export function wishesOf(
	{ request, wantedMassG }: CueChoice,
	system: UnitSystem,
): readonly WishAnswer[] {
	return [
		{ field: "wishLength", answer: lengthText(request.lengthMm, system) },
		{
			field: "wishMass",
			answer: wantedMassG === null ? "" : massText(wantedMassG, system),
		},
		{ field: "wishButt", answer: `${plain(request.buttDiameterMm, 3)} mm` },
		{ field: "wishTip", answer: `${plain(request.tipDiameterMm, 3)} mm` },
		{ field: "wishButtWood", answer: request.buttWood },
		{ field: "wishShaftWood", answer: request.shaftWood },
		{ field: "wishSplice", answer: request.splice },
		{ field: "wishLayout", answer: request.layout },
		{ field: "wishTaper", answer: request.taperShape },
	];
}

/** What `wishesOf` sets, to be left open again. */
export const OPEN_WISHES: readonly WishAnswer[] = (
	[
		"wishLength",
		"wishMass",
		"wishButt",
		"wishTip",
		"wishButtWood",
		"wishShaftWood",
		"wishSplice",
		"wishLayout",
		"wishTaper",
	] as const
).map((field) => ({ field, answer: "" }));

/** A cue the search puts forward, in words. */
export interface OptionView {
	readonly name: string;
	readonly rows: readonly { readonly label: string; readonly value: string }[];
	readonly worth: string;
	readonly close: string | null;
	readonly snapping: string;
	readonly wishes: readonly WishAnswer[];
	readonly choice: CueChoice;
}

export function optionViews(
	report: SearchReport,
	system: UnitSystem,
): readonly OptionView[] {
	return report.options.map((option, i) => ({
		name: `${formatNumber(i + 1)}. ${woodName(option.request.buttWood)}, ${SPLICE_LABELS[option.request.splice].toLowerCase()}`,
		rows: optionRows(option, system),
		worth: `${formatPercent(option.overall)} of the ideal by the estimates; ${formatPercent(option.overallMean)} on average over what is not known, nine in ten within ${formatPercent(option.overallBand.low)} to ${formatPercent(option.overallBand.high)}.`,
		close: closeText(report.compared, i),
		snapping: snappingText(option, system),
		wishes: wishesOf(option, system),
		choice: option,
	}));
}

function optionRows(
	{ request, results, plan, price, weightReachedShare, wantedMassG }: CueOption,
	system: UnitSystem,
): OptionView["rows"] {
	const measure = (id: CriterionId) =>
		formatMeasure(id, results[id].value, system, price);
	return [
		{ label: "Pieces", value: LAYOUT_LABELS[request.layout] },
		{ label: "Taper", value: TAPER_LABELS[request.taperShape] },
		{ label: "Length", value: measure("reach") },
		{
			label: "Weight",
			value:
				wantedMassG === null
					? `${measure("weight")}, the wood’s own`
					: weightReachedShare < 0.9
						? `${measure("weight")}; the wood lets it be reached in ${formatPercent(weightReachedShare)} of draws`
						: measure("weight"),
		},
		{
			label: "Butt",
			value: formatLength(request.buttDiameterMm, system, "diameter"),
		},
		{ label: "Tip", value: measure("tip") },
		{ label: "Balance from the butt end", value: measure("balance") },
		{
			label: "Metal added",
			value:
				plan.metalMassG > 0
					? formatMass(plan.metalMassG, system, "added")
					: "None",
		},
		{
			label:
				price.basis === "invented"
					? "Price, from an invented price list"
					: "Price estimate",
			value: `${formatMoney(price.totalMinor, price)} (${formatMoney(price.lowMinor, price)} to ${formatMoney(price.highMinor, price)})`,
		},
	];
}

function closeText(
	compared: readonly Compared[],
	place: number,
): string | null {
	const found = compared.find(({ second }) => second === place);
	return found === undefined ? null : closenessText(found);
}

/** Counted in draws of what is not known. */
export function closenessText({
	firstBetterShare,
	insideEachOther,
	tooClose,
}: Pick<
	Compared,
	"firstBetterShare" | "insideEachOther" | "tooClose"
>): string {
	const share = Math.round(100 * firstBetterShare);
	const which =
		share >= 50
			? `the first is better in ${formatNumber(share)} of 100 draws`
			: `this one is better in ${formatNumber(100 - share)} of 100 draws, though not by the estimates`;
	if (tooClose) return `Too close to call: ${which}.`;
	return insideEachOther
		? `Inside each other’s band, yet told apart: ${which}.`
		: `Told apart: ${which}.`;
}

function snappingText(option: CueOption, system: UnitSystem): string {
	const { betweenSteps, request, results, snappingCost } = option;
	const moves = [
		[
			"length",
			formatLengthDifference(
				request.lengthMm - betweenSteps.lengthMm,
				system,
				"gap",
			),
		],
		[
			"weight",
			formatMassDifference(
				results.weight.value - betweenSteps.massG,
				system,
				"added",
			),
		],
		[
			"butt",
			formatLengthDifference(
				request.buttDiameterMm - betweenSteps.buttDiameterMm,
				system,
				"bench",
			),
		],
		[
			"tip",
			formatLengthDifference(
				request.tipDiameterMm - betweenSteps.tipDiameterMm,
				system,
				"bench",
			),
		],
	]
		.filter(([, by]) => /[1-9¼½¾]/.test(by ?? ""))
		.map(([name, by]) => `${name} ${by}`);
	if (moves.length === 0)
		return "Every figure already lay on a step of the bench.";
	const cost =
		Math.abs(snappingCost) < 0.0005
			? "next to nothing of its worth"
			: snappingCost > 0
				? `${formatPercent(snappingCost, 1)} of its worth`
				: "nothing of its worth";
	return `Set to the bench’s steps (${moves.join(", ")}), which cost ${cost}.`;
}

/** A limit that had to give before anything was acceptable. */
export const softenedText = (
	{ criterion, side, limitFrom, limitTo, measured }: SoftenedLimit,
	system: UnitSystem,
): string =>
	`${CRITERION_WORDS[criterion].name}: nothing that can be built is ${side === "low" ? "above" : "below"} ${formatMeasure(criterion, limitFrom, system)}; the nearest has ${formatMeasure(criterion, measured, system)}, so the limit was moved to ${formatMeasure(criterion, limitTo, system)}.`;

/** A way out of a search that found nothing to build. */
export interface WayOut {
	readonly text: string;
	readonly label: string;
	/** What one tap puts in; empty where the page has no field for it. */
	readonly answers: readonly WishAnswer[];
}

const WISH_FIELDS: Readonly<Record<string, FieldName>> = {
	"wishes.lengthMm": "wishLength",
	"wishes.massG": "wishMass",
	"wishes.buttDiameterMm": "wishButt",
	"wishes.tipDiameterMm": "wishTip",
	"wishes.buttWood": "wishButtWood",
	"wishes.shaftWood": "wishShaftWood",
	"wishes.splice": "wishSplice",
	"wishes.layout": "wishLayout",
	"wishes.taperShape": "wishTaper",
};

/** Limits that are no question of the fitting: named, without a button. */
const CEILING_LABELS: Readonly<Record<string, string>> = {
	maxPriceMinor: "The most it may cost",
	longestPieceMm: "The longest piece",
};

const wishText = (
	field: FieldName,
	value: number | string,
	system: UnitSystem,
): string => {
	if (typeof value === "string") return choiceLabel(field, value);
	if (field === "wishMass") return formatMass(value, system);
	return formatLength(
		value,
		system,
		field === "wishLength" ? "length" : "diameter",
	);
};

const wishAnswer = (
	field: FieldName,
	value: number | string,
	system: UnitSystem,
): string => {
	if (typeof value === "string") return value;
	if (field === "wishMass") return massText(value, system);
	return field === "wishLength"
		? lengthText(value, system)
		: `${plain(value, 3)} mm`;
};

/** "relax" refusals as ways out, least felt first; other refusals are not its business. */
export function waysOut(
	refusals: readonly Refusal[],
	system: UnitSystem,
): readonly WayOut[] {
	return refusals
		.filter(({ code }) => code === "relax")
		.map(({ field, value, facts }): WayOut => {
			const to = facts?.to;
			if (to === undefined || value === null)
				throw new TypeError(`a way out of ${field} without a value`);
			const name = WISH_FIELDS[field];
			if (name === undefined) {
				const label = CEILING_LABELS[field];
				if (label === undefined) throw new TypeError(`no words for ${field}`);
				const id = field === "maxPriceMinor" ? "price" : "carrying";
				const text = `${label} would have to be ${formatMeasure(id, Number(to), system)} instead of ${formatMeasure(id, Number(value), system)}.`;
				return { text, label: text, answers: [] };
			}
			const alsoDrop = facts?.alsoDrop;
			const dropped =
				alsoDrop === undefined ? undefined : WISH_FIELDS[String(alsoDrop)];
			const also =
				dropped === undefined
					? ""
					: ` and leave open: ${FIELD_LABELS[dropped].toLowerCase()}`;
			const change = `${wishText(name, to, system)} instead of ${wishText(name, value, system)}`;
			return {
				text: `${FIELD_LABELS[name]}: ${change}${also}.`,
				label: `${FIELD_LABELS[name]}: take ${wishText(name, to, system)}${also}`,
				answers: [
					{ field: name, answer: wishAnswer(name, to, system) },
					...(dropped === undefined ? [] : [{ field: dropped, answer: "" }]),
				],
			};
		});
}
