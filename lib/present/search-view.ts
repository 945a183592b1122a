import type { CueChoice } from "@/lib/advice/choice";
import type { CriterionId } from "@/lib/advice/criteria";
import type { CueOption } from "@/lib/advice/option";
import type { Compared, SearchReport } from "@/lib/advice/search";
import type { UnitSystem } from "@/lib/units/quantity";
import { formatMeasure, formatMoney } from "./criterion-words";
import {
	formatLength,
	formatLengthDifference,
	formatMass,
	formatMassDifference,
	formatNumber,
	formatPercent,
} from "./figures";
import { LAYOUT_LABELS, SPLICE_LABELS, TAPER_LABELS, woodName } from "./labels";
import { type WishAnswer, wishesOf } from "./wish-answers";

/** "Best of 112,320 cues; 1,684 are beaten by none." */
export const countsText = ({ counts }: Pick<SearchReport, "counts">): string =>
	`Best of ${formatNumber(counts.candidates)} cues; ${formatNumber(counts.nonDominated)} are beaten by none.`;

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
