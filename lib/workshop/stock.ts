import type { BilletDensities, BilletDensity } from "@/lib/cue/design";
import { REFERENCE_MOISTURE_PCT } from "@/lib/cue/moisture";
import { WOODS, type WoodId } from "@/lib/reference/woods";

/** One billet as it was weighed: its density read off, or mass and volume to work it out from. */
export type StockBillet = {
	/** What is written on it; may be empty. */
	readonly label: string;
	/** Moisture when weighed, %; null: taken as settled at 12 %, where all densities here stand. */
	readonly moisturePct: number | null;
} & (
	| { readonly densityKgM3: number }
	| { readonly massG: number; readonly volumeCm3: number }
);

/** Wood at hand of one species and grade. */
export interface StockWood {
	readonly wood: WoodId;
	/** The workshop's own word, such as "A"; may be empty. */
	readonly grade: string;
	/** Width of a year ring; null where not read. */
	readonly ringSpacingMm: number | null;
	/** Billets at hand, weighed or not. */
	readonly count: number;
	readonly billets: readonly StockBillet[];
	/** A mean and spread known from elsewhere, used while no billet is listed. */
	readonly stated: BilletDensity | null;
}

export interface Stock {
	readonly basis: "invented" | "workshop";
	readonly woods: readonly StockWood[];
}

/** Scale, rule and moisture together, as a share of a billet's density. Assumed. */
export const WEIGHING_CV = 0.01;

/** Density of a weighed billet at 12 %: mass over volume × 1.12/(1 + M/100), kg/m³. */
export function billetKgM3(billet: StockBillet): number {
	const asWeighed =
		"densityKgM3" in billet
			? billet.densityKgM3
			: (billet.massG / billet.volumeCm3) * 1000;
	const { moisturePct } = billet;
	return moisturePct === null
		? asWeighed
		: (asWeighed * (100 + REFERENCE_MOISTURE_PCT)) / (100 + moisturePct);
}

export interface StockDensity extends BilletDensity {
	/** Weighed billets it rests on; 0 for a stated mean. */
	readonly weighedCount: number;
}

/**
 * Density of the billet that a cue will be made of, drawn from those at hand: the mean of the weighed
 * ones, and as spread
 * - for a weighed billet that of the weighed ones about their mean, Σ(x − m)²/n;
 * - for one not yet weighed √(1 + 1/n) times the spread pooled with the published one, which counts as
 *   one further billet: (σ² + Σ(x − m)²)/n (predictive spread of a normal sample);
 * in the shares of weighed and unweighed ones, each with the error of weighing. Null where nothing was
 * weighed or stated.
 */
export function densityOfStock(stock: StockWood): StockDensity | null {
	const n = stock.billets.length;
	if (n === 0) return stock.stated && { ...stock.stated, weighedCount: 0 };
	const values = stock.billets.map(billetKgM3);
	const mean = values.reduce((sum, value) => sum + value, 0) / n;
	const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
	const published = WOODS[stock.wood].density12KgM3.sd;
	const unweighedShare =
		Math.max(0, stock.count - n) / Math.max(stock.count, n);
	const variance =
		((1 - unweighedShare) * squares) / n +
		unweighedShare * (1 + 1 / n) * ((published ** 2 + squares) / n) +
		(WEIGHING_CV * mean) ** 2;
	return { kgM3: mean, sd: Math.sqrt(variance), weighedCount: n };
}

/**
 * The densities a computation takes from the stock. Several entries of one wood are mixed by how many
 * billets each has: m = Σwm, s² = Σw(s² + m²) − m² (law of total variance).
 */
export function densitiesOf({ woods }: Stock): BilletDensities {
	const byWood = new Map<
		WoodId,
		{ weight: number; density: BilletDensity }[]
	>();
	for (const entry of woods) {
		const density = densityOfStock(entry);
		if (density === null) continue;
		const entries = byWood.get(entry.wood) ?? [];
		entries.push({ weight: entry.count, density });
		byWood.set(entry.wood, entries);
	}
	return Object.fromEntries(
		[...byWood].map(([wood, entries]) => [wood, mixed(entries)]),
	);
}

function mixed(
	entries: readonly { weight: number; density: BilletDensity }[],
): BilletDensity {
	const [only] = entries;
	if (only !== undefined && entries.length === 1)
		return { kgM3: only.density.kgM3, sd: only.density.sd };
	// Where all billets are used up, what was learnt of them counts alike.
	const isUsedUp = entries.every(({ weight }) => weight === 0);
	const weightOf = (weight: number) => (isUsedUp ? 1 : weight);
	const total = entries.reduce((sum, one) => sum + weightOf(one.weight), 0);
	let kgM3 = 0;
	for (const { weight, density } of entries)
		kgM3 += (weightOf(weight) / total) * density.kgM3;
	let variance = 0;
	for (const { weight, density } of entries)
		variance +=
			(weightOf(weight) / total) *
			(density.sd ** 2 + (density.kgM3 - kgM3) ** 2);
	return { kgM3, sd: Math.sqrt(variance) };
}
