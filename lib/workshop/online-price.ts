import type { CueRequest } from "@/lib/cue/design";
import type { Outcome } from "@/lib/numerics/outcome";
import { estimatePrice, type PriceEstimate } from "@/lib/price/estimate";
import { type LeadTime, leadTime } from "./lead-time";
import {
	type OnlineChoices,
	type OnlineOffer,
	requestOf,
} from "./online-choices";
import { extraLines } from "./prices";

/** A cue to be priced and timed: as chosen, and whether metal goes into it. */
interface Asked {
	readonly choices: OnlineChoices;
	readonly hasAddedWeight: boolean;
	/** Where it is known already. */
	readonly request?: CueRequest;
}

/** What a cue comes to with its tip and case. Refuses "not-in-price-list" and "extra-not-priced". */
export function onlinePrice(
	{ choices, hasAddedWeight, request }: Asked,
	offer: OnlineOffer,
): Outcome<PriceEstimate> {
	const { workshop, tips, cases } = offer;
	const extras = extraLines(
		{ tip: choices.tip, case: choices.case },
		(part, wanted) =>
			(part === "tip" ? tips : cases).find(({ name }) => name === wanted)
				?.priceMinor ?? null,
	);
	const price = estimatePrice({
		list: workshop.priceList,
		request: request ?? requestOf(choices, offer),
		hasAddedWeight,
		extras: extras.ok ? extras.value : [],
	});
	if (price.ok && extras.ok) return price;
	return {
		ok: false,
		refusals: [
			...(price.ok ? [] : price.refusals),
			...(extras.ok ? [] : extras.refusals),
		],
	};
}

/** When it would be ready. */
export const onlineLeadTime = (
	{ choices, hasAddedWeight, request }: Asked,
	offer: OnlineOffer,
): Outcome<LeadTime> =>
	leadTime({
		leadTimes: offer.leadTimes,
		request: request ?? requestOf(choices, offer),
		hasAddedWeight,
		cuesAhead: offer.cuesAhead,
		from: offer.from,
	});
