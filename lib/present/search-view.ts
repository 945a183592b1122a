import type { CueChoice } from "@/lib/advice/choice";
import type { CriterionId } from "@/lib/advice/criteria";
import type { CueOption } from "@/lib/advice/option";
import type { Compared, SearchReport } from "@/lib/advice/search";
import type { Reader } from "@/lib/words/reader";
import { criterionTitle, formatMeasure, formatMoney } from "./criterion-words";
import {
	formatLength,
	formatLengthDifference,
	formatMass,
	formatMassDifference,
	formatNumber,
	formatPercent,
	type LengthKind,
} from "./figures";
import {
	fieldLabel,
	inSentence,
	layoutLabel,
	taperLabel,
	woodName,
} from "./labels";
import { type WishAnswer, wishesOf } from "./wish-answers";

/** "Best of 112,320 cues; 1,684 are beaten by none." */
export function countsText(
	{ counts }: Pick<SearchReport, "counts">,
	reader: Reader,
): string {
	const text = reader.say("search.counts", {
		candidates: formatNumber(counts.candidates, reader),
		nonDominated: formatNumber(counts.nonDominated, reader),
	});
	return counts.isEverythingFixed
		? reader.say("search.fixed", { counts: text })
		: text;
}

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
		name: reader.say("search.name", {
			place: formatNumber(i + 1, reader),
			wood: woodName(option.request.buttWood, reader),
			splice: inSentence.splice(option.request.splice, reader),
		}),
		rows: optionRows(option, reader),
		worth: reader.say("search.worth", {
			worth: formatPercent(option.overall, reader),
			mean: formatPercent(option.overallMean, reader),
			low: formatPercent(option.overallBand.low, reader),
			high: formatPercent(option.overallBand.high, reader),
		}),
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
	const { say } = reader;
	const measure = (id: CriterionId) =>
		formatMeasure(id, results[id].value, reader, price);
	const weight = measure("weight");
	return [
		{
			label: fieldLabel("wishLayout", reader),
			value: layoutLabel(request.layout, reader),
		},
		{
			label: fieldLabel("wishTaper", reader),
			value: taperLabel(request.taperShape, reader),
		},
		{ label: criterionTitle("reach", reader), value: measure("reach") },
		{
			label: criterionTitle("weight", reader),
			value:
				wantedMassG === null
					? say("search.woodsOwn", { mass: weight })
					: weightReachedShare < 0.9
						? say("search.reached", {
								mass: weight,
								share: formatPercent(weightReachedShare, reader),
							})
						: weight,
		},
		{
			label: say("search.label.butt"),
			value: formatLength(request.buttDiameterMm, reader, "diameter"),
		},
		{ label: criterionTitle("tip", reader), value: measure("tip") },
		{ label: say("search.label.balance"), value: measure("balance") },
		{
			label: say("search.label.metal"),
			value:
				plan.metalMassG > 0
					? formatMass(plan.metalMassG, reader, "added")
					: say("search.noMetal"),
		},
		{
			label:
				price.basis === "invented"
					? say("search.label.priceInvented")
					: say("search.label.price"),
			value: say("search.price", {
				total: formatMoney(price.totalMinor, price, reader),
				low: formatMoney(price.lowMinor, price, reader),
				high: formatMoney(price.highMinor, price, reader),
			}),
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
	const { say } = reader;
	const share = Math.round(100 * firstBetterShare);
	const which =
		share >= 50
			? say("search.firstBetter", { share: formatNumber(share, reader) })
			: say("search.thisBetter", { share: formatNumber(100 - share, reader) });
	if (tooClose) return say("search.tooClose", { which });
	return insideEachOther
		? say("search.inside", { which })
		: say("search.apart", { which });
}

function snappingText(option: CueOption, reader: Reader): string {
	const { say } = reader;
	const { betweenSteps, request, results, snappingCost } = option;
	const by = (mm: number, kind: LengthKind) =>
		formatLengthDifference(mm, reader, kind);
	const moves = (
		[
			["length", by(request.lengthMm - betweenSteps.lengthMm, "gap")],
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
				by(request.buttDiameterMm - betweenSteps.buttDiameterMm, "bench"),
			],
			["tip", by(request.tipDiameterMm - betweenSteps.tipDiameterMm, "bench")],
		] as const
	)
		.filter(([, moved]) => /[1-9¼½¾]/.test(moved))
		.map(([name, moved]) => say(`search.moved.${name}`, { by: moved }));
	if (moves.length === 0) return say("search.onStep");
	return say("search.snapped", {
		moves: moves.join(", "),
		cost:
			Math.abs(snappingCost) < 0.0005
				? "little"
				: snappingCost > 0
					? "some"
					: "none",
		share: formatPercent(snappingCost, reader, 1),
	});
}
