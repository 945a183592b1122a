import type { TrialField } from "@/lib/trial/assumptions";
import type { CueFigures } from "@/lib/trial/preference";
import type { Reader } from "@/lib/words/reader";
import {
	formatLength,
	formatLengthBand,
	formatMass,
	formatMassBand,
	formatNumber,
} from "./figures";

/** A known figure of a cue of a trial, as it stands alone. */
export const trialFieldLabel = (field: TrialField, { say }: Reader): string =>
	say(`trial.field.${field}`);

const kindOf = (field: TrialField) =>
	field === "buttDiameterMm" || field === "tipDiameterMm"
		? ("diameter" as const)
		: ("length" as const);

export const formatTrialFigure = (
	field: TrialField,
	value: number,
	reader: Reader,
): string =>
	field === "massG"
		? formatMass(value, reader)
		: formatLength(value, reader, kindOf(field));

export const formatTrialBand = (
	field: TrialField,
	band: { low: number; high: number },
	reader: Reader,
): string =>
	field === "massG"
		? formatMassBand(band, reader)
		: formatLengthBand(band, reader, kindOf(field));

/** "1460 mm, 510 g, butt 29 mm, tip 9.5 mm, balance 432 mm". */
export function figuresLine(cue: CueFigures, reader: Reader): string {
	const write = (field: TrialField) =>
		formatTrialFigure(field, cue[field], reader);
	return reader.say("trial.figures", {
		length: write("lengthMm"),
		mass: write("massG"),
		butt: write("buttDiameterMm"),
		tip: write("tipDiameterMm"),
		balance: write("balanceFromButtMm"),
	});
}

/** How many there are, for a sentence that has to tell one from several. */
export const counted = (many: number, reader: Reader) => ({
	many,
	count: formatNumber(many, reader),
});
