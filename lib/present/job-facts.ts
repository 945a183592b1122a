import type { LayoutId, SpliceId } from "@/lib/cue/design";
import type { MetalId } from "@/lib/reference/metals";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import type { JobContent, JobPrice } from "@/lib/workshop/job-content";
import type { DifferenceId } from "@/lib/workshop/job-difference";
import { PRICE_PARTS, type PricePart } from "@/lib/workshop/prices";
import { formatMass } from "./figures";
import { woodsText } from "./job-view";
import {
	gameName,
	inSentence,
	layoutLabel,
	metalName,
	spliceLabel,
	taperLabel,
	woodName,
} from "./labels";
import { formatAmount } from "./money";

export interface JobFact {
	readonly label: string;
	readonly value: string;
}

/** The woods and parts of a cue and what goes with it, as a customer reads them. */
export function jobWoods(
	{ build, extras }: Pick<JobContent, "build" | "extras">,
	reader: Reader,
): JobFact[] {
	const { say } = reader;
	const { request, design, gameId, addedWeight } = build;
	const decoration = design.splice.cuts
		.map(({ wood }) => wood)
		.filter((wood) => wood !== request.buttWood && wood !== request.shaftWood);
	const fact = (what: DifferenceId, value: string): JobFact => ({
		label: say(`job.difference.${what}`),
		value,
	});
	return [
		fact("game", gameName(gameId, reader)),
		fact("shaft-wood", woodName(request.shaftWood, reader)),
		fact("butt-wood", woodName(request.buttWood, reader)),
		fact("splice", spliceLabel(request.splice, reader)),
		...(decoration.length === 0
			? []
			: [fact("decoration", woodsText(decoration, reader))]),
		fact("layout", layoutLabel(request.layout, reader)),
		fact("taper", taperLabel(request.taperShape, reader)),
		fact("ferrule", metalName(request.ferruleMetal, reader)),
		...(addedWeight.metalMassG > 0
			? [
					fact(
						"added-weight",
						`${formatMass(addedWeight.addedMassG.value, reader, "added")}, ${inSentence.metal(addedWeight.metal, reader)}`,
					),
				]
			: []),
		...(extras.tip === null ? [] : [fact("tip-leather", extras.tip)]),
		...(extras.case === null ? [] : [fact("case", extras.case)]),
		...(extras.gripNotes === "" ? [] : [fact("grip-notes", extras.gripNotes)]),
	];
}

/** The lines of a price with its total, as they stand in a list. */
export function priceRows(
	price: JobPrice,
	reader: Reader,
): { part: string; amount: string }[] {
	const { say } = reader;
	return [
		...price.lines.map(({ part, choice, count, amountMinor }) => ({
			part: [
				partName(part, reader),
				choice === null ? null : choiceName(part, choice, reader),
				count > 1 ? `${count}\u00a0×` : null,
			]
				.filter((text) => text !== null)
				.join(", "),
			amount: formatAmount(amountMinor, price, reader),
		})),
		{
			part: say("job.quote.total"),
			amount: formatAmount(price.totalMinor, price, reader),
		},
	];
}

const PRICED = new Set<string>(PRICE_PARTS);
const partName = (part: string, { say }: Reader): string =>
	PRICED.has(part) ? say(`job.part.${part as PricePart}`) : part;

/** A choice in a price list is an id of ours or a name of the workshop's. */
function choiceName(part: string, choice: string, reader: Reader): string {
	if (part === "splice") return spliceLabel(choice as SpliceId, reader);
	if (part === "layout") return layoutLabel(choice as LayoutId, reader);
	if (part === "ferrule") return metalName(choice as MetalId, reader);
	if (part === "tip" || part === "case") return choice;
	return choice in WOODS ? woodName(choice as WoodId, reader) : choice;
}
