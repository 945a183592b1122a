import type { Advice } from "@/lib/advice/advise";
import type { FittingInput } from "@/lib/advice/input";
import { CHOICES, type MeasureName } from "@/lib/forms/choices";
import { type Answers, FIELDS } from "@/lib/forms/fields";
import type { Reader } from "@/lib/words/reader";
import { estimateWords, MEASURE_KIND } from "./estimates";
import { formatLength, formatNumber } from "./figures";
import { measureLabel } from "./labels";

/** One measure as a player reads it: what the tape said, or what stands in for it and how wide. */
export interface MeasuredLine {
	readonly measure: string;
	readonly value: string;
	readonly state: "measured" | "estimated";
	/** How it was read or how far it may be off; empty where there is nothing to say. */
	readonly note: string;
}

interface Measuring {
	readonly input: FittingInput;
	readonly answers: Answers;
	readonly around: Pick<Advice, "body" | "grip" | "reach">;
}

/** Every measure that stands behind the figures, measured ones first. */
export function measuredLines(
	p: Measuring,
	reader: Reader,
): readonly MeasuredLine[] {
	const lines = CHOICES.measure.flatMap((name) => {
		const line = lineOf(name, p, reader);
		return line === null ? [] : [line];
	});
	return [
		...lines.filter(({ state }) => state === "measured"),
		...lines.filter(({ state }) => state === "estimated"),
	];
}

function lineOf(
	name: MeasureName,
	{ input, answers, around }: Measuring,
	reader: Reader,
): MeasuredLine | null {
	const { say } = reader;
	const measure = measureLabel(name, reader);
	const readings = readingsOf(name, input);
	if (readings.length > 0) {
		const mean =
			readings.reduce((sum, value) => sum + value, 0) / readings.length;
		return {
			measure,
			value: formatLength(mean, reader, MEASURE_KIND[name]),
			state: "measured",
			note:
				readings.length === 1
					? ""
					: say("summary.measured.mean", {
							count: formatNumber(readings.length, reader),
						}),
		};
	}
	const words = estimateWords(name, around, reader);
	if (words === null) return null;
	return {
		measure,
		value: words.value,
		state: "estimated",
		note: say(
			[answers.notMeasured ?? []].flat().includes(name)
				? "summary.measured.refused"
				: "summary.measured.estimated",
			{ band: words.band },
		),
	};
}

/** The numbers read for a measure, mm; none where it was not taken. */
function readingsOf(name: MeasureName, input: FittingInput): readonly number[] {
	let value: unknown = input;
	for (const part of FIELDS[name].path.split("."))
		value = (value as Readonly<Record<string, unknown>> | undefined)?.[part];
	return [value ?? []].flat().filter((one) => typeof one === "number");
}
