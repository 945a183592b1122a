import type { WoodId } from "@/lib/reference/woods";
import { gramsToOunces, mmToInches } from "@/lib/units/quantity";
import type { Reader } from "@/lib/words/reader";
import {
	type BuiltResult,
	bandHalf,
	differenceOf,
	isWithinBand,
	predictionRecord,
} from "@/lib/workshop/prediction-record";
import type { EvidenceByWood } from "@/lib/workshop/stock";
import type { Predicted } from "@/lib/workshop/weighed-cue";
import { tableDensity, woodBand } from "@/lib/workshop/wood-evidence";
import type { ChartModel, ChartPanel } from "./chart-model";
import { densityBand, densityText } from "./check-view";
import { formatDay } from "./dates";
import {
	formatLength,
	formatLengthDifference,
	formatMass,
	formatNumber,
} from "./figures";
import { woodName } from "./labels";

export interface WoodRow {
	readonly id: WoodId;
	readonly wood: string;
	readonly tables: string;
	readonly tablesBand: string;
	/** Null where no result counts: the band is that of the tables. */
	readonly own: string | null;
	readonly ownBand: string | null;
	readonly counting: number;
	readonly withdrawn: number;
}

/** Each wood's band of the next billet by the tables alone, and with the workshop's own results. */
export function woodRows(p: {
	woods: readonly WoodId[];
	evidence: EvidenceByWood;
	withdrawn: Readonly<Partial<Record<WoodId, number>>>;
	reader: Reader;
}): WoodRow[] {
	const { reader } = p;
	return p.woods.map((id) => {
		const readings = p.evidence[id] ?? [];
		const tables = tableDensity(id);
		const { next } = woodBand(tables, readings);
		const isLearnt = readings.length > 0;
		return {
			id,
			wood: woodName(id, reader),
			tables: densityText(tables, reader),
			tablesBand: densityBand(tables, reader),
			own: isLearnt ? densityText(next, reader) : null,
			ownBand: isLearnt ? densityBand(next, reader) : null,
			counting: readings.length,
			withdrawn: p.withdrawn[id] ?? 0,
		};
	});
}

/**
 * How far the results of all builds lay from what was predicted, with the band that nine in ten should
 * keep to; oldest first. Null before there is a build.
 */
export function predictionChart(
	results: readonly BuiltResult[],
	reader: Reader,
): ChartModel | null {
	if (results.length === 0) return null;
	const { say } = reader;
	const isMetric = reader.system === "metric";
	const builds = [...results].sort((a, b) => a.at.getTime() - b.at.getTime());
	const mass = builds.map(({ prediction }) => prediction.mass);
	const balance = builds.map(({ prediction }) => prediction.balance);
	const panel = (
		label: string,
		unit: string,
		figures: readonly Predicted[],
		shown: (value: number) => number,
	): ChartPanel => ({
		label,
		unit,
		lines: [
			{
				name: say("woods.results.predicted"),
				points: figures.flatMap((one, i) =>
					[i + 0.5, i + 1, i + 1.5].map((x) => ({
						x,
						y: 0,
						low: -shown(bandHalf(one)),
						high: shown(bandHalf(one)),
					})),
				),
			},
			{
				name: say("woods.results.result"),
				mark: "points",
				points: figures.map((one, i) => ({
					x: i + 1,
					y: shown(differenceOf(one)),
				})),
			},
		],
		zones: [],
	});
	return {
		id: "predictions",
		title: say("woods.results.title"),
		summary: summaryText(mass, balance, reader),
		x: {
			label: say("woods.results.build"),
			unit: "",
			domain: [0.5, builds.length + 0.5],
			isWhole: true,
		},
		panels: [
			panel(
				say("woods.results.massDifference"),
				isMetric ? "g" : "oz",
				mass,
				isMetric ? (g) => g : gramsToOunces,
			),
			panel(
				say("woods.results.balanceDifference"),
				isMetric ? "mm" : "in",
				balance,
				isMetric ? (mm) => mm : mmToInches,
			),
		],
		table: {
			columns: [
				say("woods.results.job"),
				say("woods.results.when"),
				say("woods.results.massPredicted"),
				say("woods.results.massCame"),
				say("woods.results.balancePredicted"),
				say("woods.results.balanceCame"),
				say("woods.results.within"),
			],
			rows: builds.map(({ jobNumber, at, prediction }) => [
				formatNumber(jobNumber, reader),
				formatDay(at, reader),
				massText(prediction.mass, reader),
				formatMass(prediction.mass.measured, reader),
				balanceText(prediction.balance, reader),
				formatLength(prediction.balance.measured, reader, "station"),
				withinText(prediction.mass, prediction.balance, reader),
			]),
		},
	};
}

const massText = (one: Predicted, reader: Reader): string =>
	reader.say("woods.results.predictedBand", {
		expected: formatMass(one.expected, reader),
		spread: formatMass(bandHalf(one), reader, "added"),
	});

const balanceText = (one: Predicted, reader: Reader): string =>
	reader.say("woods.results.predictedBand", {
		expected: formatLength(one.expected, reader, "station"),
		spread: formatLength(bandHalf(one), reader, "station"),
	});

function withinText(
	mass: Predicted,
	balance: Predicted,
	{ say }: Reader,
): string {
	const [isMass, isBalance] = [isWithinBand(mass), isWithinBand(balance)];
	if (isMass && isBalance) return say("woods.results.both");
	if (isMass) return say("woods.results.massOnly");
	return say(isBalance ? "woods.results.balanceOnly" : "woods.results.neither");
}

function summaryText(
	mass: readonly Predicted[],
	balance: readonly Predicted[],
	reader: Reader,
): string {
	const ofMass = predictionRecord(mass);
	const ofBalance = predictionRecord(balance);
	const g = ofMass.meanDifference;
	return reader.say("woods.results.summary", {
		builds: ofMass.builds,
		massWithin: formatNumber(ofMass.withinBand, reader),
		balanceWithin: formatNumber(ofBalance.withinBand, reader),
		mass: formatMass(Math.abs(g), reader, "added"),
		direction: g >= 0 ? "heavier" : "lighter",
		balance: formatLengthDifference(
			ofBalance.meanDifference,
			reader,
			"station",
		),
	});
}
