import type { CueAnswer } from "@/lib/advice/answer-cue";
import type { Season, SeasonFigures, YearSwing } from "@/lib/cue/moisture";
import { band90, type Estimate } from "@/lib/reference/estimate";
import type { Reader } from "@/lib/words/reader";
import {
	formatLength,
	formatLengthBand,
	formatMass,
	formatMassBand,
	formatNumber,
	formatNumberBand,
	formatPercent,
	type LengthKind,
} from "./figures";
import { materialName, metalName, seasonName } from "./labels";
import { capital, joinedAnd } from "./lists";
import { cautionText } from "./notices";
import { cuePartName } from "./part-names";

/** One figure: its name, its value, where nine in ten lie, and what it means. */
export interface Fact {
	readonly label: string;
	readonly value: string;
	readonly band: string | null;
	readonly note?: string;
}

const length = (
	estimate: Estimate,
	reader: Reader,
	kind: LengthKind = "length",
) => ({
	value: formatLength(estimate.value, reader, kind),
	band: formatLengthBand(band90(estimate), reader, kind),
});

const number = (
	{ value, sd }: Pick<Estimate, "value" | "sd">,
	p: { scale?: number; decimals: number; unit: string },
	reader: Reader,
) => {
	const { scale = 1, decimals, unit } = p;
	const { low, high } = band90({ value: value * scale, sd: sd * scale });
	return {
		value: `${formatNumber(value * scale, reader, decimals)}\u00a0${unit}`,
		band: formatNumberBand({ low, high }, reader, decimals, `\u00a0${unit}`),
	};
};

/** Inertia is written in kg·cm², where a cue's figures are easy to hold. */
const inertia = (estimate: Estimate, decimals: number, reader: Reader) =>
	number(estimate, { scale: 1e4, decimals, unit: "kg·cm²" }, reader);

/** Weight and balance, with what is added where a weight is wanted. */
export function weightFacts(
	answer: CueAnswer,
	reader: Reader,
): readonly Fact[] {
	const { say } = reader;
	const { mass, plan } = answer;
	const facts: Fact[] = [
		{
			label: say("cueBench.weight"),
			value: formatMass(mass.massG.value, reader),
			band: formatMassBand(band90(mass.massG), reader),
			note:
				plan === null
					? say("cueBench.nothingAdded")
					: say("cueBench.ofNatural", {
							mass: formatMass(plan.naturalMassG.value, reader),
						}),
		},
		{
			label: say("cueBench.balance"),
			...length(mass.balanceFromButtMm, reader),
		},
	];
	if (plan !== null && plan.metalMassG > 0)
		facts.push({
			label: say("cueBench.added"),
			value: formatMass(plan.addedMassG.value, reader, "added"),
			band: null,
			note: say("cueBench.addedNote", {
				metal: metalName(plan.metal, reader),
				in: formatMass(plan.metalMassG, reader, "added"),
				out: formatMass(plan.drilledOutMassG, reader, "added"),
				bore:
					plan.boreDepthMm > 0
						? say("cueBench.bore", {
								across: formatLength(plan.boreDiameterMm, reader, "diameter"),
								deep: formatLength(plan.boreDepthMm, reader),
							})
						: "",
			}),
		});
	return facts;
}

/** How the cue's weight is spread: what it takes to swing it, and to roll it. */
export function inertiaFacts(
	answer: CueAnswer,
	reader: Reader,
): readonly Fact[] {
	const { say } = reader;
	const { mass } = answer;
	return [
		{
			label: say("cueBench.inertiaBalance"),
			...inertia(mass.inertiaAboutBalanceKgM2, 0, reader),
			note: say("cueBench.inertiaBalanceNote"),
		},
		{
			label: say("cueBench.inertiaGrip"),
			...inertia(answer.inertiaAboutGripKgM2, 0, reader),
		},
		{
			label: say("cueBench.inertiaAxis"),
			...inertia(mass.inertiaAboutAxisKgM2, 2, reader),
			note: say("cueBench.inertiaAxisNote"),
		},
	];
}

