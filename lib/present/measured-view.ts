import { CHOICES, type MeasureName } from "@/lib/forms/choices";
import { type Answers, noteOn } from "@/lib/forms/fields";
import type { Reader } from "@/lib/words/reader";
import { measureLabel } from "./labels";

export interface MeasuredRow {
	readonly measure: string;
	readonly reading: string;
	readonly note: string;
	/** "refused": tried and not possible. */
	readonly state: "read" | "refused" | "not-asked";
}

const textsOf = (answer: Answers[keyof Answers]): readonly string[] =>
	[answer ?? []].flat().filter((text) => text.trim() !== "");

/** Each measure as typed, in the order of the fitting. */
export const measuredRows = (
	answers: Answers,
	reader: Reader,
): readonly (MeasuredRow & Readonly<Record<string, string>>)[] =>
	CHOICES.measure.map((name: MeasureName) => {
		const readings = textsOf(answers[name]);
		const state =
			readings.length > 0
				? "read"
				: textsOf(answers.notMeasured).includes(name)
					? "refused"
					: "not-asked";
		return {
			measure: measureLabel(name, reader),
			reading:
				state === "read"
					? readings.join(", ")
					: state === "refused"
						? reader.say("measured.not")
						: reader.say("measured.notAsked"),
			note: textsOf(answers[noteOn(name)]).join(" "),
			state,
		};
	});
