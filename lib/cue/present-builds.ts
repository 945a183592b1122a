import { condition, independent, sumOf } from "@/lib/numerics/conditioning";
import {
	accept,
	type Outcome,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import { METALS } from "@/lib/reference/metals";
import type { WoodId } from "@/lib/reference/woods";
import type { CueDesign, LayoutId, SpliceId, TaperPoint } from "./design";
import { type CueMass, type MaterialIntegrals, weighCue } from "./mass";
import { bendingModulusGPa, densityKgM3, isWood } from "./materials";
import type { PresentCue } from "./present-reading";
import { regionsAt } from "./regions";
import { designFrom } from "./template";

/** Builds weighed up where the player does not know. Common practice, no source. */
const USUAL = {
	shaftWoods: ["white-ash", "sugar-maple"],
	buttWoods: [
		"indian-rosewood",
		"gaboon-ebony",
		"macassar-ebony",
		"black-walnut",
	],
	splices: ["hand-four-point", "machine-four-point", "plain"],
	layouts: ["one-piece", "three-quarter", "centre"],
} as const satisfies {
	shaftWoods: readonly WoodId[];
	buttWoods: readonly WoodId[];
	splices: readonly SpliceId[];
	layouts: readonly LayoutId[];
};

/** Metal in the butt: none, or a slug of this length behind a plug; net grams before anything is known. */
const SLUG = {
	lengthsMm: [0, 60, 160],
	fromButtMm: 15,
	priorG: { value: 90, sd: 70 },
	metal: "brass",
	/** About the long axis for its mass: r²/2 of a 12–15 mm bore. */
	polarPerMassM2: 2.5e-5,
} as const;

/** Within one wood, stiffness goes with density; this spread of modulus is left: √(0.22² − 0.10²). */
const MODULUS_REST_COV = 0.196;

/** Spreads of the readings together with the geometry between them. This project's judgement. */
const READING = { massShare: 0.01, balanceMm: 4 } as const;

export interface Build {
	readonly design: CueDesign;
	readonly mass: CueMass;
	/** 0 where the build has no metal in the butt. */
	readonly slugLengthMm: number;
}

/** Every usual build that fits the taper; the refusals of all where none does. */
export function buildsFor(
	present: PresentCue,
	taper: readonly TaperPoint[],
): Outcome<readonly Build[]> {
	const first = taper[0];
	const last = taper[taper.length - 1];
	if (!first || !last) throw new RangeError("a taper needs points");
	const builds: Build[] = [];
	const refusals: Refusal[] = [];
	for (const wooden of woodenBuilds(present)) {
		const design = designFrom({
			...wooden,
			lengthMm: present.lengthMm,
			tipDiameterMm: first.diameterMm,
			buttDiameterMm: last.diameterMm,
			taperShape: "even",
			freeTaper: taper.slice(1, -1),
			ferruleMetal: "brass",
		});
		if (design.ok) {
			const mass = weighCue(design.value);
			for (const slugLengthMm of SLUG.lengthsMm)
				builds.push({ design: design.value, mass, slugLengthMm });
		} else refusals.push(...design.refusals);
	}
	return builds.length > 0 ? accept(builds) : refuse(...refusals);
}

interface Wooden {
	readonly shaftWood: WoodId;
	readonly buttWood: WoodId;
	readonly splice: SpliceId;
	readonly layout: LayoutId;
}

function woodenBuilds(present: PresentCue): readonly Wooden[] {
	const shafts = present.shaftWood ? [present.shaftWood] : USUAL.shaftWoods;
	const butts = present.buttWood ? [present.buttWood] : USUAL.buttWoods;
	const splices = present.splice ? [present.splice] : USUAL.splices;
	const layouts = present.layout ? [present.layout] : USUAL.layouts;
	return shafts.flatMap((shaftWood) =>
		butts.flatMap((buttWood) =>
			splices.flatMap((splice) =>
				layouts.map((layout) => ({ shaftWood, buttWood, splice, layout })),
			),
		),
	);
}

/** Shares of the length from the tip, clear of the usual joints. */
const STIFFNESS_AT = [0.2, 0.4, 0.6, 0.8] as const;

export interface StiffnessAt {
	readonly stationMm: number;
	readonly stiffnessNm2: Estimate;
}

interface Spread {
	readonly value: number;
	readonly sd: number;
}

export interface ExplainedBuild {
	readonly design: CueDesign;
	readonly surprise2: number;
	readonly logEvidence: number;
	readonly expectedMassG: number;
	readonly expectedBalanceFromButtMm: number;
	readonly addedMassG: Spread;
	readonly inertiaAboutBalanceKgM2: Spread;
	readonly inertiaAboutGripKgM2: Spread;
	readonly inertiaAboutAxisKgM2: Spread;
	readonly stiffness: readonly StiffnessAt[];
}

/** What one build makes of the readings: its unknowns are each material's density and the slug's mass. */
export function explain(build: Build, present: PresentCue): ExplainedBuild {
	const { design, mass, slugLengthMm } = build;
	const { materials } = mass;
	const hasSlug = slugLengthMm > 0;
	const slugStationMm = design.lengthMm - SLUG.fromButtMm - slugLengthMm / 2;
	const weights = (
		of: (one: MaterialIntegrals) => number,
		ofSlug: number,
	): readonly number[] => [...materials.map(of), ...(hasSlug ? [ofSlug] : [])];
	const stationMm = design.lengthMm - present.balanceFromButtMm;
	const massWeights = weights((one) => one.volumeMm3 * 1e-6, 1);
	const weighed = condition(
		independent([
			...materials.map((one) => one.densityKgM3),
			...(hasSlug ? [SLUG.priorG] : []),
		]),
		{
			weights: massWeights,
			value: present.massG,
			sd: READING.massShare * present.massG,
		},
	);
	const balanced = condition(weighed.state, {
		weights: weights(
			(one) => (one.firstMm4 - stationMm * one.volumeMm3) * 1e-6,
			slugStationMm - stationMm,
		),
		value: 0,
		sd: READING.balanceMm * present.massG,
	});
	const { state } = balanced;
	const across = (aboutMm: number) =>
		sumOf(
			state,
			weights(
				(one) =>
					(one.secondMm5 -
						2 * aboutMm * one.firstMm4 +
						aboutMm * aboutMm * one.volumeMm3 +
						one.polarMm5 / 2) *
					1e-15,
				((slugStationMm - aboutMm) ** 2 + slugLengthMm ** 2 / 12) * 1e-9,
			),
		);
	const slugG = hasSlug
		? sumOf(state, [...materials.map(() => 0), 1])
		: { value: 0, sd: 0 };
	const positive = hasSlug
		? Math.log(
				normalBelow(slugG.value / slugG.sd) /
					normalBelow(SLUG.priorG.value / SLUG.priorG.sd),
			)
		: 0;
	return {
		design: asFound(build, materials, state.mean, slugG.value),
		surprise2: weighed.surprise ** 2 + balanced.surprise ** 2,
		logEvidence: weighed.logEvidence + balanced.logEvidence + positive,
		expectedMassG: mass.massG.value + (hasSlug ? SLUG.priorG.value : 0),
		expectedBalanceFromButtMm: mass.balanceFromButtMm.value,
		addedMassG: slugG,
		inertiaAboutBalanceKgM2: across(stationMm),
		inertiaAboutGripKgM2: across(
			design.lengthMm - (present.gripFromButtMm ?? 0),
		),
		inertiaAboutAxisKgM2: sumOf(
			state,
			weights((one) => one.polarMm5 * 1e-15, SLUG.polarPerMassM2 * 1e-3),
		),
		stiffness: STIFFNESS_AT.map((share) =>
			stiffnessAt(
				design,
				share * design.lengthMm,
				new Map(
					materials.map((one, i) => [
						one.material as string,
						(state.mean[i] ?? 0) / one.densityKgM3.value,
					]),
				),
			),
		),
	};
}

/** The build with the densities and the slug it was found to have, so that it weighs as read. */
function asFound(
	build: Build,
	materials: readonly MaterialIntegrals[],
	mean: readonly number[],
	slugG: number,
): CueDesign {
	const { design, slugLengthMm } = build;
	const densities = Object.fromEntries(
		materials.flatMap((one, i) =>
			isWood(one.material)
				? [
						[
							one.material,
							{ kgM3: mean[i] ?? 0, sd: one.densityKgM3.sd },
						] as const,
					]
				: [],
		),
	);
	if (slugLengthMm === 0 || slugG <= 0) return { ...design, densities };
	const netKgM3 =
		METALS[SLUG.metal].densityKgM3.value -
		densityKgM3({ ...design, densities }, design.buttWood).value;
	const areaMm2 = slugG / (slugLengthMm * netKgM3 * 1e-6);
	return {
		...design,
		densities,
		addedWeight: [
			{
				fromStationMm: design.lengthMm - SLUG.fromButtMm - slugLengthMm,
				toStationMm: design.lengthMm - SLUG.fromButtMm,
				diameterMm: 2 * Math.sqrt(areaMm2 / Math.PI),
				metal: SLUG.metal,
			},
		],
	};
}

function stiffnessAt(
	design: CueDesign,
	stationMm: number,
	densityRatio: ReadonlyMap<string, number>,
): StiffnessAt {
	const byMaterial = new Map<string, number>();
	for (const { material, moments } of regionsAt(design, stationMm)) {
		const ratio = isWood(material) ? (densityRatio.get(material) ?? 1) : 1;
		const secondM4 = (moments.polar / 2) * 1e-12;
		const stiffness =
			bendingModulusGPa(material).value * 1e9 * ratio * secondM4;
		byMaterial.set(material, (byMaterial.get(material) ?? 0) + stiffness);
	}
	const parts = [...byMaterial.values()];
	return {
		stationMm,
		stiffnessNm2: {
			value: parts.reduce((sum, one) => sum + one, 0),
			sd: Math.hypot(...parts.map((one) => MODULUS_REST_COV * one)),
			standing: "derived",
			sources: ["wood-handbook-2021", "wood-compilation", "measured-here"],
		},
	};
}

/** Standard normal distribution function, Abramowitz & Stegun 26.2.17 (from memory), error below 1e-7. */
function normalBelow(x: number): number {
	const t = 1 / (1 + 0.2316419 * Math.abs(x));
	const tail =
		(Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) *
		t *
		(0.31938153 +
			t *
				(-0.356563782 +
					t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
	return x >= 0 ? 1 - tail : tail;
}
