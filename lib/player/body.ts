import {
	accept,
	type Caution,
	type Outcome,
	refuse,
} from "@/lib/numerics/outcome";
import { ADULT_STATURE, type Sex } from "@/lib/reference/body-adult";
import { CHILD_AGES } from "@/lib/reference/body-child";
import type { CitationId } from "@/lib/reference/citations";
import type { Estimate, Standing } from "@/lib/reference/estimate";
import { type Gaussian, given, mixed } from "./gaussian";
import {
	type MeasuredLength,
	type PlayerMeasures,
	READING_SD_MM,
	refusalsOf,
} from "./measures";
import {
	adults,
	BODY_LENGTHS,
	type BodyLength,
	children,
	indexOfLength,
} from "./populations";

export interface Body extends Readonly<Record<BodyLength, Estimate>> {
	/** Children's regressions weigh at least as much as adults'. */
	readonly isChildModel: boolean;
	/** Covariance of the lengths in the order of BODY_LENGTHS, mm². */
	readonly covarianceMm2: readonly (readonly number[])[];
	readonly cautions: readonly Caution[];
}

/** Children's equations fade into adults' over these; between, both are mixed. Assumed. */
const FADE = { ageYears: [16, 18], statureMm: [1400, 1500] } as const;
/** A reading this many standard deviations from what the others say is pointed out. Assumed. */
const SURPRISE_SD = 3.5;

/**
 * Body lengths from whatever was measured. Readings stand as they are with a small reading error;
 * the rest follows by regression on all readings together, both sexes mixed where sex is not given.
 * Errors: each Estimate's sd is one person's spread round the prediction; the mixture's is inside.
 * Sources: ANSUR II (adults), Snyder 1977 (children), CDC 2000 (stature of an age), Winter (chin).
 */
export function bodyFrom(measures: PlayerMeasures): Outcome<Body> {
	const refusals = refusalsOf(measures);
	if (refusals.length > 0) return refuse(...refusals);

	const childWeight = childWeightOf(measures);
	const readings = readingsOf(measures);
	const populations = populationsFor(measures, childWeight);
	const joint = givenReadings(populations, readings);

	const isChildModel = childWeight >= 0.5;
	const measured = new Map<BodyLength, number>(
		readings.map((r) => [r.name, r.value]),
	);
	const estimate = (name: BodyLength): Estimate => {
		const i = indexOfLength(name);
		return {
			// To the last digit as read: sums above round.
			value: measured.get(name) ?? (joint.mean[i] as number),
			sd: Math.sqrt(joint.covariance[i]?.[i] as number),
			...originOf(name, measured, childWeight, measures.ageYears),
		};
	};
	return accept({
		...(Object.fromEntries(
			BODY_LENGTHS.map((name) => [name, estimate(name)]),
		) as Record<BodyLength, Estimate>),
		isChildModel,
		covarianceMm2: joint.covariance,
		cautions: [
			...rangeCautions(measures, isChildModel),
			...disagreements(populations, readings),
		],
	});
}

interface Reading {
	readonly name: MeasuredLength;
	readonly index: number;
	readonly value: number;
	readonly sd: number;
}

const readingsOf = (measures: PlayerMeasures): Reading[] =>
	(Object.keys(READING_SD_MM) as MeasuredLength[]).flatMap((name) => {
		const value = measures[name];
		return value === undefined
			? []
			: [{ name, index: indexOfLength(name), value, sd: READING_SD_MM[name] }];
	});

interface Population {
	readonly weight: number;
	readonly of: Gaussian;
}

/** All populations conditioned on the readings, weighted by how well each explains them. */
function givenReadings(
	populations: readonly Population[],
	readings: readonly Reading[],
): Gaussian {
	const parts = populations.map(({ weight, of }) => {
		const { posterior, logDensity } = given(of, readings);
		return { logWeight: Math.log(weight) + logDensity, of: posterior };
	});
	const most = Math.max(...parts.map((p) => p.logWeight));
	return mixed(
		parts.map((p) => ({ weight: Math.exp(p.logWeight - most), of: p.of })),
	);
}