/** How the cue bends. The two bending planes are told apart where they differ by a percent. */
export function bendingFacts(
	answer: CueAnswer,
	reader: Reader,
): readonly Fact[] {
	const { say } = reader;
	const { planes, sideRatio } = answer.bending;
	const { x, y } = planes;
	const [first] = x.freeHz;
	if (!first) throw new RangeError("a cue without a first frequency");
	const hertz = (estimate: Estimate) =>
		number(estimate, { decimals: 1, unit: "Hz" }, reader);
	const across = y.freeHz[0];
	const still = joinedAnd(
		x.stillMm.map((stationMm) =>
			formatLength(answer.design.lengthMm - stationMm, reader),
		),
		reader,
	);
	return [
		{
			label: say("cueBench.free"),
			...hertz(first),
			note:
				sideRatio > 1.01 && across
					? say("cueBench.freeTurned", {
							still,
							hertz: formatNumber(across.value, reader, 1),
							share: formatPercent(sideRatio - 1, reader),
						})
					: say("cueBench.freeAlike", { still }),
		},
		{
			label: say("cueBench.fist"),
			...hertz(x.heldHz.clamped),
			note: say("cueBench.fistNote"),
		},
		{
			label: say("cueBench.lightly"),
			...hertz(x.heldHz.pinned),
			note: say("cueBench.lightlyNote"),
		},
		{
			label: say("cueBench.droop"),
			...length(x.droopMm, reader, "gap"),
			note: say("cueBench.droopNote"),
		},
		{
			label: say("cueBench.give"),
			...length(x.giveMmPerN, reader, "gap"),
		},
		{
			label: say("cueBench.endMass"),
			...number(answer.endMassG, { decimals: 1, unit: "g" }, reader),
			note: say("cueBench.endMassNote"),
		},
	];
}

export interface YearView {
	readonly sentence: string;
	/** Names of the seasons, as columns. */
	readonly columns: readonly string[];
	readonly rows: readonly {
		readonly name: string;
		readonly values: readonly string[];
	}[];
	readonly cautions: readonly string[];
}

/** What a year in a place does to the cue, as sentence and table. */
export function yearView(
	year: YearSwing,
	seasons: readonly Season[],
	reader: Reader,
): YearView {
	const { say } = reader;
	const across = (radialMm: number, tangentialMm: number) =>
		say("cueBench.year.across", {
			across: formatLength(radialMm, reader, "bench"),
			along: formatLength(tangentialMm, reader, "bench"),
		});
	const row = (
		name: string,
		value: (one: SeasonFigures, index: number) => string,
	) => ({ name, values: year.seasons.map(value) });
	return {
		sentence: say("cueBench.year.sentence", {
			mass: formatMass(year.massSwingG, reader, "added"),
			across: formatLength(year.buttSwingMm, reader, "bench"),
		}),
		columns: year.seasons.map(({ name }) => capital(seasonName(name, reader))),
		rows: [
			row(say("cueBench.year.air"), (_, i) => airWords(seasons[i], reader)),
			row(say("cueBench.year.moisture"), ({ moisturePct: { value, sd } }) =>
				say("cueBench.year.moistureValue", {
					value: formatNumber(value, reader, 1),
					sd: formatNumber(sd, reader, 1),
				}),
			),
			row(say("cueBench.weight"), ({ massG }) =>
				formatMass(massG.value, reader),
			),
			row(say("cueBench.balance"), ({ balanceFromButtMm }) =>
				formatLength(balanceFromButtMm.value, reader),
			),
			row(say("cueBench.year.butt"), (one) =>
				across(one.buttRadialMm, one.buttTangentialMm),
			),
			row(say("cueBench.year.tip"), (one) =>
				across(one.tipRadialMm, one.tipTangentialMm),
			),
		],
		cautions: year.cautions.map((caution) => cautionText(caution, reader)),
	};
}

function airWords(season: Season | undefined, reader: Reader): string {
	if (!season) throw new RangeError("a season without its air");
	const { temperatureC, relativeHumidityPct } = season.air;
	return reader.say("cueBench.year.airValue", {
		temperature: formatNumber(temperatureC, reader),
		humidity: formatNumber(relativeHumidityPct, reader),
	});
}

export interface PartRow {
	readonly part: string;
	readonly material: string;
	readonly weight: string;
	readonly centre: string;
}

/** A tip weighs a fraction of a gram. */
const partMass = (massG: number, reader: Reader): string =>
	reader.system === "metric" && massG < 10
		? `${formatNumber(massG, reader, 1)}\u00a0g`
		: formatMass(massG, reader, "added");

/** What weighs what, from tip to butt. */
export function partRows(
	answer: CueAnswer,
	reader: Reader,
): readonly PartRow[] {
	return answer.mass.parts.map((one) => ({
		part: cuePartName(one.part, reader),
		material: materialName(one.material, reader),
		weight: partMass(one.massG.value, reader),
		centre: formatLength(
			answer.design.lengthMm - one.centroidStationMm,
			reader,
		),
	}));
}
