import {
	accept,
	type Caution,
	type Outcome,
	outside,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import type { Sex } from "@/lib/reference/body-adult";
import { type Estimate, Z90 } from "@/lib/reference/estimate";
import {
	FASTEST_GROWTH,
	FORECAST_ERRORS,
	type ForecastError,
} from "@/lib/reference/growth";
import { READING_SD_MM } from "./measures";
import { lmsAt, normalCdf, statureAtZ, zScore } from "./stature-for-age";

/** Ages the growth table and the forecast's errors can answer for, years. */
export const GROWTH_AGES = { minYears: 4, maxYears: 20 } as const;
const ADULT_YEARS = 18;

export interface GrowthChild {
	readonly ageYears: number;
	readonly statureMm: number;
	/** Used only here; both sexes' tables are mixed where it is not given. */
	readonly sex?: Sex;
}

export interface PercentileOfStature {
	readonly sex: Sex;
	readonly z: number;
	readonly percentile: number;
}

const refusalsOf = (child: GrowthChild): Refusal[] =>
	[
		outside(
			"ageYears",
			child.ageYears,
			GROWTH_AGES.minYears,
			GROWTH_AGES.maxYears,
		),
		outside("statureMm", child.statureMm, 700, 2300),
	].filter((r): r is Refusal => r !== null);

const sexesOf = (child: GrowthChild): readonly Sex[] =>
	child.sex ? [child.sex] : ["female", "male"];

/** Stature percentile of a child, by the LMS formula; one answer a sex where sex is not given. */
export function staturePercentiles(
	child: GrowthChild,
): Outcome<readonly PercentileOfStature[]> {
	const refusals = refusalsOf(child);
	if (refusals.length > 0) return refuse(...refusals);
	return accept(
		sexesOf(child).map((sex) => {
			const z = zScore(lmsAt(sex, 12 * child.ageYears), child.statureMm);
			return { sex, z, percentile: 100 * normalCdf(z) };
		}),
	);
}

export interface StatureForecast {
	readonly months: number;
	readonly statureMm: Estimate;
	readonly cautions: readonly Caution[];
}

/**
 * Stature after some months if the percentile holds. Error: the published study's, growing with the
 * horizon, beside the reading's own; between sexes inside where sex is not given. A forecast, never a
 * promise; past 20 years stature stays as it is at 20. At 12 to 14 nine in ten fall within about 6 cm two years on.
 */
export function forecastStature(
	child: GrowthChild,
	months: number,
): Outcome<StatureForecast> {
	const refusals = refusalsOf(child);
	const horizon = outside("months", months, 0, 192);
	if (horizon) refusals.push(horizon);
	if (refusals.length > 0) return refuse(...refusals);

	const endMonths = Math.min(12 * child.ageYears + months, 240);
	const parts = sexesOf(child).map((sex) => {
		const z = zScore(lmsAt(sex, 12 * child.ageYears), child.statureMm);
		return {
			value: statureAtZ(lmsAt(sex, endMonths), z),
			sd: forecastSdMm(sex, child.ageYears, months / 12),
		};
	});
	const value = parts.reduce((sum, p) => sum + p.value / parts.length, 0);
	const variance = parts.reduce(
		(sum, p) => sum + (p.sd ** 2 + (p.value - value) ** 2) / parts.length,
		READING_SD_MM.statureMm ** 2,
	);
	const cautions: Caution[] = [{ code: "growth-range-not-promise" }];
	if (child.ageYears < 8 || child.ageYears > 16)
		cautions.push({
			code: "outside-source-range",
			facts: { field: "ageYears", value: child.ageYears, min: 8, max: 16 },
		});
	return accept({
		months,
		statureMm: {
			value,
			sd: Math.sqrt(variance),
			standing: "derived",
			sources: ["cdc-2000", "berkeley-growth"],
		},
		cautions,
	});
}

/** The wider of the root mean square and what the 90th percentile of the error implies, mm. */
const sdOf = (e: ForecastError) => Math.max(e.rmseMm, e.p90AbsMm / Z90);

/**
 * Spread of a forecast, mm: linear in age between the study's ages and in horizon between its horizons,
 * 0 at none, flat past adulthood. Ages 8 to 16 were studied; younger and older take the nearest.
 */
export function forecastSdMm(
	sex: Sex,
	ageYears: number,
	horizonYears: number,
): number {
	const age = Math.min(16, Math.max(8, ageYears));
	const low = Math.floor(age);
	const high = Math.min(16, low + 1);
	const at = (fromAge: number) => {
		const rows = FORECAST_ERRORS[sex].filter((e) => e.fromAgeYears === fromAge);
		const points: [number, number][] = [[0, 0]];
		for (const e of rows) {
			const years =
				e.horizonYears === "adult" ? ADULT_YEARS - fromAge : e.horizonYears;
			if (years > (points.at(-1)?.[0] ?? 0)) points.push([years, sdOf(e)]);
		}
		const end = points.findIndex(([years]) => years >= horizonYears);
		if (end === -1) return (points.at(-1) as [number, number])[1];
		if (end === 0) return 0;
		const [x0, y0] = points[end - 1] as [number, number];
		const [x1, y1] = points[end] as [number, number];
		return y0 + ((y1 - y0) * (horizonYears - x0)) / (x1 - x0);
	};
	const t = age - low;
	return (1 - t) * at(low) + (high === low ? 0 : t) * at(high);
}

/** Re-measure: every 6 months between 10 and 15, when growth is fastest and least sure; else yearly to 18. */
export const monthsToRemeasure = (ageYears: number): number | null =>
	ageYears >= ADULT_YEARS ? null : ageYears >= 10 && ageYears < 15 ? 6 : 12;

/**
 * Whole months until `growthMm` more stature: `likely` at the held percentile, `soonest` at the upper
 * end of the forecast's 90 % band but no sooner than at the fastest whole-year pace. Null: not before 20.
 */
export function monthsToGrow(
	child: GrowthChild,
	growthMm: number,
): Outcome<{ soonest: number | null; likely: number | null }> {
	const refusals = refusalsOf(child);
	const more = outside("growthMm", growthMm, 1, 1000);
	if (more) refusals.push(more);
	if (refusals.length > 0) return refuse(...refusals);
	const fastest = Math.max(
		...sexesOf(child).map((sex) => FASTEST_GROWTH[sex].mmPerYear),
	);
	const target = child.statureMm + growthMm;
	const readingVariance = READING_SD_MM.statureMm ** 2;
	const mostMonths = Math.floor(240 - 12 * child.ageYears);
	let soonest: number | null = null;
	for (let months = 1; months <= mostMonths; months++) {
		const forecast = forecastStature(child, months);
		if (!forecast.ok) return forecast;
		const { value, sd } = forecast.value.statureMm;
		const growthSd = Math.sqrt(Math.max(0, sd ** 2 - readingVariance));
		if (
			soonest === null &&
			value + Z90 * growthSd >= target &&
			(fastest * months) / 12 >= growthMm
		)
			soonest = months;
		if (value >= target) return accept({ soonest, likely: months });
	}
	return accept({ soonest, likely: null });
}

/** Calendar date some months on, ISO "YYYY-MM-DD" in and out; the day is held to the month's last. */
export function monthsAfter(isoDate: string, months: number): string {
	const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(isoDate);
	if (!match) throw new RangeError(`isoDate "${isoDate}" is not YYYY-MM-DD`);
	const [year, month, day] = match.slice(1).map(Number) as [
		number,
		number,
		number,
	];
	const index = 12 * year + (month - 1) + months;
	const toYear = Math.floor(index / 12);
	const toMonth = index - 12 * toYear + 1;
	const lastDay = new Date(Date.UTC(toYear, toMonth, 0)).getUTCDate();
	const two = (n: number) => String(n).padStart(2, "0");
	return `${toYear}-${two(toMonth)}-${two(Math.min(day, lastDay))}`;
}

/** Age in years between two ISO dates, by days over 365.25. */
export function ageYearsOn(p: { bornOn: string; on: string }): number {
	const days =
		(Date.parse(`${p.on}T00:00:00Z`) - Date.parse(`${p.bornOn}T00:00:00Z`)) /
		86_400_000;
	if (!Number.isFinite(days))
		throw new RangeError(
			`dates "${p.bornOn}" and "${p.on}" are not YYYY-MM-DD`,
		);
	return days / 365.25;
}
