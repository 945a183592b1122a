import type { CueChoice } from "@/lib/advice/choice";
import type { CriterionId } from "@/lib/advice/criteria";
import type { CueOption } from "@/lib/advice/option";
import type { Compared, SearchReport } from "@/lib/advice/search";
import type { Reader } from "@/lib/words/reader";
import { formatMeasure, formatMoney } from "./criterion-words";
import {
	formatLength,
	formatLengthDifference,
	formatMass,
	formatMassDifference,
	formatNumber,
	formatPercent,
} from "./figures";
import { inSentence, layoutLabel, taperLabel, woodName } from "./labels";
import { type WishAnswer, wishesOf } from "./wish-answers";

const EVERYTHING_FIXED =
	"Length, weight, butt and tip are all fixed by wishes: only woods, build and balance are left to look through.";

/** "Best of 112,320 cues; 1,684 are beaten by none." */
export const countsText = (
	{ counts }: Pick<SearchReport, "counts">,
	reader: Reader,
): string =>
	`Best of ${formatNumber(counts.candidates, reader)} cues; ${formatNumber(counts.nonDominated, reader)} are beaten by none.${counts.isEverythingFixed ? ` ${EVERYTHING_FIXED}` : ""}`;

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
	reader: Reader,
): readonly OptionView[] {
	return report.options.map((option, i) => ({
		name: `${formatNumber(i + 1, reader)}. ${woodName(option.request.buttWood, reader)}, ${inSentence.splice(option.request.splice, reader)}`,
		rows: optionRows(option, reader),
		worth: `${formatPercent(option.overall, reader)} of the ideal by the estimates; ${formatPercent(option.overallMean, reader)} on average over what is not known, nine in ten within ${formatPercent(option.overallBand.low, reader)} to ${formatPercent(option.overallBand.high, reader)}.`,
		close: closeText(report.compared, i, reader),
		snapping: snappingText(option, reader),
		wishes: wishesOf(option, reader),
		choice: option,
	}));
}

function optionRows(
	{ request, results, plan, price, weightReachedShare, wantedMassG }: CueOption,
	reader: Reader,
): OptionView["rows"] {
	const measure = (id: CriterionId) =>
		formatMeasure(id, results[id].value, reader, price);
	return [
		{ label: "Pieces", value: layoutLabel(request.layout, reader) },
		{ label: "Taper", value: taperLabel(request.taperShape, reader) },
		{ label: "Length", value: measure("reach") },
		{
			label: "Weight",
			value:
				wantedMassG === null
					? `${measure("weight")}, the wood’s own`
					: weightReachedShare < 0.9
						? `${measure("weight")}; the wood lets it be reached in ${formatPercent(weightReachedShare, reader)} of draws`
						: measure("weight"),
		},
		{
			label: "Butt",
			value: formatLength(request.buttDiameterMm, reader, "diameter"),
		},
		{ label: "Tip", value: measure("tip") },
		{ label: "Balance from the butt end", value: measure("balance") },
		{
			label: "Metal added",
			value:
				plan.metalMassG > 0
					? formatMass(plan.metalMassG, reader, "added")
					: "None",
		},
		{
			label:
				price.basis === "invented"
					? "Price, from an invented price list"
					: "Price estimate",
			value: `${formatMoney(price.totalMinor, price, reader)} (${formatMoney(price.lowMinor, price, reader)} to ${formatMoney(price.highMinor, price, reader)})`,
		},
	];
}

function closeText(
	compared: readonly Compared[],
	place: number,
	reader: Reader,
): string | null {
	const found = compared.find(({ second }) => second === place);
	return found === undefined ? null : closenessText(found, reader);
}

/** Counted in draws of what is not known. */
export function closenessText(
	{
		firstBetterShare,
		insideEachOther,
		tooClose,
	}: Pick<Compared, "firstBetterShare" | "insideEachOther" | "tooClose">,
	reader: Reader,
): string {
	const share = Math.round(100 * firstBetterShare);
	const which =
		share >= 50
			? `the first is better in ${formatNumber(share, reader)} of 100 draws`
			: `this one is better in ${formatNumber(100 - share, reader)} of 100 draws, though not by the estimates`;
	if (tooClose) return `Too close to call: ${which}.`;
	return insideEachOther
		? `Inside each other’s band, yet told apart: ${which}.`
		: `Told apart: ${which}.`;
}

function snappingText(option: CueOption, reader: Reader): string {
	const { betweenSteps, request, results, snappingCost } = option;
	const moves = [
		[
			"length",
			formatLengthDifference(
				request.lengthMm - betweenSteps.lengthMm,
				reader,
				"gap",
			),
		],
		[
			"weight",
			formatMassDifference(
				results.weight.value - betweenSteps.massG,
				reader,
				"added",
			),
		],
		[
			"butt",
			formatLengthDifference(
				request.buttDiameterMm - betweenSteps.buttDiameterMm,
				reader,
				"bench",
			),
		],
		[
			"tip",
			formatLengthDifference(
				request.tipDiameterMm - betweenSteps.tipDiameterMm,
				reader,
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
				? `${formatPercent(snappingCost, reader, 1)} of its worth`
				: "nothing of its worth";
	return `Set to the bench’s steps (${moves.join(", ")}), which cost ${cost}.`;
}
