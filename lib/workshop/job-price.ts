import { accept, type Outcome } from "@/lib/numerics/outcome";
import { estimatePrice } from "@/lib/price/estimate";
import type { BuildContent, JobPrice } from "./job-content";
import type { JobExtras } from "./job-extras";
import { extraLines, type Prices, priceListOf, priceOf } from "./prices";

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
	const amounts = extraLines(extras, (part, name) =>
		priceOf(prices, part, name),
	);
	const price = estimatePrice({
		list: priceListOf(prices),
		request: build.request,
		hasAddedWeight: build.addedWeight.metalMassG > 0,
		extras: amounts.ok ? amounts.value : [],
	});
	if (!price.ok) return price;
	if (!amounts.ok) return amounts;
	const { currency, minorPerUnit, basis, lines, totalMinor } = price.value;
	return accept({ currency, minorPerUnit, basis, lines, totalMinor });
}
