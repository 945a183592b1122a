import type { BilletDensity } from "@/lib/cue/design";
import { REFERENCE_MOISTURE_PCT } from "@/lib/cue/moisture";
import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";

export interface WeighedBillet {
	readonly massG: number;
	readonly lengthMm: number;
	readonly widthMm: number;
	readonly thicknessMm: number;
	/** From a meter or from the air it has settled in. */
	readonly moisturePct: Pick<Estimate, "value" | "sd">;
	/** Spread of each cross dimension along the billet, default 0.2 mm. */
	readonly sizeSdMm?: number;
	/** Spread of the scale, default 1 g. */
	readonly massSdG?: number;
}

/**
 * Density at 12 % of a squared billet from its size, mass and moisture: mass × 1.12/(1 + M/100) over
 * the volume as it stands. The volume's own change (about 0.4 % a point at most) is in the spread.
 * Refuses sizes of no billet, 4–25 % moisture, and a density that no wood here has.
 */
export function billetDensity(billet: WeighedBillet): Outcome<BilletDensity> {
	const { sizeSdMm = 0.2, massSdG = 1, moisturePct } = billet;
	const refusals = [
		outside("massG", billet.massG, 20, 20000),
		outside("lengthMm", billet.lengthMm, 100, 3000),
		outside("widthMm", billet.widthMm, 8, 300),
		outside("thicknessMm", billet.thicknessMm, 8, 300),
		outside("moisturePct", moisturePct.value, 4, 25),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	const volumeM3 = billet.lengthMm * billet.widthMm * billet.thicknessMm * 1e-9;
	const toReference =
		(100 + REFERENCE_MOISTURE_PCT) / (100 + moisturePct.value);
	const kgM3 = ((billet.massG / 1000) * toReference) / volumeM3;
	const density = outside("densityKgM3", kgM3, 300, 1500);
	if (density) return refuse(density);
	const swelling = 0.004 * Math.abs(moisturePct.value - REFERENCE_MOISTURE_PCT);
	const relative = Math.hypot(
		massSdG / billet.massG,
		sizeSdMm / billet.widthMm,
		sizeSdMm / billet.thicknessMm,
		moisturePct.sd / (100 + moisturePct.value),
		swelling,
	);
	return accept({ kgM3, sd: kgM3 * relative });
}
