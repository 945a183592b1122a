import type {
	BilletDensities,
	BilletDensity,
	CueDesign,
} from "@/lib/cue/design";
import { type MaterialIntegrals, weighCue } from "@/lib/cue/mass";
import { isWood } from "@/lib/cue/materials";
import {
	condition,
	independent,
	type NormalState,
} from "@/lib/numerics/conditioning";
import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import type { WoodId } from "@/lib/reference/woods";

/** A reading and its spread; the default spread stands where none is given. */
export interface Reading {
	readonly value: number;
	readonly sd?: number;
}

/** Spreads of the readings and of the geometry between the stations. This project's judgement. */
export const READING = {
	massSdG: 0.5,
	balanceSdMm: 1.5,
	/** Diameters read to 0.05 mm and a splice drawn, not seen: shares of mass, mm of balance. */
	geometryMassShare: 0.005,
	geometryBalanceMm: 2,
	/** χ² of two readings passed once in a thousand: −2·ln 0.001. */
	maxSurprise2: 13.815510557964274,
	/** Readings that add less than this share of the precision there was before are no evidence. */
	leastPrecisionShare: 0.05,
} as const;

export interface ImpliedDensity {
	readonly wood: WoodId;
	readonly beforeKgM3: Estimate;
	readonly impliedKgM3: Estimate;
	/** What the readings say by themselves; null where they hardly add to what was known before. */
	readonly evidenceKgM3: BilletDensity | null;
}

export interface ImpliedDensities {
	readonly woods: readonly ImpliedDensity[];
	/** For a request's or a design's `densities`. */
	readonly densities: BilletDensities;
	/** Between shaft and butt wood: −1 where only their sum is known; null with one wood. */
	readonly correlation: number | null;
	/** Sum of squared surprises of the two readings. */
	readonly surprise2: number;
	/** What the design weighs and where it balances with the implied densities. */
	readonly massG: number;
	readonly balanceFromButtMm: number;
}

/**
 * The wood densities that a weighed and balanced cue of known geometry implies. Mass is a sum of
 * volumes times densities, and so is the moment about the balance point, which is nil; the published
 * densities and their spreads are where it starts from; a billet that was weighed before the saw narrows its wood
 * first. Refuses, as "not-this-build", readings that such woods would give less than once in a thousand:
 * metal in it, another wood or another splice. `takeAnyway` answers those too.
 */
export function impliedDensities(p: {
	design: CueDesign;
	massG: Reading;
	balanceFromButtMm: Reading;
	billets?: BilletDensities;
	takeAnyway?: boolean;
}): Outcome<ImpliedDensities> {
	const { design, massG, balanceFromButtMm, billets = {} } = p;
	const refusals = [
		outside("massG", massG.value, 100, 1200),
		outside("balanceFromButtMm", balanceFromButtMm.value, 1, design.lengthMm),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	const before = weighCue(design);
	const { materials } = before;
	const stationMm = design.lengthMm - balanceFromButtMm.value;
	const weighed = condition(withBillets(materials, billets), {
		weights: materials.map((one) => one.volumeMm3 * 1e-6),
		value: massG.value,
		sd: Math.hypot(
			massG.sd ?? READING.massSdG,
			READING.geometryMassShare * massG.value,
		),
	});
	const balanced = condition(weighed.state, {
		weights: materials.map(
			(one) => (one.firstMm4 - stationMm * one.volumeMm3) * 1e-6,
		),
		value: 0,
		sd:
			massG.value *
			Math.hypot(
				balanceFromButtMm.sd ?? READING.balanceSdMm,
				READING.geometryBalanceMm,
			),
	});
	const surprise2 = weighed.surprise ** 2 + balanced.surprise ** 2;
	if (surprise2 > READING.maxSurprise2 && p.takeAnyway !== true)
		return refuse({
			code: "not-this-build",
			field: "massG",
			value: massG.value,
			facts: {
				expectedMassG: before.massG.value,
				expectedBalanceFromButtMm: before.balanceFromButtMm.value,
				balanceFromButtMm: balanceFromButtMm.value,
				surprise2,
				maxSurprise2: READING.maxSurprise2,
			},
		});
	const woods = woodsOf(materials, balanced.state);
	const densities: BilletDensities = Object.fromEntries(
		woods.map(({ wood, impliedKgM3 }) => [
			wood,
			{ kgM3: impliedKgM3.value, sd: impliedKgM3.sd },
		]),
	);
	const after = weighCue({
		...design,
		densities: { ...design.densities, ...densities },
	});
	return accept({
		woods,
		densities,
		correlation: correlationOf(design, materials, balanced.state),
		surprise2,
		massG: after.massG.value,
		balanceFromButtMm: after.balanceFromButtMm.value,
	});
}

/** The densities before the cue was weighed: published or the workshop's, and a weighed billet's own reading. */
function withBillets(
	materials: readonly MaterialIntegrals[],
	billets: BilletDensities,
): NormalState {
	let state = independent(materials.map((one) => one.densityKgM3));
	materials.forEach(({ material }, i) => {
		const billet = isWood(material) ? billets[material] : undefined;
		if (billet !== undefined)
			state = condition(state, {
				weights: materials.map((_, j) => (i === j ? 1 : 0)),
				value: billet.kgM3,
				sd: billet.sd,
			}).state;
	});
	return state;
}

/**
 * The readings' own word on a density: the posterior N(m, v) is the prior N(μ, σ²) times the likelihood
 * N(y, s²), so 1/s² = 1/v − 1/σ² and y = s²·(m/v − μ/σ²). Another wood's prior is in it, its own is not.
 */
function evidenceOf(before: Estimate, mean: number, sd: number) {
	const known = 1 / before.sd ** 2;
	const precision = 1 / sd ** 2 - known;
	if (!(before.sd > 0 && sd > 0)) return null;
	if (precision < READING.leastPrecisionShare * known) return null;
	return {
		kgM3: (mean / sd ** 2 - before.value * known) / precision,
		sd: Math.sqrt(1 / precision),
	};
}

function woodsOf(
	materials: readonly MaterialIntegrals[],
	state: NormalState,
): readonly ImpliedDensity[] {
	return materials.flatMap((one, i) => {
		const { material, densityKgM3: before } = one;
		if (!isWood(material)) return [];
		const value = state.mean[i] ?? Number.NaN;
		const sd = Math.sqrt(Math.max(0, state.covariance[i]?.[i] ?? 0));
		return [
			{
				wood: material,
				beforeKgM3: before,
				impliedKgM3: {
					value,
					sd,
					standing: "measured" as const,
					sources: ["measured-here" as const, ...before.sources],
				},
				evidenceKgM3: evidenceOf(before, value, sd),
			},
		];
	});
}

function correlationOf(
	design: CueDesign,
	materials: readonly MaterialIntegrals[],
	state: NormalState,
): number | null {
	const i = materials.findIndex((one) => one.material === design.shaftWood);
	const j = materials.findIndex((one) => one.material === design.buttWood);
	if (i < 0 || j < 0 || i === j) return null;
	const own = (k: number) => state.covariance[k]?.[k] ?? 0;
	const both = Math.sqrt(own(i) * own(j));
	return both > 0 ? (state.covariance[i]?.[j] ?? 0) / both : null;
}