/** 1: children's equations alone; 0: adults' alone. */
function childWeightOf({
	ageYears,
	statureMm,
	armSpanMm,
}: PlayerMeasures): number {
	const fade = (value: number, [from, to]: readonly [number, number]) =>
		value <= from ? 1 : value >= to ? 0 : (to - value) / (to - from);
	if (ageYears !== undefined) return fade(ageYears, FADE.ageYears);
	const size = statureMm ?? armSpanMm;
	return size === undefined ? 0 : fade(size, FADE.statureMm);
}

function populationsFor(
	{ sex, ageYears }: PlayerMeasures,
	childWeight: number,
): Population[] {
	const sexes: readonly Sex[] = sex ? [sex] : ["female", "male"];
	return sexes.flatMap((s) => [
		...(childWeight < 1
			? [{ weight: (1 - childWeight) / sexes.length, of: adults(s) }]
			: []),
		...(childWeight > 0
			? [
					{
						weight: childWeight / sexes.length,
						of: children(s, ageYears ?? null),
					},
				]
			: []),
	]);
}

function originOf(
	name: BodyLength,
	measured: ReadonlyMap<BodyLength, number>,
	childWeight: number,
	ageYears: number | undefined,
): { standing: Standing; sources: readonly CitationId[] } {
	if (measured.has(name))
		return { standing: "measured", sources: ["measured-here"] };
	const surveys: CitationId[] = [
		...(childWeight < 1 ? (["ansur-2"] as const) : []),
		...(childWeight > 0 ? (["snyder-1977"] as const) : []),
	];
	if (name === "statureMm" && measured.size === 0)
		return {
			standing: "published",
			sources:
				childWeight > 0 && ageYears !== undefined ? ["cdc-2000"] : surveys,
		};
	const childGap =
		name === "armSpanMm" ||
		name === "shoulderHeightMm" ||
		name === "hipHeightMm" ||
		name === "eyeHeightMm" ||
		name === "chinHeightMm";
	if (childWeight >= 0.5 && childGap)
		return { standing: "assumed", sources: ["project-judgement"] };
	if (name === "chinHeightMm")
		return { standing: "derived", sources: ["winter-2009"] };
	return { standing: "derived", sources: surveys };
}

function rangeCautions(measures: PlayerMeasures, isChild: boolean): Caution[] {
	const cautions: Caution[] = [];
	const { statureMm, ageYears } = measures;
	if (statureMm === undefined) cautions.push({ code: "stature-estimated" });
	if (statureMm !== undefined && !isChild) {
		const low = ADULT_STATURE.female.minMm;
		const high = ADULT_STATURE.male.maxMm;
		if (statureMm < low || statureMm > high)
			cautions.push({
				code: "outside-source-range",
				facts: { field: "statureMm", value: statureMm, min: low, max: high },
			});
	}
	if (isChild && ageYears !== undefined && ageYears < CHILD_AGES.minYears)
		cautions.push({
			code: "outside-source-range",
			facts: {
				field: "ageYears",
				value: ageYears,
				min: CHILD_AGES.minYears,
				max: CHILD_AGES.maxYears,
			},
		});
	return cautions;
}

/** Readings that the other readings make improbable: a slip of the tape, or a rare body. */
function disagreements(
	populations: readonly Population[],
	readings: readonly Reading[],
): Caution[] {
	if (readings.length < 2) return [];
	return readings.flatMap(({ name, index, value, sd }) => {
		const others = givenReadings(
			populations,
			readings.filter((r) => r.name !== name),
		);
		const expectedMm = others.mean[index] as number;
		const sdMm = Math.hypot(
			Math.sqrt(others.covariance[index]?.[index] as number),
			sd,
		);
		return Math.abs(value - expectedMm) > SURPRISE_SD * sdMm
			? [
					{
						code: "reading-unexpected",
						facts: { field: name, value, expectedMm, sdMm },
					},
				]
			: [];
	});
}
