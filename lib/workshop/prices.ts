import type { LayoutId, SpliceId } from "@/lib/cue/design";
import { accept, type Outcome, type Refusal } from "@/lib/numerics/outcome";
import type { PriceLine } from "@/lib/price/estimate";
import type { PriceList } from "@/lib/price/list";

/** What an amount is asked for; which are priced by choice is in prices-check.ts. */
export const PRICE_PARTS = [
	"base",
	"splice",
	"layout",
	"shaft-wood",
	"butt-wood",
	"added-weight",
	"points-between",
	"front-wedge",
	"all-round-wedges",
	"veneers",
	"end-piece",
	"ferrule",
	"tip",
	"case",
] as const;

export type PricePart = (typeof PRICE_PARTS)[number];

/** One amount, labour and material apart, in whole minor units. Wedges and veneers: for each one. */
export interface PriceRow {
	readonly part: PricePart;
	/** Empty where the part has one amount. */
	readonly choice: string;
	readonly labourMinor: number;
	readonly materialMinor: number;
}

/** The workshop's price list: what it charges from a day on. */
export interface Prices {
	readonly basis: "invented" | "workshop";
	/** ISO 4217. */
	readonly currency: string;
	/** Minor units in one unit: 100 for most, 1 where there are none. */
	readonly minorPerUnit: number;
	/** How far the bill usually ends from the estimate, as a share, either way. */
	readonly spreadFraction: number;
	readonly rows: readonly PriceRow[];
}

export const amountMinor = ({ labourMinor, materialMinor }: PriceRow): number =>
	labourMinor + materialMinor;

/** The amount for a part, or null where the list has none. */
export function priceOf(
	{ rows }: Prices,
	part: PricePart,
	choice = "",
): number | null {
	const row = rows.find((one) => one.part === part && one.choice === choice);
	return row === undefined ? null : amountMinor(row);
}

/** The list as the estimate takes it. Throws where a part that has to be there is not: check it first. */
export function priceListOf(prices: Prices): PriceList {
	const plain = (part: PricePart): number => {
		const amount = priceOf(prices, part);
		if (amount === null) throw new RangeError(`no price for ${part}`);
		return amount;
	};
	const byChoice = <Id extends string>(part: PricePart) =>
		Object.fromEntries(
			prices.rows
				.filter((row) => row.part === part)
				.map((row) => [row.choice, amountMinor(row)]),
		) as Record<Id, number>;
	return {
		basis: prices.basis,
		currency: prices.currency,
		minorPerUnit: prices.minorPerUnit,
		baseMinor: plain("base"),
		spliceMinor: byChoice<SpliceId>("splice"),
		layoutMinor: byChoice<LayoutId>("layout"),
		shaftWoodMinor: byChoice("shaft-wood"),
		buttWoodMinor: byChoice("butt-wood"),
		ferruleMinor: byChoice("ferrule"),
		addedWeightMinor: plain("added-weight"),
		pointsBetweenMinor: plain("points-between"),
		frontWedgeMinor: plain("front-wedge"),
		allRoundWedgeMinor: plain("all-round-wedges"),
		veneerMinor: plain("veneers"),
		endPieceMinor: plain("end-piece"),
		spreadFraction: prices.spreadFraction,
	};
}

/** What goes with a cue beside the cue itself, in the workshop's own names; null for none. */
export interface PricedExtras {
	readonly tip: string | null;
	readonly case: string | null;
}

/**
 * The price lines of a tip and a case, for `estimatePrice`. Refuses "not-in-price-list" where the list
 * has no amount for a name.
 */
export function extraLines(
	extras: PricedExtras,
	amountOf: (part: keyof PricedExtras, name: string) => number | null,
): Outcome<readonly PriceLine[]> {
	const lines: PriceLine[] = [];
	const refusals: Refusal[] = [];
	for (const part of ["tip", "case"] as const) {
		const name = extras[part];
		if (name === null) continue;
		const amountMinor = amountOf(part, name);
		if (amountMinor === null)
			refusals.push({ code: "extra-not-priced", field: part, value: name });
		else lines.push({ part, choice: name, count: 1, amountMinor });
	}
	return refusals.length > 0 ? { ok: false, refusals } : accept(lines);
}
