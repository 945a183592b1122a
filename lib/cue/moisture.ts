import {
	accept,
	type Caution,
	type Outcome,
	outside,
	refuse,
} from "@/lib/numerics/outcome";
import type { CitationId } from "@/lib/reference/citations";
import type { Estimate } from "@/lib/reference/estimate";
import { WOODS } from "@/lib/reference/woods";
import type { CueDesign } from "./design";
import { type CueMass, type MaterialIntegrals, weighCue } from "./mass";
import { isWood } from "./materials";
import { diameterAtMm } from "./taper";

/** Densities in the tables and in a design stand at this moisture content, %. */
export const REFERENCE_MOISTURE_PCT = 12;

/**
 * Spread of an equilibrium moisture content, points. The fit errs by up to 0.9, and wetting and drying
 * differ by 1–4 at half humidity, so no tenth of a point is meant.
 */
export const MOISTURE_SD_PCT = 0.5;

const SOURCE: CitationId = "wood-handbook-2021";

export interface Air {
	readonly temperatureC: number;
	readonly relativeHumidityPct: number;
}

/**
 * Moisture content that wood comes to in steady air, % of its dry mass. Wood Handbook eq. 4-5 in °C:
 * 1800/W·[Kh/(1−Kh) + (K1Kh + 2K1K2K²h²)/(1 + K1Kh + K1K2K²h²)], h the relative humidity as a fraction.
 * Refuses outside −5 to 60 °C and 5 to 95 %.
 */
export function equilibriumMoisturePct(air: Air): Outcome<Estimate> {
	const refusals = [
		outside("temperatureC", air.temperatureC, -5, 60),
		outside("relativeHumidityPct", air.relativeHumidityPct, 5, 95),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	const t = air.temperatureC;
	const w = 349 + 1.29 * t + 0.0135 * t * t;
	const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
	const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
	const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
	const kh = (k * air.relativeHumidityPct) / 100;
	const one = k1 * kh;
	const two = k1 * k2 * kh * kh;
	return accept({
		value: (1800 / w) * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two)),
		sd: MOISTURE_SD_PCT,
		standing: "published",
		sources: [SOURCE],
	});
}

/**
 * Density at a moisture content from basic specific gravity, kg/m³: Wood Handbook ch. 4,
 * G_x = G_b/[1 − 0.265·G_b·(1 − x/30)], ρ = 1000·G_x·(1 + x/100); x up to 30 %.
 */
export function densityFromBasicGravityKgM3(p: {
	basicGravity: number;
	moisturePct: number;
}): number {
	const x = p.moisturePct;
	if (!(x >= 0 && x <= 30))
		throw new RangeError(`moisture must be 0–30 %, got ${x} %`);
	const gravity = p.basicGravity / (1 - 0.265 * p.basicGravity * (1 - x / 30));
	return 1000 * gravity * (1 + x / 100);
}

export interface Season {
	readonly name: string;
	readonly air: Air;
}

export interface SeasonFigures {
	readonly name: string;
	readonly moisturePct: Estimate;
	readonly massG: Estimate;
	readonly balanceFromButtMm: Estimate;
	/** Butt end across the rings' radius and along the rings; a round goes oval by their difference. */
	readonly buttRadialMm: number;
	readonly buttTangentialMm: number;
	readonly tipRadialMm: number;
	readonly tipTangentialMm: number;
}

export interface YearSwing {
	readonly seasons: readonly SeasonFigures[];
	readonly massSwingG: number;
	readonly buttSwingMm: number;
	readonly cautions: readonly Caution[];
}

/** The change coefficients hold between these, %. */
const CHANGE_RANGE_PCT = [6, 14] as const;

/**
 * Weight, balance and diameter of a cue settled in each of some airs. The dry mass stays, so each wood
 * weighs (1 + M/100)/1.12 of its mass at 12 %; a diameter changes by D·C·(M − 12). Wood lags behind the
 * air by weeks, and a finish by more: the swing is the most a year can do, not what a day does.
 */
