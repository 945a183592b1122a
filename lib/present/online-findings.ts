import type { SpliceId } from "@/lib/cue/design";
import { ONLINE_QUESTIONS, type OnlineProblem } from "@/lib/forms/online-cue";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import type { Finding } from "@/lib/workshop/online";
import type { OnlineField } from "@/lib/workshop/online-choices";
import { numberIn } from "./caution-words";
import { formatDay } from "./dates";
import { formatLength, formatMass } from "./figures";
import { gameName, inSentence, woodName } from "./labels";
import { type Currency, formatAmount } from "./money";
import { refusalView } from "./notices";
import { onlineValue } from "./online-names";

type Words = (finding: Finding, reader: Reader) => string;

const bound = (value: number | undefined): number => {
	if (value === undefined) throw new TypeError("a finding lacks its bound");
	return value;
};

/** A figure of the finding's own choice. */
const own = ({ field }: Finding, value: number, reader: Reader): string =>
	onlineValue(field, value, reader);

const wanted = (finding: Finding, reader: Reader): string =>
	finding.value === null
		? ""
		: onlineValue(finding.field, finding.value, reader);

const inside = (finding: Finding, reader: Reader): string =>
	finding.value === null
		? ""
		: onlineValue(finding.field, finding.value, reader, "inside");

const range: Words = (finding, reader) => {
	const { min, max, value } = finding;
	// One end is what was missed; the other end is a limit of the models, not of this cue.
	if (min !== undefined && max !== undefined)
		return reader.say("online.refused.out-of-range", {
			wanted: wanted(finding, reader),
			low: own(finding, min, reader),
			high: own(finding, max, reader),
		});
	if (typeof value !== "number" || min === undefined)
		throw new TypeError(`a range of ${finding.field} without its ends`);
	return reader.say("online.refused.at-least", {
		wanted: wanted(finding, reader),
		low: own(finding, min, reader),
	});
};

const notPriced: Words = (finding, reader) =>
	reader.say("online.refused.not-priced", { what: inside(finding, reader) });

/** One sentence for each thing that keeps a cue from being made. */
const REFUSED: Readonly<Record<string, Words>> = {
	"weight-below-natural": (finding, reader) =>
		reader.say("online.refused.weight-below-natural", {
			wanted: wanted(finding, reader),
			natural: formatMass(numberIn(finding.facts, "naturalMassG"), reader),
		}),
	"weight-above-bore": (finding, reader) =>
		reader.say("online.refused.weight-above-bore", {
			wanted: wanted(finding, reader),
			// Down to what can be had: rounded up it would be refused again.
			most: formatMass(
				Math.floor(numberIn(finding.facts, "nearestMassG")),
				reader,
			),
		}),
	"balance-out-of-reach": (finding, reader) =>
		reader.say("online.refused.balance-out-of-reach", {
			wanted: wanted(finding, reader),
			mass: formatMass(numberIn(finding.facts, "wantedMassG"), reader),
			low: formatLength(bound(finding.min), reader),
			high: formatLength(bound(finding.max), reader),
		}),
	"rule-broken": (finding, reader) => {
		const { min, max, facts } = finding;
		const key = `online.refused.rule.${String(facts?.rule)}`;
		if (!reader.say.has(key as never))
			throw new TypeError(`the rule ${String(facts?.rule)} has no words`);
		return reader.say(key as "online.refused.rule.cue-length", {
			game: gameName(facts?.gameId as GameId, reader),
			bound: ruleBound(finding, bound(min ?? max), reader),
		});
	},
	"not-in-catalogue": (finding, reader) =>
		reader.say("online.refused.not-in-catalogue", {
			what: inside(finding, reader),
		}),
	"out-of-catalogue": (finding, reader) =>
		reader.say("online.refused.out-of-catalogue", {
			low: own(finding, bound(finding.min), reader),
			high: own(finding, bound(finding.max), reader),
		}),
	"out-of-range": range,
	"not-whole": (_, reader) => reader.say("online.refused.not-whole"),
	"wood-not-for-part": (finding, reader) =>
		reader.say("online.refused.wood-not-for-part", {
			what: wanted(finding, reader),
		}),
	"hand-splice-only": (finding, reader) =>
		reader.say("online.refused.hand-splice-only", {
			splice: inSentence.splice(finding.value as SpliceId, reader),
		}),
	"no-joint-in-layout": (_, reader) =>
		reader.say("online.refused.no-joint-in-layout"),
	"joints-too-close": (_, reader) =>
		reader.say("online.refused.joints-too-close"),
	"case-too-short": ({ facts }, reader) =>
		reader.say("online.refused.case-too-short", {
			holds: formatLength(numberIn(facts, "holdsMm"), reader),
			piece: formatLength(numberIn(facts, "pieceMm"), reader),
		}),
	"veneers-too-thick": ({ value, max, facts }, reader) =>
		reader.say("online.refused.veneers-too-thick", {
			wanted: formatLength(Number(value), reader, "gap"),
			butt: formatLength(numberIn(facts, "buttDiameterMm"), reader, "diameter"),
			most: formatLength(bound(max), reader, "gap"),
		}),
	"butt-too-thin": (_, reader) => reader.say("online.refused.butt-too-thin"),
	"cannot-be-planed": (_, reader) =>
		reader.say("online.refused.cannot-be-planed"),
	"not-in-price-list": notPriced,
	"extra-not-priced": notPriced,
};

