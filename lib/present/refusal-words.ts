import type { SpliceId } from "@/lib/cue/design";
import type { Refusal } from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import type { MessageKey, Reader } from "@/lib/words/reader";
import { numberIn } from "./caution-words";
import { CHECK_REFUSAL_WORDS } from "./check-refusal-words";
import { formatLength, formatMass, formatNumber, formatRatio } from "./figures";
import { JOB_REFUSAL_WORDS } from "./job-refusal-words";
import { inSentence, ruleLabel, woodName } from "./labels";
import { capital, joinedAnd } from "./lists";
import { SETTING_REFUSAL_WORDS } from "./setting-refusal-words";
import { waysOut } from "./ways-out";

type Words = (refusal: Refusal, reader: Reader) => string;
type Simple =
	| "alreadyWeighted"
	| "oneFigureOnly"
	| "noJointInLayout"
	| "oneTooMany"
	| "contradiction"
	| "nothingCounts";

const simply =
	(key: Simple): Words =>
	(_, { say }) =>
		say(`refusal.${key}`);

/** A part of a catalogue or of a design. */
const partName = (name: string, reader: Reader): string => {
	const key = `refusal.part.${name}` as MessageKey;
	return reader.say.has(key) ? reader.say(key) : quantityName(name, reader);
};

const wood = (id: Refusal["value"], reader: Reader): string =>
	woodName(id as WoodId, reader);

const bound = (value: number | undefined): number => {
	if (value === undefined) throw new TypeError("a refusal lacks its bound");
	return value;
};

const g = (value: number, reader: Reader) => formatMass(value, reader);
const mm = (value: number, reader: Reader) => formatLength(value, reader);

/** Sentences by refusal code: what was asked, why it cannot be, and the nearest that can where it is known. */
export const REFUSAL_WORDS: Readonly<Record<string, Words>> = {
	"out-of-range": (refusal, reader) => boundText(refusal, reader),
	missing: ({ field }, reader) =>
		reader.say("refusal.missing", { what: capitalName(field, reader) }),
	"not-whole": ({ field, value }, reader) =>
		reader.say("refusal.notWhole", {
			what: capitalName(field, reader),
			got:
				typeof value === "number"
					? formatNumber(value, reader, 2)
					: String(value),
		}),
	// The weight, and what is wanted of where it sits.
	"weight-below-natural": ({ value, facts }, reader) =>
		reader.say("refusal.weightBelowNatural", {
			wanted: g(Number(value), reader),
			natural: g(numberIn(facts, "naturalMassG"), reader),
			nearest: g(numberIn(facts, "nearestMassG"), reader),
		}),
	"weight-above-bore": ({ value, facts }, reader) =>
		reader.say("refusal.weightAboveBore", {
			wanted: g(Number(value), reader),
			nearest: g(numberIn(facts, "nearestMassG"), reader),
		}),
	"weight-out-of-bore": ({ value, min }, reader) =>
		reader.say("refusal.weightOutOfBore", {
			wanted: g(Number(value), reader),
			natural: g(bound(min), reader),
		}),
	"already-weighted": simply("alreadyWeighted"),
	"one-figure-only": simply("oneFigureOnly"),
	"balance-out-of-reach": ({ value, facts }, reader) =>
		reader.say("refusal.balanceOutOfReach", {
			wanted: mm(Number(value), reader),
			mass: g(numberIn(facts, "wantedMassG"), reader),
			nearest: mm(numberIn(facts, "nearestBalanceFromButtMm"), reader),
		}),
	"inertia-out-of-reach": ({ value, facts }, reader) =>
		reader.say("refusal.inertiaOutOfReach", {
			wanted: formatNumber(Number(value), reader, 4),
			mass: g(numberIn(facts, "wantedMassG"), reader),
			nearest: formatNumber(numberIn(facts, "nearestInertiaKgM2"), reader, 4),
		}),
	"not-this-build": ({ value, facts }, reader) =>
		reader.say("refusal.notThisBuild", {
			expectedMass: g(numberIn(facts, "expectedMassG"), reader),
			expectedBalance: mm(numberIn(facts, "expectedBalanceFromButtMm"), reader),
			mass: g(Number(value), reader),
			balance: mm(numberIn(facts, "balanceFromButtMm"), reader),
		}),
	"not-explained": ({ value, facts }, reader) =>
		reader.say("refusal.notExplained", {
			mass: g(Number(value), reader),
			balance: mm(numberIn(facts, "balanceFromButtMm"), reader),
			nearestMass: g(numberIn(facts, "nearestMassG"), reader),
			nearestBalance: mm(numberIn(facts, "nearestBalanceFromButtMm"), reader),
		}),
	"rule-broken": (refusal, reader) =>
		reader.say("refusal.ruleBroken", {
			rule: ruleLabel(String(refusal.facts?.rule), reader),
			bound: boundText(refusal, reader),
		}),
	// Woods, joints and splices.
	"wood-not-for-part": ({ value, facts }, reader) =>
		reader.say("refusal.woodNotForPart", {
			wood: wood(value, reader),
			part: partName(String(facts?.part), reader),
		}),
	"no-joint-in-layout": simply("noJointInLayout"),
	"joints-too-close": ({ value, max }, reader) =>
		reader.say("refusal.jointsTooClose", {
			wanted: mm(Number(value), reader),
			most: mm(bound(max), reader),
		}),
	"hand-splice-only": ({ field, value }, reader) =>
		reader.say("refusal.handSpliceOnly", {
			what: capitalName(field, reader),
			splice: reader.say.has(`midSentence.splice.${value as SpliceId}`)
				? inSentence.splice(value as SpliceId, reader)
				: String(value),
		}),
	"one-too-many": simply("oneTooMany"),
	"too-few": ({ field, value, min }, reader) =>
		reader.say("refusal.tooFew", {
			what: capitalName(field, reader),
			count: String(value ?? 0),
			least: String(min ?? 1),
		}),
	// The stance.
	contradiction: simply("contradiction"),
	"bridge-out-of-reach": ({ value, max, facts }, reader) =>
		reader.say("refusal.bridgeOutOfReach", {
			stature: formatLength(numberIn(facts, "statureMm"), reader, "body"),
			cloth: mm(numberIn(facts, "clothHeightMm"), reader),
			times: formatRatio(Number(value), reader),
			most: formatNumber(bound(max), reader),
		}),
	// The price list and what the workshop offers.
	"not-in-price-list": ({ field, value }, reader) =>
		reader.say("refusal.notInPriceList", {
			wood: wood(value, reader),
			part: field === "shaftWood" ? "shaft" : "butt",
		}),
	"nothing-offered": ({ field }, reader) =>
		reader.say("refusal.nothingOffered", {
			part: partName(field.split(".").at(-1) ?? field, reader),
		}),
	// The search.
	"nothing-counts": simply("nothingCounts"),
	"nothing-can-be-built": ({ facts }, { say }) =>
		numberIn(facts, "waysOut") === 0
			? say("refusal.nothingCanBeBuilt")
			: say("refusal.nothingUnlessOne"),
	relax: (refusal, reader) => {
		const [way] = waysOut([refusal], reader);
		if (way === undefined) throw new TypeError("a way out without words");
		return way.text;
	},
	// Trials.
	"rack-too-small": ({ value, min }, { say }) =>
		say("refusal.rackTooSmall", {
			count: Number(value),
			least: String(min ?? 2),
		}),
	"same-cue-twice": ({ value }, { say }) =>
		say("refusal.sameCueTwice", { cue: String(value) }),
	"unknown-cue": ({ value }, { say }) =>
		say("refusal.unknownCue", { cue: String(value) }),
	...SETTING_REFUSAL_WORDS,
	...JOB_REFUSAL_WORDS,
	...CHECK_REFUSAL_WORDS,
};

