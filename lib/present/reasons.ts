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
import { sayOr } from "./say-or";

/** Which quantity a figure is, for the words and the number format of its reasons. */
export type FigureId = "length" | "mass" | "butt" | "tip" | "balance";

const LENGTH_KIND: Readonly<Record<Exclude<FigureId, "mass">, LengthKind>> = {
	length: "length",
	butt: "diameter",
	tip: "diameter",
	balance: "length",
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

/** A length, or a range of this figure, among the facts of a piece of evidence. */
const told = (id: FigureId, evidence: Evidence, reader: Reader) => ({
	mm: (name: string, kind?: LengthKind) =>
		formatLength(fact(evidence, name), reader, kind),
	range: () =>
		formatFigureBand(
			id,
			{ low: fact(evidence, "low"), high: fact(evidence, "high") },
			reader,
		),
});

/** One sentence on why this evidence points to its value. */
export function reasonSentence(
	id: FigureId,
	evidence: Evidence,
	reader: Reader,
): string {
	const at = formatFigure(id, evidence.value, reader);
	const { say } = reader;
	const { mm, range } = told(id, evidence, reader);
	switch (evidence.code) {
		case "wish":
			return say("reasons.wish", { at });
		case "wish-from-trials":
			return say("reasons.wish-from-trials", {
				at,
				shots: fact(evidence, "shots"),
				shotsText: formatNumber(fact(evidence, "shots"), reader),
				sessions: fact(evidence, "sessions"),
				sessionsText: formatNumber(fact(evidence, "sessions"), reader),
			});
		case "reach":
			return say("reasons.reach", {
				at,
				span: mm("bridgeToGripMm"),
				bridge: mm("bridgeLengthMm"),
				behind: mm("gripFromButtMm"),
			});
		case "present-used":
			return say("reasons.present-used", { at });
		case "present-liked":
			return say("reasons.present-liked", { of: id, at });
		case "usual-length":
			return say("reasons.usual-length", {
				at,
				stature: mm("statureMm", "body"),
			});
		case "usual-butt":
			return say("reasons.usual-butt", { range: range() });
		case "usual-mass":
		case "usual-tip":
			return say("reasons.usual", { range: range() });
		case "usual-tip-for-level":
			return say("reasons.usual-tip-for-level", {
				range: range(),
				step: formatStep(id, fact(evidence, "shiftMm"), reader),
			});
		case "equal-effort":
			return say("reasons.equal-effort", {
				at,
				arm: formatMass(fact(evidence, "armMassG"), reader),
				ball: formatMass(fact(evidence, "ballMassG"), reader),
			});
		case "ring-measured":
		case "ring-estimated":
			return say("reasons.ring", {
				at,
				count: fact(evidence, "readingCount"),
				circle: mm("circleMm", "diameter"),
				closure: inSentence.closure(
					String(evidence.facts?.closure) as ClosureWish,
					reader,
				),
				grip: mm("gripFromButtMm"),
			});
		case "balance-of-build":
			return say("reasons.balance-of-build", { at });
		case "balance-natural":
			return say("reasons.balance-natural", { at });
		default:
			return presentComplaint(id, evidence, at, reader);
	}
}

function presentComplaint(
	id: FigureId,
	evidence: Evidence,
	at: string,
	reader: Reader,
): string {
	return reader.say("reasons.complained", {
		at,
		present: formatFigure(id, fact(evidence, "present"), reader),
		complaint: complaintName(evidence.code, reader),
		step: formatStep(id, evidence.value - fact(evidence, "present"), reader),
	});
}

const PRESENT = "present-";

/** What is said against the present cue, in the middle of a sentence; one without words as it is. */
export function complaintName(code: string, reader: Reader): string {
	if (!code.startsWith(PRESENT)) throw new TypeError(`no sentence for ${code}`);
	const complaint = code.slice(PRESENT.length);
	return sayOr(
		`reasons.complaint.${complaint}`,
		complaint.replaceAll("-", " "),
		reader,
	);
}
