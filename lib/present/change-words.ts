import type { Influence } from "@/lib/advice/sensitivity";
import type { WoodId } from "@/lib/reference/woods";
import { WOODS } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import {
	formatLength,
	formatMass,
	formatNumber,
	formatPercent,
	type LengthKind,
} from "./figures";
import { inSentence } from "./labels";
import { joinedAnd } from "./lists";
import { sayOr } from "./say-or";

const DENSITY = "density.";
const doingOf = (answer: string, reader: Reader): string =>
	sayOr(`change.doing.${answer}`, "", reader);
const billetOf = (answer: string): WoodId | null => {
	const wood = answer.slice(DENSITY.length);
	return answer.startsWith(DENSITY) && wood in WOODS ? (wood as WoodId) : null;
};

/** What is to be done about an open answer, as the start of a sentence; one without words is named as it is. */
export function doingText(answer: string, reader: Reader): string {
	const known = doingOf(answer, reader);
	if (known !== "") return known;
	const wood = billetOf(answer);
	return wood === null
		? reader.say("change.knowing", { answer })
		: reader.say("change.weighing", { wood: inSentence.wood(wood, reader) });
}

export const hasDoing = (answer: string, reader: Reader): boolean =>
	doingOf(answer, reader) !== "" || billetOf(answer) !== null;

const MOVED = [
	["lengthMm", "gap", 0.5],
	["massG", "mass", 0.5],
	["buttDiameterMm", "bench", 0.05],
	["tipDiameterMm", "bench", 0.02],
	["balanceMm", "gap", 0.5],
] as const satisfies readonly (readonly [
	string,
	LengthKind | "mass",
	number,
])[];

export interface InfluenceView {
	readonly answer: string;
	readonly text: string;
	readonly steps: string;
}

/** Influences below this are not worth a sentence, in differences a player would notice. */
const WORTH_TELLING = 0.02;

/** One sentence an influence, strongest first, those that would move nothing left out. */
export function influenceViews(
	influences: readonly Influence[],
	reader: Reader,
): readonly InfluenceView[] {
	return influences
		.filter(
			(influence) =>
				influence.feltSteps >= WORTH_TELLING &&
				movedBy(influence, reader).length > 0,
		)
		.map((influence) => ({
			answer: influence.answer,
			text: influenceText(influence, reader),
			steps: formatNumber(influence.feltSteps, reader, 1),
		}));
}

function movedBy(
	{ needMovement, cueMovement }: Influence,
	reader: Reader,
): readonly string[] {
	const movement: Partial<Record<(typeof MOVED)[number][0], number>> =
		cueMovement ?? needMovement;
	return MOVED.flatMap(([name, kind, least]) => {
		const by = movement[name] ?? 0;
		if (by < least) return [];
		return reader.say(`change.moved.${name}`, {
			by:
				kind === "mass"
					? formatMass(by, reader, "added")
					: formatLength(by, reader, kind),
		});
	});
}

export function influenceText(influence: Influence, reader: Reader): string {
	const { answer, worthGained } = influence;
	const moved = movedBy(influence, reader);
	const { say } = reader;
	const sentence = say("change.would", {
		doing: doingText(answer, reader),
		what: moved.length === 0 ? say("change.nothing") : joinedAnd(moved, reader),
	});
	return worthGained !== null && worthGained >= 0.001
		? say("change.gained", {
				sentence,
				worth: formatPercent(worthGained, reader, 1),
			})
		: sentence;
}
