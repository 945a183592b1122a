import type { Refusal } from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import { numberIn } from "./caution-words";
import { formatLength, formatMass, formatNumber, formatRatio } from "./figures";
import { JOB_REFUSAL_WORDS } from "./job-refusal-words";
import { SPLICE_LABELS, woodName } from "./labels";
import { SETTING_REFUSAL_WORDS } from "./setting-refusal-words";
import { waysOut } from "./ways-out";

/** The published equipment rules a build is checked against. */
export const RULE_LABELS: Readonly<Record<string, string>> = {
	"cue-length": "Length of the cue",
	"cue-weight": "Weight of the cue",
	"tip-width": "Width of the tip",
	"metal-ferrule-length": "Length of a metal ferrule",
	"tapered-form": "Tapered form",
};

/** The parts of a catalogue and of a design that a refusal may name. */
const PARTS: Readonly<Record<string, string>> = {
	shaftWoods: "shaft woods",
	buttWoods: "butt woods",
	splices: "splices",
	layouts: "layouts",
	taperShapes: "taper shapes",
	shaft: "the shaft",
	butt: "the butt",
};

const part = (name: string): string => PARTS[name] ?? plainField(name);

const wood = (id: Refusal["value"]): string => woodName(id as WoodId);

const bound = (value: number | undefined): number => {
	if (value === undefined) throw new TypeError("a refusal lacks its bound");
	return value;
};

type Words = (refusal: Refusal, reader: Reader) => string;

