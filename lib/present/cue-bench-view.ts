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
import { materialName, metalName } from "./labels";
import { cautionText } from "./notices";

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
	const { mass, plan } = answer;
	const facts: Fact[] = [
		{
			label: "Weight",
			value: formatMass(mass.massG.value, reader),
			band: formatMassBand(band90(mass.massG), reader),
			note:
				plan === null
					? "With nothing added; billets differ."
					: `Of ${formatMass(plan.naturalMassG.value, reader)} natural weight.`,
		},
		{
			label: "Balance, from the butt end",
			...length(mass.balanceFromButtMm, reader),
		},
	];
	if (plan !== null && plan.metalMassG > 0)
		facts.push({
			label: "Added weight, net",
			value: formatMass(plan.addedMassG.value, reader, "added"),
			band: null,
			note: `${metalName(plan.metal, reader)} ${formatMass(plan.metalMassG, reader, "added")} in, wood ${formatMass(plan.drilledOutMassG, reader, "added")} out${plan.boreDepthMm > 0 ? `; bore Ø${formatLength(plan.boreDiameterMm, reader, "diameter")}, ${formatLength(plan.boreDepthMm, reader)} deep` : ""}.`,
		});
	return facts;
}

/** How the cue's weight is spread: what it takes to swing it, and to roll it. */
export function inertiaFacts(
	answer: CueAnswer,
	reader: Reader,
): readonly Fact[] {
	const { mass } = answer;
	return [
		{
			label: "Inertia about the balance point",
			...inertia(mass.inertiaAboutBalanceKgM2, 0, reader),
			note: "What resists steering the tip sideways.",
		},
		{
			label: "Inertia about the grip hand",
			...inertia(answer.inertiaAboutGripKgM2, 0, reader),
		},
		{
			label: "Inertia about its own axis",
			...inertia(mass.inertiaAboutAxisKgM2, 2, reader),
			note: "What resists rolling it between the fingers.",
		},
	];
}

/** How the cue bends. The two bending planes are told apart where they differ by a percent. */
export function bendingFacts(
	answer: CueAnswer,
	reader: Reader,
): readonly Fact[] {
	const { planes, sideRatio } = answer.bending;
	const { x, y } = planes;
	const [first] = x.freeHz;
	if (!first) throw new RangeError("a cue without a first frequency");
	const hertz = (estimate: Estimate) =>
		number(estimate, { decimals: 1, unit: "Hz" }, reader);
	const across = y.freeHz[0];
	const still = x.stillMm
		.map((stationMm) =>
			formatLength(answer.design.lengthMm - stationMm, reader),
		)
		.join(" and ");
	return [
		{
			label: "First bending, hanging free",
			...hertz(first),
			note: `Stays still ${still} from the butt end: hold it there to hear it ring.${
				sideRatio > 1.01 && across
					? ` Turned a quarter, ${formatNumber(across.value, reader, 1)}\u00a0Hz: ${formatPercent(sideRatio - 1, reader)} between the planes.`
					: " Both planes alike within a percent."
			}`,
		},
		{
			label: "First bending, held in a fist",
			...hertz(x.heldHz.clamped),
			note: "The grip clamped: the cue whips like a rod.",
		},
		{
			label: "First bending, held lightly",
			...hertz(x.heldHz.pinned),
			note: "The grip free to rock: a real hand lies between the two.",
		},
		{
			label: "Tip hangs down, held level at the grip",
			...length(x.droopMm, reader, "gap"),
			note: "Under its own weight, clamped there.",
		},
		{
			label: "Tip gives, for one newton sideways",
			...length(x.giveMmPerN, reader, "gap"),
		},
		{
			label: "Effective end mass",
			...number(answer.endMassG, { decimals: 1, unit: "g" }, reader),
			note: "What the ball feels sideways in the short time of contact; less deflects less.",
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

const capital = (text: string): string =>
	text.charAt(0).toUpperCase() + text.slice(1);

/** What a year in a place does to the cue, as sentence and table. */
export function yearView(
	year: YearSwing,
	seasons: readonly Season[],
	reader: Reader,
): YearView {
	const across = (radialMm: number, tangentialMm: number) =>
		`${formatLength(radialMm, reader, "bench")} across, ${formatLength(tangentialMm, reader, "bench")} along`;
	const row = (
		name: string,
		value: (one: SeasonFigures, index: number) => string,
	) => ({ name, values: year.seasons.map(value) });
	return {
		sentence: `Settled in each air in turn, the cue’s weight swings by ${formatMass(year.massSwingG, reader, "added")} and its butt end by ${formatLength(year.buttSwingMm, reader, "bench")} across. Wood follows the air by weeks and a finish slows it: this is the most a year can do, not a day.`,
		columns: year.seasons.map(({ name }) => capital(name)),
		rows: [
			row("Air", (_, i) => airWords(seasons[i], reader)),
			row(
				"Moisture of the wood",
				({ moisturePct: { value, sd } }) =>
					`${formatNumber(value, reader, 1)}% ± ${formatNumber(sd, reader, 1)}`,
			),
			row("Weight", ({ massG }) => formatMass(massG.value, reader)),
			row("Balance, from the butt end", ({ balanceFromButtMm }) =>
				formatLength(balanceFromButtMm.value, reader),
			),
			row("Butt end, across and along the rings", (one) =>
				across(one.buttRadialMm, one.buttTangentialMm),
			),
			row("Tip, across and along the rings", (one) =>
				across(one.tipRadialMm, one.tipTangentialMm),
			),
		],
		cautions: year.cautions.map((caution) => cautionText(caution, reader)),
	};
}

function airWords(season: Season | undefined, reader: Reader): string {
	if (!season) throw new RangeError("a season without its air");
	const { temperatureC, relativeHumidityPct } = season.air;
	return `${formatNumber(temperatureC, reader)}\u00a0°C, ${formatNumber(relativeHumidityPct, reader)}% humidity`;
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
		part: capital(one.part),
		material: materialName(one.material, reader),
		weight: partMass(one.massG.value, reader),
		centre: formatLength(
			answer.design.lengthMm - one.centroidStationMm,
			reader,
		),
	}));
}
