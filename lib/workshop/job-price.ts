import {
	accept,
	type Outcome,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import { estimatePrice, type PriceLine } from "@/lib/price/estimate";
import type { BuildContent, JobExtras, JobPrice } from "./job-content";
import { type PricePart, type Prices, priceListOf, priceOf } from "./prices";

/**
 * What a cue with its tip and case comes to by the workshop's list, in whole minor units. Refuses
 * "not-in-price-list" and "extra-not-priced" where the list has no amount for a wood, a tip or a case.
 */
export function jobPrice(p: {
	prices: Prices;
	build: Pick<BuildContent, "request" | "addedWeight">;
	extras: JobExtras;
}): Outcome<JobPrice> {
	const { prices, build, extras } = p;
	const cue = estimatePrice({
		list: priceListOf(prices),
		request: build.request,
		hasAddedWeight: build.addedWeight.metalMassG > 0,
	});
	if (!cue.ok) return cue;
	const lines: PriceLine[] = [...cue.value.lines];
	const missing: Refusal[] = [];
	const add = (part: PricePart, choice: string | null) => {
		if (choice === null) return;
		const amountMinor = priceOf(prices, part, choice);
		if (amountMinor === null)
			missing.push({ code: "extra-not-priced", field: part, value: choice });
		else if (amountMinor > 0)
			lines.push({ part, choice, count: 1, amountMinor });
	};
	add("tip", extras.tip);
	add("case", extras.case);
	if (missing.length > 0) return refuse(...missing);
	const { currency, minorPerUnit, basis } = cue.value;
	return accept({
		currency,
		minorPerUnit,
		basis,
		lines,
		totalMinor: lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0),
	});
}
