import type { Against, Argued, Reason } from "@/lib/advice/argument";
import { CRITERION_IDS, type CriterionId } from "@/lib/advice/criteria";
import type { LayoutId, SpliceId, TaperShapeId } from "@/lib/cue/design";
import type { Reader } from "@/lib/words/reader";
import { criterionName } from "./criterion-words";
import { formatLength, formatMass, formatPercent } from "./figures";
import { choiceLabel, inSentence } from "./labels";
import {
	complaintName,
	type FigureId,
	formatFigure,
	reasonSentence,
} from "./reasons";
import { sayOr } from "./say-or";

/** For and against one figure or choice of the recommended cue. */
export interface ArgumentWords {
	readonly choice: Argued["choice"];
	readonly label: string;
	readonly value: string;
	readonly forPlayer: string;
	readonly forBench: string;
	readonly against: string;
}

const CHOICE_FIELDS = {
	"butt-wood": "wishButtWood",
	splice: "wishSplice",
	layout: "wishLayout",
	taper: "wishTaper",
} as const;

type ChoiceName = keyof typeof CHOICE_FIELDS;
const isChoice = (choice: Argued["choice"]): choice is ChoiceName =>
	choice in CHOICE_FIELDS;

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

const told = (
	choice: Argued["choice"],
	value: number | string,
	reader: Reader,
): string =>
	isChoice(choice) || typeof value === "string"
		? midSentence(choice, value, reader)
		: formatFigure(choice, value, reader);

export function argumentWords(argued: Argued, reader: Reader): ArgumentWords {
	const { choice, value, forPlayer, against } = argued;
	return {
		choice,
		label: isChoice(choice) ? reader.say(`against.choice.${choice}`) : choice,
		value: isChoice(choice)
			? nameOf(choice, value, reader)
			: told(choice, value, reader),
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
	const { say } = reader;
	const instead = reason.facts.instead;
	const other =
		instead === undefined ? "" : midSentence(choice, instead, reader);
	switch (reason.code) {
		case "wish":
			return say("against.player.wish");
		case "only-one-offered":
			return say("against.player.only-one-offered");
		case "no-other-reaches-weight":
			return say("against.player.no-other-reaches-weight");
		case "no-difference":
			return say("against.player.no-difference", { other });
		default:
			return say("against.player.better", {
				other,
				criterion: criterionName(criterionIn(reason.code), reader),
				shares: shares(
					{ from: numberOf(reason, "from"), to: numberOf(reason, "to") },
					reader,
				),
			});
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
	reader.say("against.shares", {
		to: formatPercent(to, reader),
		from: formatPercent(from, reader),
	});

function balanceSentence(reason: Reason, reader: Reader): string {
	const worth = formatPercent(numberOf(reason, "desirability"), reader);
	const mm = (name: string) => formatLength(numberOf(reason, name), reader);
	return reason.facts.from === "present-cue"
		? reader.say("against.balanceFromCue", { wanted: mm("wanted"), worth })
		: reader.say("against.balanceUsual", {
				low: mm("low"),
				high: mm("high"),
				worth,
			});
}

function benchSentence(
	{ choice, value, forBench }: Argued,
	reader: Reader,
): string {
	const { say } = reader;
	const fact = (name: string): number => {
		const found = forBench[name];
		if (typeof found !== "number")
			throw new TypeError(`${choice} lacks the bench fact ${name}`);
		return found;
	};
	const fine = (name: string) => formatLength(fact(name), reader, "bench");
	const station = (name: string) => formatLength(fact(name), reader, "station");
	const metal = (name: string) => formatMass(fact(name), reader, "added");
	switch (choice) {
		case "length":
			return say("against.bench.length", {
				length: station("lengthMm"),
				step: fine("stepMm"),
			});
		case "mass": {
			const natural = formatMass(fact("naturalMassG"), reader);
			return fact("metalMassG") > 0
				? say("against.bench.massAdded", {
						natural,
						bore: fine("boreDiameterMm"),
						depth: station("boreDepthMm"),
						out: metal("drilledOutMassG"),
						metal: metal("metalMassG"),
					})
				: say("against.bench.massNothing", { natural });
		}
		case "butt":
			return say("against.bench.butt", {
				butt: fine("buttDiameterMm"),
				grip: station("gripStationMm"),
			});
		case "tip":
			return say("against.bench.tip", { tip: fine("tipDiameterMm") });
		case "balance": {
			const before = station("naturalBalanceFromButtMm");
			return fact("slugLengthMm") > 0
				? say("against.bench.balanceMetal", {
						slug: station("slugLengthMm"),
						place: station("slugFromButtMm"),
						before,
						after: station("balanceAfterFromButtMm"),
					})
				: say("against.bench.balanceNothing", { before });
		}
		default:
			return say("against.bench.choice", {
				choice: say(`against.choice.${choice}`),
				value: nameOf(choice, value, reader),
			});
	}
}

/** Below this a share would be written as nothing. */
const NO_SAY = 0.005;

function againstSentence(
	choice: Argued["choice"],
	against: Against | null,
	reader: Reader,
): string {
	const { say } = reader;
	if (against === null) return say("against.nothing");
	if (against.kind === "criterion") {
		const { criterion, moveTo, from, to, overallCost } = against;
		return say("against.moved", {
			value: told(choice, moveTo, reader),
			criterion: criterionName(criterion, reader),
			shares: shares({ from, to }, reader),
			whole:
				overallCost > 0.0005
					? say("against.wouldLose", {
							cost: formatPercent(overallCost, reader, 1),
						})
					: say("against.wouldLoseNothing"),
		});
	}
	const { code, value, sd, shareFraction } = against;
	return say("against.alone", {
		evidence: evidenceName(code, reader),
		pull: isChoice(choice)
			? String(value)
			: say("against.pull", {
					value: formatFigure(choice, value, reader),
					spread: spread(choice, sd, reader),
				}),
		weight:
			shareFraction < NO_SAY
				? say("against.noSay")
				: say("against.weight", {
						share: formatPercent(shareFraction, reader),
					}),
	});
}

const spread = (id: FigureId, sd: number, reader: Reader): string =>
	id === "length" && reader.system === "trade"
		? formatLength(sd, reader, "station")
		: formatFigure(id, sd, reader);

/** What a piece of evidence is called; a code without a name is shown as it is, never hidden. */
export const evidenceName = (code: string, reader: Reader): string => {
	const name = sayOr(`against.evidence.${code}`, "", reader);
	if (name !== "") return name;
	return code.startsWith("present-")
		? reader.say("against.complaint", {
				complaint: complaintName(code, reader),
			})
		: code;
};
