import type { BilletDensities, BilletDensity } from "@/lib/cue/design";
import { REFERENCE_MOISTURE_PCT } from "@/lib/cue/moisture";
import type { WoodId } from "@/lib/reference/woods";
import { type DensityReading, tableDensity, woodBand } from "./wood-evidence";

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

/** What finished cues said of the woods, see wood-evidence.ts. */
export type EvidenceByWood = Readonly<
	Partial<Record<WoodId, readonly DensityReading[]>>
>;

/**
 * Density of the billet that a cue will be made of, drawn from those at hand: in the shares of weighed
 * and unweighed ones
 * - for a weighed billet the mean of those and their spread about it, Σ(x − m)²/n, with the error of
 *   weighing;
 * - for one not yet weighed the band of the wood after the weighed ones and the finished cues.
 * Null where nothing was weighed, stated or learnt.
 */
export function densityOfStock(
	stock: StockWood,
	evidence: readonly DensityReading[] = [],
): StockDensity | null {
	const n = stock.billets.length;
	const { stated } = stock;
	if (n === 0 && evidence.length === 0)
		return stated && { ...stated, weighedCount: 0 };
	const values = stock.billets.map(billetKgM3);
	const { next } = woodBand(
		n === 0 && stated !== null ? stated : tableDensity(stock.wood),
		[...values.map((kgM3) => ({ kgM3, sd: WEIGHING_CV * kgM3 })), ...evidence],
	);
	if (n === 0) return { ...next, weighedCount: 0 };
	const mean = values.reduce((sum, value) => sum + value, 0) / n;
	const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
	const unweighed = Math.max(0, stock.count - n);
	return {
		...mixed([
			{
				weight: n,
				density: {
					kgM3: mean,
					sd: Math.sqrt(squares / n + (WEIGHING_CV * mean) ** 2),
				},
			},
			...(unweighed > 0 ? [{ weight: unweighed, density: next }] : []),
		]),
		weighedCount: n,
	};
}

/**
 * The densities a computation takes: from the stock, and from what finished cues said of a wood, at hand
 * or not. Several entries of one wood are mixed by how many billets each has: m = Σwm,
 * s² = Σw(s² + m²) − m² (law of total variance).
 */
export function densitiesOf(
	{ woods }: Stock,
	evidence: EvidenceByWood = {},
): BilletDensities {
	const byWood = new Map<
		WoodId,
		{ weight: number; density: BilletDensity }[]
	>();
	for (const entry of woods) {
		const density = densityOfStock(entry, evidence[entry.wood]);
		if (density === null) continue;
		const entries = byWood.get(entry.wood) ?? [];
		entries.push({ weight: entry.count, density });
		byWood.set(entry.wood, entries);
	}
	for (const wood of Object.keys(evidence) as WoodId[]) {
		const readings = evidence[wood] ?? [];
		if (readings.length > 0 && !byWood.has(wood))
			byWood.set(wood, [
				{ weight: 1, density: woodBand(tableDensity(wood), readings).next },
			]);
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
