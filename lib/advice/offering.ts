import type { CueRequest } from "@/lib/cue/design";
import { estimatePrice } from "@/lib/price/estimate";
import type { PriceList } from "@/lib/price/list";
import type { Catalogue } from "./catalogue";

/** What a workshop asks for a choice, and how it ranks it. */
export interface Offering {
	/** Null where the list has no amount for a wood. */
	priceMinor(request: CueRequest, hasAddedWeight: boolean): number | null;
	/** Tier of the splice plus tier of the butt wood, 0–4. */
	finishOf(request: CueRequest): number;
}

export function offeringFrom(p: {
	catalogue: Catalogue;
	priceList: PriceList;
}): Offering {
	const prices = new Map<string, number | null>();
	return {
		priceMinor(request, hasAddedWeight) {
			const { shaftWood, buttWood, splice, layout, ferruleMetal } = request;
			const plain =
				request.splicing === undefined && request.fittings === undefined;
			const key = [
				shaftWood,
				buttWood,
				splice,
				layout,
				ferruleMetal,
				hasAddedWeight,
			].join();
			const known = plain ? prices.get(key) : undefined;
			if (known !== undefined) return known;
			const made = estimatePrice({
				list: p.priceList,
				request,
				hasAddedWeight,
			});
			const price = made.ok ? made.value.totalMinor : null;
			if (plain) prices.set(key, price);
			return price;
		},
		finishOf({ splice, buttWood }) {
			const tierOf = <Id>(
				offers: readonly { readonly id: Id; readonly tier: number }[],
				id: Id,
			) => offers.find((offer) => offer.id === id)?.tier ?? 1;
			return (
				tierOf(p.catalogue.splices, splice) +
				tierOf(p.catalogue.buttWoods, buttWood)
			);
		},
	};
}
