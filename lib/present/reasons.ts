import type { Evidence } from "@/lib/advice/figure";
import type { ClosureWish } from "@/lib/advice/input";
import type { Reader } from "@/lib/words/reader";
import {
	formatLength,
	formatLengthBand,
	formatLengthDifference,
	formatMass,
	formatMassBand,
	formatMassDifference,
	formatNumber,
	type LengthKind,
} from "./figures";
import { inSentence } from "./labels";

/** Which quantity a figure is, for the words and the number format of its reasons. */
export type FigureId = "length" | "mass" | "butt" | "tip" | "balance";

const LENGTH_KIND: Readonly<Record<Exclude<FigureId, "mass">, LengthKind>> = {
	length: "length",
	butt: "diameter",
	tip: "diameter",
	balance: "length",
};

const NOUN: Readonly<Record<FigureId, string>> = {
	length: "length",
	mass: "weight",
	butt: "butt diameter",
	tip: "tip",
	balance: "balance point",
};

/** A quantity of this figure in the reader's units. */
export const formatFigure = (
	id: FigureId,
	value: number,
	reader: Reader,
): string =>
	id === "mass"
		? formatMass(value, reader)
		: formatLength(value, reader, LENGTH_KIND[id]);

const formatStep = (id: FigureId, value: number, reader: Reader): string =>
	id === "mass"
		? formatMassDifference(value, reader)
		: formatLengthDifference(value, reader, LENGTH_KIND[id]);

export const formatFigureBand = (
	id: FigureId,
	band: { low: number; high: number },
	reader: Reader,
): string =>
	id === "mass"
		? formatMassBand(band, reader)
		: formatLengthBand(band, reader, LENGTH_KIND[id]);

const fact = ({ code, facts }: Evidence, name: string): number => {
	const value = facts?.[name];
	if (typeof value !== "number")
		throw new TypeError(`evidence ${code} lacks the fact ${name}`);
	return value;
};

const counted = (count: number, noun: string, reader: Reader): string =>
	`${formatNumber(count, reader)} ${noun}${count === 1 ? "" : "s"}`;

/** One sentence on why this evidence points to its value. */
export function reasonSentence(
	id: FigureId,
	evidence: Evidence,
	reader: Reader,
): string {
	const at = formatFigure(id, evidence.value, reader);
	const noun = NOUN[id];
	switch (evidence.code) {
		case "wish":
			return `You asked for ${at}.`;
		case "wish-from-trials":
			return `You asked for ${at}, the best by ${counted(fact(evidence, "shots"), "shot", reader)} in ${counted(fact(evidence, "sessions"), "trial", reader)} at the table; the band is what those leave open.`;
		case "reach":
			return `From bridge hand to grip hand is about ${formatLength(fact(evidence, "bridgeToGripMm"), reader)}; with a bridge of ${formatLength(fact(evidence, "bridgeLengthMm"), reader)} in front and ${formatLength(fact(evidence, "gripFromButtMm"), reader)} behind the hand that makes ${at}.`;
		case "present-used":
			return `The present cue has ${at} and draws no complaint.`;
		case "present-liked":
			return `The ${noun} of the present cue, ${at}, is liked.`;
		case "usual-length":
			return `Players of ${formatLength(fact(evidence, "statureMm"), reader, "body")} usually have about ${at}.`;
		case "usual-butt":
			return `Butts asked for run from ${formatFigureBand(id, { low: fact(evidence, "low"), high: fact(evidence, "high") }, reader)}.`;
		case "usual-mass":
		case "usual-tip":
			return `Usual for this game: ${formatFigureBand(id, { low: fact(evidence, "low"), high: fact(evidence, "high") }, reader)}.`;
		case "usual-tip-for-level":
			return `Usual for this game is ${formatFigureBand(id, { low: fact(evidence, "low"), high: fact(evidence, "high") }, reader)}; this level is served by ${formatStep(id, fact(evidence, "shiftMm"), reader)} from the middle.`;
		case "equal-effort":
			return `With the same effort the ball leaves fastest at about ${at} (arm felt as ${formatMass(fact(evidence, "armMassG"), reader)}, ball ${formatMass(fact(evidence, "ballMassG"), reader)}); the optimum is flat.`;
		case "ring-measured":
		case "ring-estimated":
			return ringSentence(evidence, at, reader);
		case "balance-of-build":
			return `The chosen woods, taper and added weight balance ${at} from the butt end.`;
		case "balance-natural":
			return `The chosen woods and taper balance ${at} from the butt end before any weight is added.`;
		default:
			return presentComplaint(id, evidence, at, reader);
	}
}

function ringSentence(evidence: Evidence, at: string, reader: Reader): string {
	const closure = inSentence.closure(
		String(evidence.facts?.closure) as ClosureWish,
		reader,
	);
	const count = fact(evidence, "readingCount");
	const circle = formatLength(fact(evidence, "circleMm"), reader, "diameter");
	const origin =
		count === 0
			? `A grip circle of about ${circle}, guessed from the hand,`
			: `A grip circle of ${circle} (${count === 1 ? "one reading" : `mean of ${formatNumber(count, reader)} readings`})`;
	return `${origin} with ${closure} wants a butt of ${at}, the grip hand being ${formatLength(fact(evidence, "gripFromButtMm"), reader)} up the taper.`;
}

function presentComplaint(
	id: FigureId,
	evidence: Evidence,
	at: string,
	reader: Reader,
): string {
	if (!evidence.code.startsWith("present-"))
		throw new TypeError(`no sentence for ${evidence.code}`);
	const complaint = evidence.code
		.slice("present-".length)
		.replaceAll("-", " ")
		.replace("tip ", "");
	return `The present cue (${formatFigure(id, fact(evidence, "present"), reader)}) is felt to be ${complaint}: a step of ${formatStep(id, evidence.value - fact(evidence, "present"), reader)} gives ${at}.`;
}
