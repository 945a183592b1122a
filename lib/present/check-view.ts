import type { BenchStage, Finding, Hold } from "@/lib/build/as-built";
import { band90 } from "@/lib/reference/estimate";
import type { Reader } from "@/lib/words/reader";
import {
	type CheckContent,
	type CheckDecision,
	densityOfBillet,
} from "@/lib/workshop/check";
import { formatDay } from "./dates";
import {
	formatLength,
	formatLengthDifference,
	formatMass,
	formatNumber,
} from "./figures";
import { woodName } from "./labels";
import { formatDensity } from "./solid-figures";

const NBSP = "\u00a0";

export const stageName = (stage: BenchStage, { say }: Reader): string =>
	say(`checks.stage.${stage}`);

/** Grams with their tenth where they have one: a scale of the bench shows it, and a bound may hang on it. */
function benchMass(g: number, reader: Reader): string {
	if (reader.system === "trade") return formatMass(g, reader, "added");
	const isWhole = Math.abs(g - Math.round(g)) < 0.05;
	return `${formatNumber(g, reader, isWhole ? 0 : 1)}${NBSP}g`;
}

const signed = (text: string, value: number): string =>
	value > 0 && /[1-9]/.test(text) ? `+${text}` : text;

const lengthKind = (figure: Finding["figure"]) =>
	figure === "length" || figure === "balance" ? "gap" : "bench";

const valueText = (
	figure: Finding["figure"],
	value: number,
	reader: Reader,
): string =>
	figure === "mass"
		? benchMass(value, reader)
		: formatLength(value, reader, lengthKind(figure));

const differenceText = (
	figure: Finding["figure"],
	value: number,
	reader: Reader,
): string =>
	figure === "mass"
		? signed(benchMass(value, reader), value)
		: formatLengthDifference(value, reader, lengthKind(figure));

export function figureName(
	{ figure, fromButtMm }: Pick<Finding, "figure" | "fromButtMm">,
	reader: Reader,
): string {
	const name = reader.say(`checks.figure.${figure}`);
	return fromButtMm === null
		? name
		: `${name}, ${reader.say("checks.form.stationAt", {
				fromButt: formatLength(fromButtMm, reader, "station"),
			})}`;
}

/** "± 7 g", "not below 1466 mm". */
export function allowedText(
	p: {
		figure: Finding["figure"];
		wanted: number;
		tolerance: number;
		hold: Hold;
	},
	reader: Reader,
): string {
	const { say } = reader;
	const { figure, wanted, tolerance } = p;
	const text = (value: number) => valueText(figure, value, reader);
	switch (p.hold) {
		case "either-side":
			return say("checks.list.either", { tolerance: text(tolerance) });
		case "at-least":
			return say("checks.list.atLeast", { bound: text(wanted - tolerance) });
		case "at-most":
			return say("checks.list.atMost", { bound: text(wanted + tolerance) });
		case "none":
			return say("checks.list.nothing");
	}
}

export type Verdict = "ok" | "out" | "noted";

export interface FindingRow {
	readonly figure: string;
	readonly wanted: string;
	readonly measured: string;
	readonly deviation: string;
	readonly allowed: string;
	readonly verdict: Verdict;
	readonly verdictText: string;
}

/** One reading against what was wanted, in words. */
export function findingRow(finding: Finding, reader: Reader): FindingRow {
	const { figure, wanted, measured, deviation, hold, isOut } = finding;
	const verdict: Verdict = isOut ? "out" : hold === "none" ? "noted" : "ok";
	return {
		figure: figureName(finding, reader),
		wanted: valueText(figure, wanted, reader),
		measured: valueText(figure, measured, reader),
		deviation: differenceText(figure, deviation, reader),
		allowed: allowedText(finding, reader),
		verdict,
		verdictText: reader.say(`checks.list.${verdict}`),
	};
}

/** "+12 g: out of tolerance", under a field while it is filled in. */
export function verdictLine(finding: Finding, reader: Reader): string {
	const { verdict, deviation } = findingRow(finding, reader);
	return reader.say(`checks.form.${verdict}`, { deviation });
}

/** What was read and compared with nothing at its stage, such as the weight of a blank. */
export function plainReadings(
	{ figures }: Pick<CheckContent, "figures">,
	findings: readonly Finding[],
	reader: Reader,
): string[] {
	const { say } = reader;
	const compared = new Set(findings.map(({ figure }) => figure));
	const read = [
		["length", figures.lengthMm],
		["mass", figures.massG],
		["balance", figures.balanceFromButtMm],
		["butt", figures.buttDiameterMm],
		["tip", figures.tipDiameterMm],
	] as const;
	const rest = read.flatMap(([figure, value]) =>
		value === undefined || compared.has(figure)
			? []
			: [
					`${say(`checks.figure.${figure}`)} ${valueText(figure, value, reader)}`,
				],
	);
	return figures.metalMassG === undefined
		? rest
		: [
				...rest,
				`${say("checks.figure.metal")} ${benchMass(figures.metalMassG, reader)}`,
			];
}

export const billetLines = (
	{ billets }: Pick<CheckContent, "billets">,
	reader: Reader,
): string[] =>
	billets.map((billet) => {
		const density = densityOfBillet(billet);
		const mm = (value: number) => formatLength(value, reader, "gap");
		return reader.say("checks.list.billet", {
			wood: woodName(billet.wood, reader),
			mass: benchMass(billet.massG, reader),
			length: mm(billet.lengthMm),
			width: mm(billet.widthMm),
			thickness: mm(billet.thicknessMm),
			density: density.ok ? formatDensity(density.value.kgM3, reader) : "",
		});
	});

/** Who decided what of a check, when and why. */
export function decisionText(
	decided: {
		decision: CheckDecision;
		by: string;
		note: string;
		at: Date;
	},
	reader: Reader,
): string {
	const { decision, by, note, at } = decided;
	const when = formatDay(at, reader);
	return note === ""
		? reader.say(`checks.list.decisionPlain.${decision}`, { by, when })
		: reader.say(`checks.list.decision.${decision}`, { by, when, note });
}

/** "672 kg/m³ ± 67 kg/m³". */
export const densityText = (
	{ kgM3, sd }: { kgM3: number; sd: number },
	reader: Reader,
): string =>
	reader.say("checks.woodsSaid.density", {
		density: formatDensity(kgM3, reader),
		spread: formatDensity(sd, reader),
	});

/** Where nine billets in ten lie: "562 kg/m³ to 782 kg/m³". */
export function densityBand(
	{ kgM3, sd }: { kgM3: number; sd: number },
	reader: Reader,
): string {
	const { low, high } = band90({ value: kgM3, sd });
	return reader.say("checks.woodsSaid.band", {
		low: formatDensity(low, reader),
		high: formatDensity(high, reader),
	});
}
