import type { Evidence } from "@/lib/advice/figure";
import type { ClosureWish } from "@/lib/advice/input";
import type { UnitSystem } from "@/lib/units/quantity";
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
import { CLOSURE_LABELS } from "./labels";

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
	system: UnitSystem,
): string =>
	id === "mass"
		? formatMass(value, system)
		: formatLength(value, system, LENGTH_KIND[id]);

const formatStep = (id: FigureId, value: number, system: UnitSystem): string =>
	id === "mass"
		? formatMassDifference(value, system)
		: formatLengthDifference(value, system, LENGTH_KIND[id]);

export const formatFigureBand = (
	id: FigureId,
	band: { low: number; high: number },
	system: UnitSystem,
): string =>
	id === "mass"
		? formatMassBand(band, system)
		: formatLengthBand(band, system, LENGTH_KIND[id]);

const fact = ({ code, facts }: Evidence, name: string): number => {
	const value = facts?.[name];
	if (typeof value !== "number")
		throw new TypeError(`evidence ${code} lacks the fact ${name}`);
	return value;
};

const counted = (count: number, noun: string): string =>
	`${formatNumber(count)} ${noun}${count === 1 ? "" : "s"}`;

/** One sentence on why this evidence points to its value. */
export function reasonSentence(
	id: FigureId,
	evidence: Evidence,
	system: UnitSystem,
): string {
	const at = formatFigure(id, evidence.value, system);
	const noun = NOUN[id];
	switch (evidence.code) {
		case "wish":
			return `You asked for ${at}.`;
		case "wish-from-trials":
			return `You asked for ${at}, the best by ${counted(fact(evidence, "shots"), "shot")} in ${counted(fact(evidence, "sessions"), "trial")} at the table; the band is what those leave open.`;
		case "reach":
			return `From bridge hand to grip hand is about ${formatLength(fact(evidence, "bridgeToGripMm"), system)}; with a bridge of ${formatLength(fact(evidence, "bridgeLengthMm"), system)} in front and ${formatLength(fact(evidence, "gripFromButtMm"), system)} behind the hand that makes ${at}.`;
		case "present-used":
			return `The present cue has ${at} and draws no complaint.`;
		case "present-liked":
			return `The ${noun} of the present cue, ${at}, is liked.`;
		case "usual-length":
			return `Players of ${formatLength(fact(evidence, "statureMm"), system, "body")} usually have about ${at}.`;
		case "usual-butt":
			return `Butts asked for run from ${formatFigureBand(id, { low: fact(evidence, "low"), high: fact(evidence, "high") }, system)}.`;
		case "usual-mass":
		case "usual-tip":
			return `Usual for this game: ${formatFigureBand(id, { low: fact(evidence, "low"), high: fact(evidence, "high") }, system)}.`;
		case "usual-tip-for-level":
			return `Usual for this game is ${formatFigureBand(id, { low: fact(evidence, "low"), high: fact(evidence, "high") }, system)}; this level is served by ${formatStep(id, fact(evidence, "shiftMm"), system)} from the middle.`;
		case "equal-effort":
			return `With the same effort the ball leaves fastest at about ${at} (arm felt as ${formatMass(fact(evidence, "armMassG"), system)}, ball ${formatMass(fact(evidence, "ballMassG"), system)}); the optimum is flat.`;
		case "ring-measured":
		case "ring-estimated":
			return ringSentence(evidence, at, system);
		case "balance-of-build":
			return `The chosen woods, taper and added weight balance ${at} from the butt end.`;
		case "balance-natural":
			return `The chosen woods and taper balance ${at} from the butt end before any weight is added.`;
		default:
			return presentComplaint(id, evidence, at, system);
	}
}

function ringSentence(
	evidence: Evidence,
	at: string,
	system: UnitSystem,
): string {
	const closure =
		CLOSURE_LABELS[
			String(evidence.facts?.closure) as ClosureWish
		].toLowerCase();
	const count = fact(evidence, "readingCount");
	const circle = formatLength(fact(evidence, "circleMm"), system, "diameter");
	const origin =
		count === 0
			? `A grip circle of about ${circle}, guessed from the hand,`
			: `A grip circle of ${circle} (${count === 1 ? "one reading" : `mean of ${formatNumber(count)} readings`})`;
	return `${origin} with ${closure} wants a butt of ${at}, the grip hand being ${formatLength(fact(evidence, "gripFromButtMm"), system)} up the taper.`;
}

function presentComplaint(
	id: FigureId,
	evidence: Evidence,
	at: string,
	system: UnitSystem,
): string {
	if (!evidence.code.startsWith("present-"))
		throw new TypeError(`no sentence for ${evidence.code}`);
	const complaint = evidence.code
		.slice("present-".length)
		.replaceAll("-", " ")
		.replace("tip ", "");
	return `The present cue (${formatFigure(id, fact(evidence, "present"), system)}) is felt to be ${complaint}: a step of ${formatStep(id, evidence.value - fact(evidence, "present"), system)} gives ${at}.`;
}
