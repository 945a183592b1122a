import { type Finding, isWeighted, judge, type OnlineCue } from "./online";
import {
	CATALOGUED,
	type CataloguedField,
	type OnlineChoices,
	type OnlineOffer,
	optionsFor,
} from "./online-choices";
import { onlinePrice } from "./online-price";

/** What choosing an option would do, everything else as it is. */
export interface Outlook {
	readonly field: CataloguedField;
	readonly option: OnlineChoices[CataloguedField];
	/** The first thing that would be refused and is not now; null where it would do. */
	readonly refused: Finding | null;
	/** Against the cue as it is; null where either has no price. */
	readonly moreMinor: number | null;
}

/** Every option that is not chosen, in the order of the fields. A game changes too much to be foreseen. */
export const optionsAhead = (
	choices: OnlineChoices,
	offer: OnlineOffer,
): readonly Pick<Outlook, "field" | "option">[] => {
	const lists = optionsFor(offer, choices.gameId);
	return CATALOGUED.filter((field) => field !== "gameId").flatMap((field) =>
		(lists[field] as readonly Outlook["option"][])
			.filter((option) => option !== choices[field])
			.map((option) => ({ field, option })),
	);
};

export function outlookOf(
	cue: Pick<OnlineCue, "choices" | "findings" | "price">,
	{ field, option }: Pick<Outlook, "field" | "option">,
	offer: OnlineOffer,
): Outlook {
	const choices: OnlineChoices = { ...cue.choices, [field]: option };
	const known = new Set(
		cue.findings
			.filter(({ kind }) => kind === "refused")
			.map((one) => `${one.field} ${one.code}`),
	);
	const judged = judge(choices, offer);
	const { refused, request } = judged;
	const price = onlinePrice(
		{ choices, request, hasAddedWeight: isWeighted(judged) },
		offer,
	);
	return {
		field,
		option,
		refused:
			refused.find((one) => !known.has(`${one.field} ${one.code}`)) ?? null,
		moreMinor:
			price.ok && cue.price !== null
				? price.value.totalMinor - cue.price.totalMinor
				: null,
	};
}
