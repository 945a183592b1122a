import type { Against, Argued, Reason } from "@/lib/advice/argument";
import { CRITERION_IDS, type CriterionId } from "@/lib/advice/criteria";
import type { LayoutId, SpliceId, TaperShapeId } from "@/lib/cue/design";
import type { Reader } from "@/lib/words/reader";
import { CRITERION_WORDS } from "./criterion-words";
import { formatLength, formatMass, formatPercent } from "./figures";
import { choiceLabel, inSentence } from "./labels";
import { type FigureId, formatFigure, reasonSentence } from "./reasons";

/** For and against one figure or choice of the recommended cue. */
export interface ArgumentWords {
	readonly choice: Argued["choice"];
	readonly label: string;
	readonly value: string;
	readonly forPlayer: string;
	readonly forBench: string;
	readonly against: string;
}

const CHOICE_LABELS = {
	"butt-wood": "Butt wood",
	splice: "Splice",
	layout: "Pieces",
	taper: "Taper",
} as const;

const CHOICE_FIELDS = {
	"butt-wood": "wishButtWood",
	splice: "wishSplice",
	layout: "wishLayout",
	taper: "wishTaper",
} as const;

type ChoiceName = keyof typeof CHOICE_LABELS;
const isChoice = (choice: Argued["choice"]): choice is ChoiceName =>
	choice in CHOICE_LABELS;

const nameOf = (
	choice: Argued["choice"],
	value: number | string,
	reader: Reader,
): string =>
	isChoice(choice)
		? choiceLabel(CHOICE_FIELDS[choice], String(value), reader)
		: String(value);

/** A wood keeps its capital, a kind of work does not. */
const midSentence = (
	choice: Argued["choice"],
	value: number | string,
	reader: Reader,
): string => {
	switch (choice) {
		case "splice":
			return inSentence.splice(value as SpliceId, reader);
		case "layout":
			return inSentence.layout(value as LayoutId, reader);
		case "taper":
			return inSentence.taper(value as TaperShapeId, reader);
		default:
			return nameOf(choice, value, reader);
	}
};

const say = (
	choice: Argued["choice"],
	value: number | string,
	reader: Reader,
): string =>
	isChoice(choice) || typeof value === "string"
		? midSentence(choice, value, reader)
		: formatFigure(choice, value, reader);

const lower = (text: string): string =>
	text.charAt(0).toLowerCase() + text.slice(1);

export const criterionName = (id: CriterionId): string =>
	lower(CRITERION_WORDS[id].name);

export function argumentWords(argued: Argued, reader: Reader): ArgumentWords {
	const { choice, value, forPlayer, against } = argued;
	return {
		choice,
		label: isChoice(choice) ? CHOICE_LABELS[choice] : choice,
		value: isChoice(choice)
			? nameOf(choice, value, reader)
			: say(choice, value, reader),
		forPlayer: playerSentence(choice, forPlayer, reader),
		forBench: benchSentence(argued, reader),
		against: againstSentence(choice, against, reader),
	};
}

const numberOf = ({ code, facts }: Reason, name: string): number => {
	const value = facts[name];
	if (typeof value !== "number")
		throw new TypeError(`reason ${code} lacks the fact ${name}`);
	return value;
};

function playerSentence(
	choice: Argued["choice"],
	reason: Reason,
	reader: Reader,
): string {
	if (!isChoice(choice)) {
		if (reason.code === "serves-balance")
			return balanceSentence(reason, reader);
		return reasonSentence(
			choice,
			{
				code: reason.code,
				value: numberOf(reason, "value"),
				sd: numberOf(reason, "sd"),
				basis: reason.basis,
				sources: reason.sources,
				facts: reason.facts,
			},
			reader,
		);
	}
	const instead = reason.facts.instead;
	const other =
		instead === undefined ? "" : midSentence(choice, instead, reader);
	switch (reason.code) {
		case "wish":
			return "You asked for it.";
		case "only-one-offered":
			return "The workshop’s list offers no other.";
		case "no-other-reaches-weight":
			return "No other on offer can be brought to this weight.";
		case "no-difference":
			return `It serves as well as the nearest other, ${other}.`;
		default: {
			const id = criterionIn(reason.code);
			return `Against the nearest other, ${other}, it serves ${criterionName(id)} better: ${shares({ from: numberOf(reason, "from"), to: numberOf(reason, "to") }, reader)}.`;
		}
	}
}

function criterionIn(code: string): CriterionId {
	const id = CRITERION_IDS.find((one) => code === `better-${one}`);
	if (id === undefined) throw new TypeError(`no sentence for ${code}`);
	return id;
}

const shares = (
	{ from, to }: { from: number; to: number },
	reader: Reader,
): string =>
	`${formatPercent(to, reader)} of the ideal instead of ${formatPercent(from, reader)}`;