function inUnits(field: string, value: number, reader: Reader): string {
	if (field.endsWith("Mm"))
		return formatLength(
			value,
			reader,
			/diameter/i.test(field) ? "diameter" : "length",
		);
	if (field.endsWith("G")) return formatMass(value, reader);
	return formatNumber(value, reader, Number.isInteger(value) ? 0 : 2);
}

/** "design.buttDiameterMm" is named "butt diameter"; what has no name is read off its field. */
function quantityName(field: string, { say }: Reader): string {
	const name =
		field
			.split(".")
			.filter((one) => !/^\d+$/.test(one))
			.at(-1) ?? field;
	const key = `quantity.${name}` as MessageKey;
	return say.has(key)
		? say(key)
		: name
				.replace(/(Mm|G|Deg|Years|Ratio)$/, "")
				.replace(/([A-Z])/g, " $1")
				.toLowerCase()
				.trim();
}

const capitalName = (field: string, reader: Reader): string =>
	capital(quantityName(field, reader));

function boundText(
	{ field, value, min, max }: Refusal,
	reader: Reader,
): string {
	const { say } = reader;
	const bounds = [
		min === undefined
			? ""
			: say("refusal.atLeast", { min: inUnits(field, min, reader) }),
		max === undefined
			? ""
			: say("refusal.atMost", { max: inUnits(field, max, reader) }),
	].filter(Boolean);
	return say("refusal.bound", {
		what: capitalName(field, reader),
		got:
			typeof value === "number"
				? inUnits(field, value, reader)
				: (value ?? say("notice.nothing")),
		has: bounds.length === 0 ? "none" : "some",
		bounds: joinedAnd(bounds, reader),
	});
}
