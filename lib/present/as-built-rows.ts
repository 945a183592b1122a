import type { Reader } from "@/lib/words/reader";
import type { CheckFigures } from "@/lib/workshop/check";
import type { BuildContent } from "@/lib/workshop/job-content";
import { asBuiltCue } from "@/lib/workshop/player-cue";
import { formatBoth, type Quantity } from "./figures";

const FIGURES = [
	["length", "lengthMm"],
	["mass", "massG"],
	["butt", "buttDiameterMm"],
	["tip", "tipDiameterMm"],
	["balance", "balanceFromButtMm"],
] as const;

/** The five figures of a finished cue, as read on it or, where nothing was read, as it was made to. */
export function asBuiltRows(
	{ build, readings }: { build: BuildContent; readings: CheckFigures },
	reader: Reader,
): { figure: string; value: string; source: string }[] {
	const { say } = reader;
	const cue = asBuiltCue({ build, readings });
	return FIGURES.flatMap(([id, field]) => {
		const read = cue[field];
		if (read === null) return [];
		const quantity: Quantity =
			id === "mass"
				? { g: read }
				: {
						mm: read,
						kind: id === "butt" || id === "tip" ? "bench" : "length",
					};
		const { main, other } = formatBoth(quantity, reader);
		return [
			{
				figure: say(`sheet.figure.${id}`),
				value: `${main} · ${other}`,
				source: say(
					cue.measured.includes(field) ? "care.measured" : "care.made",
				),
			},
		];
	});
}
