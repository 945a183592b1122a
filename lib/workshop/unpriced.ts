import { type PricePart, type Prices, priceOf } from "./prices";
import type { WorkshopCatalogue } from "./settings";

/** What a catalogue offers that a price list has no amount for: it is not offered until there is one. */
export function unpricedOf({
	catalogue,
	prices,
}: {
	catalogue: WorkshopCatalogue;
	prices: Prices;
}): readonly { readonly part: PricePart; readonly choice: string }[] {
	const shafts = new Set(
		Object.values(catalogue.games).flatMap(({ shaftWoods }) => shaftWoods),
	);
	const offered: readonly (readonly [PricePart, readonly string[]])[] = [
		["shaft-wood", [...shafts]],
		["butt-wood", catalogue.buttWoods.map(({ id }) => id)],
		["ferrule", catalogue.ferruleMetals],
		["tip", catalogue.tips.map(({ name }) => name)],
		["case", catalogue.cases.map(({ name }) => name)],
	];
	return offered.flatMap(([part, choices]) =>
		choices
			.filter((choice) => priceOf(prices, part, choice) === null)
			.map((choice) => ({ part, choice })),
	);
}