/** A rule may bound what is no choice of its own: the ferrule's length. */
const ruleBound = (
	{ field }: Finding,
	value: number,
	reader: Reader,
): string =>
	field === "massG"
		? formatMass(value, reader)
		: formatLength(
				value,
				reader,
				field === "tipDiameterMm" ? "diameter" : "length",
			);

/** The codes that have words here, for the test that holds them to what can come up. */
export const REFUSED_CODES: readonly string[] = Object.keys(REFUSED);

const CAUTIONS: Readonly<Record<string, Words>> = {
	"protected-wood": (finding, reader) =>
		reader.say("online.caution.protected-wood", listed(finding, reader)),
	"protected-wood-border": (finding, reader) =>
		reader.say("online.caution.protected-wood-border", listed(finding, reader)),
	"natural-above-wanted": ({ facts }, reader) =>
		reader.say("online.caution.natural-above-wanted", {
			excess: formatMass(numberIn(facts, "excessG"), reader),
		}),
};

const listed = ({ value, facts }: Finding, reader: Reader) => ({
	wood: woodName(value as WoodId, reader),
	appendix: String(facts?.appendix),
	date: formatDay(String(facts?.dataDate), reader),
});

/** One sentence: why a choice is refused, what is to be known of it, or what it costs more. */
export function findingText(
	finding: Finding,
	money: Currency,
	reader: Reader,
): string {
	if (finding.kind === "costs-more") return dearerText(finding, money, reader);
	const words = REFUSED[finding.code] ?? CAUTIONS[finding.code];
	return words === undefined
		? refusalView(finding, reader).text
		: words(finding, reader);
}

function dearerText(
	{ field, facts }: Finding,
	money: Currency,
	reader: Reader,
): string {
	const { say } = reader;
	const moreMinor = numberIn(facts, "moreMinor");
	const moreDays = numberIn(facts, "moreDays");
	const usual =
		facts?.usual === undefined
			? "none"
			: onlineValue(field, facts.usual, reader, "inside");
	const key = `online.dearer.why.${field}`;
	if (!say.has(key as never)) throw new TypeError(`no words why ${field}`);
	const why = say(key as "online.dearer.why.layout");
	const days = moreDays > 0 ? daysText(moreDays, reader) : "none";
	return moreMinor > 0
		? say("online.dearer.amount", {
				amount: formatAmount(moreMinor, money, reader),
				usual,
				days,
				why,
			})
		: say("online.dearer.time", { days, usual, why });
}

/** Working days, up to the next whole one where it is more than half a day. */
const daysText = (days: number, { say }: Reader): string =>
	days <= 0.5
		? say("online.dearer.half")
		: say("online.dearer.days", { days: Math.ceil(days) });

/** Why an answer cannot be read. */
export function onlineProblemText(
	{ field, code, text, min, max }: OnlineProblem,
	reader: Reader,
): string {
	const { kind } = ONLINE_QUESTIONS[field];
	const write = (value: number | undefined) =>
		value === undefined ? "" : onlineValue(field, value, reader);
	const told = { text: text.slice(0, 40), low: write(min), high: write(max) };
	return kind === "choice" || kind === "named" || kind === "yes-no"
		? reader.say("online.problem.not-a-choice", told)
		: reader.say(`online.problem.${code}`, told);
}

/** The choices a list of findings is about, each once, in the order of the form. */
export const fieldsOf = (
	findings: readonly Finding[],
): readonly OnlineField[] => [...new Set(findings.map(({ field }) => field))];