function balanceSentence(reason: Reason, reader: Reader): string {
	const { from } = reason.facts;
	const worth = formatPercent(numberOf(reason, "desirability"), reader);
	if (from === "present-cue")
		return `The present cue’s balance, with what is said of it, asks for ${formatLength(numberOf(reason, "wanted"), reader)}; this serves it to ${worth}.`;
	return `Usual for this length is ${formatLength(numberOf(reason, "low"), reader)} to ${formatLength(numberOf(reason, "high"), reader)}; this serves it to ${worth}.`;
}

function benchSentence(
	{ choice, value, forBench }: Argued,
	reader: Reader,
): string {
	const fact = (name: string): number => {
		const found = forBench[name];
		if (typeof found !== "number")
			throw new TypeError(`${choice} lacks the bench fact ${name}`);
		return found;
	};
	const fine = (name: string) => formatLength(fact(name), reader, "bench");
	const station = (name: string) => formatLength(fact(name), reader, "station");
	switch (choice) {
		case "length":
			return `Cut to ${station("lengthMm")}, in steps of ${fine("stepMm")}.`;
		case "mass":
			return fact("metalMassG") > 0
				? `The wood weighs about ${formatMass(fact("naturalMassG"), reader)}; bore ${fine("boreDiameterMm")} wide and ${station("boreDepthMm")} deep, which takes out ${formatMass(fact("drilledOutMassG"), reader, "added")}, and put in ${formatMass(fact("metalMassG"), reader, "added")} of metal.`
				: `The wood weighs about ${formatMass(fact("naturalMassG"), reader)}; nothing is added.`;
		case "butt":
			return `Turn the butt to ${fine("buttDiameterMm")}; the grip hand is at station ${station("gripStationMm")} from the tip.`;
		case "tip":
			return `Turn ferrule and tip to ${fine("tipDiameterMm")}.`;
		case "balance":
			return fact("slugLengthMm") > 0
				? `Set ${station("slugLengthMm")} of metal ${station("slugFromButtMm")} from the butt end: the balance moves from ${station("naturalBalanceFromButtMm")} to ${station("balanceAfterFromButtMm")}.`
				: `No metal: the wood balances ${station("naturalBalanceFromButtMm")} from the butt end.`;
		default:
			return `${CHOICE_LABELS[choice]}: ${nameOf(choice, value, reader)}.`;
	}
}

/** Below this a share would be written as nothing. */
const NO_SAY = 0.005;

function againstSentence(
	choice: Argued["choice"],
	against: Against | null,
	reader: Reader,
): string {
	if (against === null) return "Nothing here speaks against it.";
	if (against.kind === "criterion") {
		const { criterion, moveTo, from, to, overallCost } = against;
		const whole =
			overallCost > 0.0005
				? `as a whole the cue would lose ${formatPercent(overallCost, reader, 1)}`
				: "as a whole the cue would lose next to nothing";
		return `With ${say(choice, moveTo, reader)}, ${criterionName(criterion)} would be at ${shares({ from, to }, reader)}; ${whole}.`;
	}
	const { code, value, sd, shareFraction } = against;
	const pull = isChoice(choice)
		? String(value)
		: `${formatFigure(choice, value, reader)}, give or take ${spread(choice, sd, reader)}`;
	const weight =
		shareFraction < NO_SAY
			? "beside the wish it has no say"
			: `it has ${formatPercent(shareFraction, reader)} of the weight`;
	return `${evidenceName(code)} alone points to ${pull}; ${weight}.`;
}

const spread = (id: FigureId, sd: number, reader: Reader): string =>
	id === "length" && reader.system === "trade"
		? formatLength(sd, reader, "station")
		: formatFigure(id, sd, reader);

/** What a piece of evidence is called; a code without a name is shown as it is, never hidden. */
const EVIDENCE_NAMES: Readonly<Record<string, string>> = {
	reach: "The stance",
	"usual-length": "What players of this height usually have",
	"usual-mass": "What is usual for the game",
	"usual-butt": "What butts are usually asked for",
	"usual-tip": "What is usual for the game",
	"usual-tip-for-level": "What is usual for the game and level",
	"equal-effort": "The fastest ball for the same effort",
	"ring-measured": "The measured grip circle",
	"ring-estimated": "The grip circle as guessed from the hand",
	"present-used": "The present cue, which draws no complaint,",
	"present-liked": "The present cue, which is liked for it,",
};

export const evidenceName = (code: string): string =>
	EVIDENCE_NAMES[code] ??
	(code.startsWith("present-")
		? `The complaint that the present cue is ${code.slice("present-".length).replaceAll("-", " ").replace("tip ", "")}`
		: code);