export function yearSwing(
	design: CueDesign,
	seasons: readonly Season[],
): Outcome<YearSwing> {
	if (seasons.length === 0)
		return refuse({
			code: "too-few",
			field: "seasons",
			value: 0,
			min: 1,
		});
	const mass = weighCue(design);
	const figures: SeasonFigures[] = [];
	const cautions: Caution[] = [];
	for (const [i, season] of seasons.entries()) {
		const moisture = equilibriumMoisturePct(season.air);
		if (!moisture.ok)
			return refuse(
				...moisture.refusals.map((refusal) => ({
					...refusal,
					field: `seasons.${i}.air.${refusal.field}`,
				})),
			);
		const moisturePct = moisture.value;
		const [low, high] = CHANGE_RANGE_PCT;
		if (moisturePct.value < low || moisturePct.value > high)
			cautions.push({
				code: "moisture-outside-change-range",
				facts: {
					season: season.name,
					moisturePct: moisturePct.value,
					minPct: low,
					maxPct: high,
				},
			});
		figures.push(seasonFigures(design, mass, season.name, moisturePct));
	}
	const spread = (of: (one: SeasonFigures) => number) =>
		Math.max(...figures.map(of)) - Math.min(...figures.map(of));
	return accept({
		seasons: figures,
		massSwingG: spread((one) => one.massG.value),
		buttSwingMm: Math.max(
			spread((one) => one.buttRadialMm),
			spread((one) => one.buttTangentialMm),
		),
		cautions,
	});
}

function seasonFigures(
	design: CueDesign,
	mass: CueMass,
	name: string,
	moisturePct: Estimate,
): SeasonFigures {
	const settled = settledAt(design, mass, moisturePct);
	const change = moisturePct.value - REFERENCE_MOISTURE_PCT;
	const butt = WOODS[design.buttWood];
	const shaft = WOODS[design.shaftWood];
	const buttMm = diameterAtMm(design, design.lengthMm);
	const tipMm = diameterAtMm(design, 0);
	return {
		name,
		moisturePct,
		massG: settled.massG,
		balanceFromButtMm: settled.balanceFromButtMm,
		buttRadialMm: buttMm * (1 + butt.changeRadialPerPct * change),
		buttTangentialMm: buttMm * (1 + butt.changeTangentialPerPct * change),
		tipRadialMm: tipMm * (1 + shaft.changeRadialPerPct * change),
		tipTangentialMm: tipMm * (1 + shaft.changeTangentialPerPct * change),
	};
}

/** Mass and balance with all wood at a moisture content, its spread carried along. */
export function settledAt(
	design: CueDesign,
	mass: CueMass,
	moisturePct: Estimate,
): { massG: Estimate; balanceFromButtMm: Estimate } {
	const wet =
		(1 + moisturePct.value / 100) / (1 + REFERENCE_MOISTURE_PCT / 100);
	const factor = (one: MaterialIntegrals) => (isWood(one.material) ? wet : 1);
	const sum = (of: (one: MaterialIntegrals) => number) =>
		mass.materials.reduce(
			(all, one) => all + one.densityKgM3.value * factor(one) * of(one),
			0,
		);
	const massSum = sum((one) => one.volumeMm3);
	const stationMm = sum((one) => one.firstMm4) / massSum;
	const lever = (one: MaterialIntegrals) =>
		one.firstMm4 - stationMm * one.volumeMm3;
	const wood = (of: (one: MaterialIntegrals) => number) =>
		mass.materials
			.filter((one) => isWood(one.material))
			.reduce((all, one) => all + one.densityKgM3.value * of(one), 0);
	const perPoint = 1 / (100 + REFERENCE_MOISTURE_PCT);
	const spread = (
		of: (one: MaterialIntegrals) => number,
		scale: number,
	): number =>
		Math.hypot(
			perPoint * wood(of) * moisturePct.sd * scale,
			...mass.materials.map(
				(one) => one.densityKgM3.sd * factor(one) * of(one) * scale,
			),
		);
	const rest = {
		standing: mass.massG.standing,
		sources: [...new Set([...mass.massG.sources, ...moisturePct.sources])],
	};
	return {
		massG: {
			value: massSum * 1e-6,
			sd: spread((one) => one.volumeMm3, 1e-6),
			...rest,
		},
		balanceFromButtMm: {
			value: design.lengthMm - stationMm,
			sd: spread(lever, 1 / massSum),
			...rest,
		},
	};
}
