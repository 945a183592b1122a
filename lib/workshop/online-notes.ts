import type { AddedWeightPlan } from "@/lib/build/added-weight";
import { WOODS } from "@/lib/reference/woods";
import type { Finding } from "./online";
import {
	type OnlineChoices,
	type OnlineField,
	type OnlineOffer,
	usualOnline,
} from "./online-choices";
import { onlineLeadTime, onlinePrice } from "./online-price";

const WOOD_FIELDS = [
	"shaftWood",
	"buttWood",
	"pointsBetween",
	"frontWedge",
	"wedges",
	"veneer",
] as const satisfies readonly OnlineField[];

/** Choices that can make a cue dearer or slower than the workshop's usual. */
const COSTING = [
	"layout",
	"endPieceMm",
	"shaftWood",
	"buttWood",
	"splice",
	"pointsBetween",
	"frontWedge",
	"wedges",
	"veneer",
	"ferruleMetal",
	"tip",
	"case",
	"massG",
] as const satisfies readonly OnlineField[];

interface Noted {
	readonly choices: OnlineChoices;
	readonly offer: OnlineOffer;
	readonly plan: AddedWeightPlan | null;
	readonly hasAddedWeight: boolean;
}

/** What is to be known of choices that can be made: listed woods, weights at the edge, what costs more. */
export const notesOn = (noted: Noted): readonly Finding[] => [
	...protectedWoods(noted.choices),
	...weightNotes(noted),
	...dearer(noted),
];

/** "protected-wood-border" where the cue is to cross a border, "protected-wood" where it may one day. */
function protectedWoods(choices: OnlineChoices): readonly Finding[] {
	return WOOD_FIELDS.flatMap((field): Finding[] => {
		const wood = choices[field];
		const listed = wood === null ? null : WOODS[wood].protection;
		if (wood === null || listed === null) return [];
		return [
			{
				kind: "caution",
				code: choices.isGoingAbroad
					? "protected-wood-border"
					: "protected-wood",
				field,
				value: wood,
				facts: {
					appendix: listed.appendix,
					dataDate: listed.dataDate,
					source: listed.source,
				},
			},
		];
	});
}

/** A wanted weight under the usual one of these woods asks for light billets; the workshop has to find them. */
const weightNotes = ({ choices, plan }: Noted): readonly Finding[] =>
	(plan?.cautions ?? [])
		.filter(({ code }) => code === "natural-above-wanted")
		.map(({ code, facts }) => ({
			kind: "caution",
			code,
			field: "massG",
			value: choices.massG,
			facts,
		}));

/** Each choice against the same cue with the workshop's usual in its place. */
function dearer(noted: Noted): readonly Finding[] {
	const { choices, offer, hasAddedWeight } = noted;
	const usual = usualOnline(offer, choices.gameId);
	const price = onlinePrice(noted, offer);
	const lead = onlineLeadTime(noted, offer);
	if (!price.ok) return [];
	return COSTING.filter((field) => choices[field] !== usual[field]).flatMap(
		(field): Finding[] => {
			const plain = {
				choices: { ...choices, [field]: usual[field] },
				hasAddedWeight: field === "massG" ? false : hasAddedWeight,
			};
			const before = onlinePrice(plain, offer);
			const beforeLead = onlineLeadTime(plain, offer);
			if (!before.ok) return [];
			const moreMinor = price.value.totalMinor - before.value.totalMinor;
			const moreDays =
				lead.ok && beforeLead.ok
					? lead.value.benchDays - beforeLead.value.benchDays
					: 0;
			if (moreMinor <= 0 && moreDays <= 0) return [];
			return [
				{
					kind: "costs-more",
					code: "costs-more",
					field,
					value: asValue(choices[field]),
					facts: {
						moreMinor,
						moreDays,
						...(usual[field] === null
							? {}
							: { usual: usual[field] as string | number }),
					},
				},
			];
		},
	);
}

const asValue = (choice: OnlineChoices[OnlineField]): Finding["value"] =>
	typeof choice === "boolean" ? null : choice;