/** Sentences by refusal code: what was asked, why it cannot be, and the nearest that can where it is known. */
export const REFUSAL_WORDS: Readonly<Record<string, Words>> = {
	"out-of-range": ({ field, value, min, max }, reader) =>
		boundText(field, value, { min, max }, reader),
	missing: ({ field }) =>
		`${capital(plainField(field))} is missing, and cannot be guessed for this.`,
	"not-whole": ({ field, value }, reader) =>
		`${capital(plainField(field))} is ${typeof value === "number" ? formatNumber(value, reader, 2) : value}; it has to be a whole number.`,
	// The weight, and what is wanted of where it sits.
	"weight-below-natural": ({ value, facts }, reader) =>
		`${formatMass(Number(value), reader)} cannot be built: these woods weigh about ${formatMass(numberIn(facts, "naturalMassG"), reader)} with nothing added. The lightest this build can promise is ${formatMass(numberIn(facts, "nearestMassG"), reader)}.`,
	"weight-above-bore": ({ value, facts }, reader) =>
		`${formatMass(Number(value), reader)} cannot be reached: the bore that leaves sound wood holds enough for ${formatMass(numberIn(facts, "nearestMassG"), reader)} at most.`,
	"weight-out-of-bore": ({ value, min }, reader) =>
		`${formatMass(Number(value), reader)} cannot be reached with the added weight where it was asked for: with nothing added this build weighs ${formatMass(bound(min), reader)}, and the bore has no room for the rest there.`,
	"already-weighted": () =>
		"This cue already holds added weight: its weight can be planned only from the build without it.",
	"one-figure-only": () =>
		"Balance point and inertia cannot both be asked for: the added weight settles one of the two.",
	"balance-out-of-reach": ({ value, facts }, reader) =>
		`A balance point ${formatLength(Number(value), reader)} from the butt end cannot be had at ${formatMass(numberIn(facts, "wantedMassG"), reader)}: the nearest is ${formatLength(numberIn(facts, "nearestBalanceFromButtMm"), reader)}.`,
	"inertia-out-of-reach": ({ value, facts }, reader) =>
		`An inertia of ${formatNumber(Number(value), reader, 4)} kg m² cannot be had at ${formatMass(numberIn(facts, "wantedMassG"), reader)}: the nearest is ${formatNumber(numberIn(facts, "nearestInertiaKgM2"), reader, 4)} kg m².`,
	"not-this-build": ({ value, facts }, reader) =>
		`A cue of this build weighs about ${formatMass(numberIn(facts, "expectedMassG"), reader)} and balances ${formatLength(numberIn(facts, "expectedBalanceFromButtMm"), reader)} from the butt end; the one weighed has ${formatMass(Number(value), reader)} and ${formatLength(numberIn(facts, "balanceFromButtMm"), reader)}. It must be built another way, or a reading is off.`,
	"not-explained": ({ value, facts }, reader) =>
		`No usual build explains ${formatMass(Number(value), reader)} with a balance point ${formatLength(numberIn(facts, "balanceFromButtMm"), reader)} from the butt end: the nearest has ${formatMass(numberIn(facts, "nearestMassG"), reader)} and ${formatLength(numberIn(facts, "nearestBalanceFromButtMm"), reader)}. Check length, weight and balance.`,
	"rule-broken": ({ field, value, min, max, facts }, reader) =>
		`${RULE_LABELS[String(facts?.rule)] ?? String(facts?.rule)}: ${boundText(field, value, { min, max }, reader)}`,
	// Woods, joints and splices.
	"wood-not-for-part": ({ value, facts }) =>
		`${wood(value)} does not serve for ${part(String(facts?.part))}.`,
	"no-joint-in-layout": () =>
		"A cue in one piece has no joint to place: choose a layout with a joint, or leave its place out.",
	"joints-too-close": ({ value, max }, reader) =>
		`An end piece of ${formatLength(Number(value), reader)} brings its joint too close to the other: ${formatLength(bound(max), reader)} at most leaves wood between them.`,
	"hand-splice-only": ({ field, value }) =>
		`${capital(plainField(field))} can be shaped on a hand splice only; here it is: ${(SPLICE_LABELS[value as keyof typeof SPLICE_LABELS] ?? String(value)).toLowerCase()}.`,
	"one-too-many": () =>
		"Of a flat’s point, core and angle two settle the third: leave one of them out.",
	"too-few": ({ field, value, min }) =>
		`${capital(plainField(field))}: ${value ?? 0} given, at least ${min ?? 1} needed.`,
	// The stance.
	contradiction: () =>
		"No pose: seated and in a standing frame at once. Choose one.",
	"bridge-out-of-reach": ({ value, max, facts }, reader) =>
		`No pose: at a height of ${formatLength(numberIn(facts, "statureMm"), reader, "body")} and a cloth ${formatLength(numberIn(facts, "clothHeightMm"), reader)} above the floor the bridge arm would have to be ${formatRatio(Number(value), reader)} times as long as it is (${formatNumber(bound(max), reader)} at most). Check the height, or give this table’s own height.`,
	// The price list and what the workshop offers.
	"not-in-price-list": ({ field, value }) =>
		`The price list has no amount for ${wood(value)} (${field === "shaftWood" ? "shaft" : "butt"}).`,
	"nothing-offered": ({ field }) =>
		`The workshop’s catalogue offers no ${part(field.split(".").at(-1) ?? field)}: put at least one on it.`,
	// The search.
	"nothing-counts": () =>
		"Nothing counts: every criterion was given no weight. Give weight to at least one.",
	"nothing-can-be-built": ({ facts }) =>
		numberIn(facts, "waysOut") === 0
			? "Nothing can be built with all these wishes together, and giving up no single one is enough: leave more of them open."
			: "Nothing can be built with all these wishes together. Any one of these is enough:",
	relax: (refusal, reader) => {
		const [way] = waysOut([refusal], reader);
		if (way === undefined) throw new TypeError("a way out without words");
		return way.text;
	},
	// Trials.
	"rack-too-small": ({ value, min }) =>
		`The rack holds ${value} ${value === 1 ? "cue" : "cues"}; a trial compares at least ${min ?? 2}.`,
	"same-cue-twice": ({ value }) =>
		`The cue “${value}” stands on the rack twice.`,
	"unknown-cue": ({ value }) =>
		`Shots were noted with the cue “${value}”, which is not on the rack.`,
	...SETTING_REFUSAL_WORDS,
	...JOB_REFUSAL_WORDS,
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

/** "buttDiameterMm" reads "butt diameter". */
const plainField = (field: string): string =>
	(
		field
			.split(".")
			.filter((one) => !/^\d+$/.test(one))
			.at(-1) ?? field
	)
		.replace(/(Mm|G|Deg|Years|Ratio)$/, "")
		.replace(/([A-Z])/g, " $1")
		.toLowerCase()
		.trim();

const capital = (text: string): string =>
	text.charAt(0).toUpperCase() + text.slice(1);

function boundText(
	field: string,
	value: Refusal["value"],
	{ min, max }: { min?: number; max?: number },
	reader: Reader,
): string {
	const got =
		typeof value === "number"
			? inUnits(field, value, reader)
			: (value ?? "nothing");
	const bounds = [
		min === undefined ? "" : `at least ${inUnits(field, min, reader)}`,
		max === undefined ? "" : `at most ${inUnits(field, max, reader)}`,
	].filter(Boolean);
	return `${capital(plainField(field))} is ${got}${bounds.length > 0 ? `; it can be ${bounds.join(" and ")}` : ""}.`;
}
