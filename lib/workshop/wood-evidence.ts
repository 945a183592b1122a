import type { BilletDensity } from "@/lib/cue/design";
import {
	type MemberReading,
	momentsOf,
	populationAfter,
} from "@/lib/numerics/normal-population";
import { WOODS, type WoodId } from "@/lib/reference/woods";

/*
 * What a workshop's own cues say of its woods. The tables' spread σ is that of any billet of the
 * species. Part of it is between workshops, whose timber comes from a few places and is picked in one
 * way, and part between the billets of one workshop: m ~ N(μ, ω²) and x ~ N(m, τ²) with ω² + E τ² = σ²,
 * so that a workshop that has weighed nothing has exactly the tables' band. Both m and τ are learnt
 * (lib/numerics/normal-population.ts: normal readings, mean and spread unknown, semiconjugate; Hoff
 * 2009, section 6.1). How the two shares stand is this project's judgement; ten cues overrule it.
 */
export const WOOD_PRIOR = {
	/** ω² as a share of σ². */
	betweenWorkshops: 0.5,
	/** What is known of τ beforehand counts as so many billets. */
	degrees: 4,
	/** Only the newest of a wood count: timber of years ago says little of the next billet. */
	mostReadings: 200,
	/** A reading less likely than once in a thousand is asked about: two-sided normal, from memory. */
	maxSurprise: 3.2905267314919255,
} as const;

/** A density that one finished cue or one weighed billet implies, with the error of finding it. */
export type DensityReading = BilletDensity;

/** What is held of a wood's density, kg/m³ at 12 % moisture or as settled in this workshop. */
export interface WoodBand {
	/** Of the next billet: what predictions are made with. */
	readonly next: BilletDensity;
	/** Of the workshop's mean. */
	readonly mean: BilletDensity;
	/** Between billets. */
	readonly spreadKgM3: number;
	readonly readings: number;
}

/** The published density and spread of a wood. */
export const tableDensity = (wood: WoodId): BilletDensity => {
	const { value, sd } = WOODS[wood].density12KgM3;
	return { kgM3: value, sd };
};

/**
 * The band after some readings, in whatever order; without any, or from a density known without
 * spread, it is what it starts from.
 */
export function woodBand(
	from: BilletDensity,
	readings: readonly DensityReading[],
): WoodBand {
	const { betweenWorkshops, degrees } = WOOD_PRIOR;
	const meanSd = from.sd * Math.sqrt(betweenWorkshops);
	const spread = from.sd * Math.sqrt(1 - betweenWorkshops);
	if (readings.length === 0 || from.sd === 0)
		return {
			next: from,
			mean: { kgM3: from.kgM3, sd: meanSd },
			spreadKgM3: spread,
			readings: readings.length,
		};
	const found = momentsOf(
		populationAfter(
			{
				mean: from.kgM3,
				meanSd,
				degrees,
				// E τ² = ν₀s₀²/(ν₀ − 2)
				scale: spread * Math.sqrt((degrees - 2) / degrees),
			},
			readings.map(asReading),
		),
	);
	return {
		next: { kgM3: found.mean, sd: found.nextSd },
		mean: { kgM3: found.mean, sd: found.meanSd },
		spreadKgM3: found.spread,
		readings: readings.length,
	};
}

const asReading = ({ kgM3, sd }: DensityReading): MemberReading => ({
	value: kgM3,
	sd,
});

/** How far a reading lies from what was expected of the next billet, in standard deviations. */
export const surpriseOf = (
	{ next }: WoodBand,
	reading: DensityReading,
): number => (reading.kgM3 - next.kgM3) / Math.hypot(next.sd, reading.sd);

export const isWild = (band: WoodBand, reading: DensityReading): boolean =>
	Math.abs(surpriseOf(band, reading)) > WOOD_PRIOR.maxSurprise;
