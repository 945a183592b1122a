import type { AnswerProblem } from "@/lib/forms/answers";
import { FIELDS, type FieldName } from "@/lib/forms/fields";
import type { Caution, Refusal } from "@/lib/numerics/outcome";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { UnitSystem } from "@/lib/units/quantity";
import {
	formatLength,
	formatLengthBand,
	formatMass,
	formatNumber,
	type LengthKind,
} from "./figures";
import { FIELD_LABELS, gameName, woodName } from "./labels";

/** The published equipment rules a build is checked against. */
export const RULE_LABELS: Readonly<Record<string, string>> = {
	"cue-length": "Length of the cue",
	"cue-weight": "Weight of the cue",
	"tip-width": "Width of the tip",
	"metal-ferrule-length": "Length of a metal ferrule",
	"tapered-form": "Tapered form",
};

type Facts = Readonly<Record<string, number | string>>;

const number = (facts: Facts | undefined, name: string): number => {
	const value = facts?.[name];
	if (typeof value !== "number")
		throw new TypeError(`a notice lacks the number ${name}`);
	return value;
};

/** Words for a caution that travels beside a result. Unknown codes are shown as they are, never hidden. */
export function cautionText(
	{ code, facts }: Caution,
	system: UnitSystem,
): string {
	const mm = (name: string, kind: LengthKind = "length") =>
		formatLength(number(facts, name), system, kind);
	const g = (name: string) => formatMass(number(facts, name), system);
	switch (code) {
		case "stature-estimated":
			return "Height was left out: the tables’ average stands in, so every length here is wide.";
		case "grip-circle-assumed":
			return "The grip circle was not read. What stands in is a guess from the hand’s length; reading it on a cone or dowels is the one measure that sharpens the butt most.";
		case "single-reading":
			return "One reading of the grip circle: take two more, opening the hand between them.";
		case "readings-disagree":
			return `The readings of the grip circle lie ${mm("spreadMm", "gap")} apart; more than ${mm("agreementMm", "gap")} is worth reading again.`;
		case "ring-above-largest-grip":
			return `A grip circle of ${mm("circleMm", "diameter")} is more than this hand should close round (about ${mm("largestMm", "diameter")}). Check the reading.`;
		case "stance-assumed":
			return "How the player stands was left out: what stands in is the usual stance of the game.";
		case "natural-above-wanted":
			return `The billets of the tables come out ${g("excessG")} above the weight wanted; lighter ones, within their spread, meet it with nothing added.`;
		case "bore-meets-glue-lines":
			return `The bore of ${mm("boreDiameterMm", "diameter")} reaches past the core into the glue lines (core ${formatLength(2 * number(facts, "coreHalfWidthMm"), system, "diameter")} across at the butt end): bore after the glue has cured fully, in small steps.`;
		case "weigh-before-boring":
			return `Weigh the turned cue before boring: billets differ, and with them the natural weight by about ${g("naturalMassSdG")} either way.`;
		case "lead-handling":
		case "lead":
			return "Lead: gloves, no sanding or melting, wash hands, and close the bore. Brass or steel is preferred.";
		case "length-raised-to-rule":
			return `The body asks for ${mm("wantedMm")}; the rules of ${gameName(String(facts?.gameId) as GameId)} ask for at least ${mm("ruleMinMm")}.`;
		case "length-outside-window":
			return `${mm("lengthMm")} lies outside what the stance leaves room for (${formatLengthBand({ low: number(facts, "lowMm"), high: number(facts, "highMm") }, system)}): the grip hand or the bridge has to move.`;
		case "butt-range-cut-by-bench":
			return `The hand would take ${formatLengthBand({ low: number(facts, "lowMm"), high: number(facts, "highMm") }, system, "diameter")}; the bench turns ${formatLengthBand({ low: number(facts, "benchMinMm"), high: number(facts, "benchMaxMm") }, system, "diameter")}.`;
		case "mass-raised-to-wood":
			return `The figures point to ${g("wantedG")}, but this build in ${woodName(String(facts?.buttWood) as WoodId).toLowerCase()} weighs about ${g("naturalMassG")} with nothing added. A lighter butt wood or a slimmer butt would bring it down.`;
		case "mass-lowered-to-bore":
			return `The figures point to ${g("wantedG")}, but the bore that leaves sound wood has room for ${g("nearestG")} at most. A denser butt wood or a thicker butt would allow more.`;
		case "balance-outside-usual":
			return `A balance point ${mm("balanceFromButtMm")} from the butt end is outside the usual ${formatLengthBand({ low: number(facts, "lowMm"), high: number(facts, "highMm") }, system)} (common practice).`;
		case "wood-dust":
			return "Wood dust harms lungs and nose. Extract it at the tool and wear a fitted mask; local exposure limits apply.";
		case "wood-dust-sensitiser":
			return `Dust of ${woodName(String(facts?.wood) as WoodId).toLowerCase()} can sensitise skin and lungs. Cover up, and stop if anything itches or wheezes.`;
		case "turning":
			return "Lathe: eye protection, no gloves or loose sleeves, blank supported along its length. Local codes apply.";
		case "adhesives":
			return "Epoxy and thin adhesives: gloves and ventilation, and the maker’s sheet for mixing and cure.";
		case "protected-wood":
			return `${woodName(String(facts?.wood) as WoodId)} is listed in CITES Appendix ${String(facts?.appendix)} (data of ${String(facts?.dataDate)}). Listings change: ask the national CITES authority before wood or cue crosses a border.`;
		default:
			return [code.replaceAll("-", " "), ...factList(facts)].join("; ");
	}
}

const factList = (facts: Facts | undefined): string[] =>
	Object.entries(facts ?? {}).map(([name, value]) =>
		typeof value === "number"
			? `${name} ${formatNumber(value, 1)}`
			: `${name} ${value}`,
	);

/** What a page may offer to make a refused combination work. */
export interface Remedy {
	readonly field: FieldName;
	/** The answer to put in, as it would be typed. */
	readonly answer: string;
	readonly label: string;
}

export interface RefusalView {
	readonly text: string;
	readonly remedy: Remedy | null;
}

/** Half a gram either way is noise to a bench; quarter grams keep the remedy just inside the bound. */
const typedGrams = (grams: number, round: (value: number) => number) =>
	`${round(grams)} g`;

/** Words for a refusal, with the nearest answer that works where one is known. */
export function refusalView(
	{ code, field, value, min, max, facts }: Refusal,
	system: UnitSystem,
): RefusalView {
	switch (code) {
		case "weight-below-natural": {
			const nearestG = number(facts, "nearestMassG");
			return {
				text: `${formatMass(Number(value), system)} cannot be built: these woods weigh about ${formatMass(number(facts, "naturalMassG"), system)} with nothing added. The lightest this build can promise is ${formatMass(nearestG, system)}.`,
				remedy: {
					field: "wishMass",
					answer: typedGrams(nearestG, Math.ceil),
					label: `Use ${formatMass(nearestG, system)}`,
				},
			};
		}
		case "weight-above-bore": {
			const nearestG = number(facts, "nearestMassG");
			return {
				text: `${formatMass(Number(value), system)} cannot be reached: the bore that leaves sound wood holds enough for ${formatMass(nearestG, system)} at most.`,
				remedy: {
					field: "wishMass",
					answer: typedGrams(nearestG, Math.floor),
					label: `Use ${formatMass(nearestG, system)}`,
				},
			};
		}
		case "rule-broken":
			return {
				text: `${RULE_LABELS[String(facts?.rule)] ?? String(facts?.rule)}: ${boundText(field, value, { min, max }, system)}`,
				remedy: null,
			};
		default:
			return {
				text: [
					boundText(field, value, { min, max }, system),
					...factList(facts),
				].join("; "),
				remedy: null,
			};
	}
}

function inUnits(field: string, value: number, system: UnitSystem): string {
	if (field.endsWith("Mm"))
		return formatLength(
			value,
			system,
			/diameter/i.test(field) ? "diameter" : "length",
		);
	if (field.endsWith("G")) return formatMass(value, system);
	return formatNumber(value, Number.isInteger(value) ? 0 : 2);
}

/** "buttDiameterMm" reads "butt diameter". */
const plainField = (field: string): string =>
	(field.split(".").at(-1) ?? field)
		.replace(/(Mm|G|Deg|Years|Ratio)$/, "")
		.replace(/([A-Z])/g, " $1")
		.toLowerCase()
		.trim();

function boundText(
	field: string,
	value: Refusal["value"],
	{ min, max }: { min?: number; max?: number },
	system: UnitSystem,
): string {
	const got =
		typeof value === "number"
			? inUnits(field, value, system)
			: (value ?? "nothing");
	const bounds = [
		min === undefined ? "" : `at least ${inUnits(field, min, system)}`,
		max === undefined ? "" : `at most ${inUnits(field, max, system)}`,
	].filter(Boolean);
	return `${plainField(field)} is ${got}${bounds.length > 0 ? `; it can be ${bounds.join(" and ")}` : ""}.`;
}

/** Words for an answer that cannot be read, naming field, value and bound. */
export function problemText(
	problem: AnswerProblem,
	system: UnitSystem,
): string {
	const { field, code, text, value, min, max } = problem;
	const label = FIELD_LABELS[field];
	const write = (bound: number) => writeBound(field, bound, system);
	const range =
		min === undefined || max === undefined
			? ""
			: ` It can be ${write(min)} to ${write(max)}.`;
	const quoted = `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;
	switch (code) {
		case "not-a-number":
			return `${label}: ${quoted} is not a number.${range}`;
		case "unknown-unit":
			return `${label}: the unit in ${quoted} is not known here.${range}`;
		case "ambiguous":
			return `${label}: ${quoted} can be read in two ways; write it without the comma.${range}`;
		case "out-of-range":
			return `${label}: ${value === undefined ? quoted : write(value)} is outside what the models cover.${range}`;
		case "not-a-choice":
			return `${label}: ${quoted} is not one of the choices.`;
		case "too-many":
			return `${label}: ${value ?? 0} entries; at most ${max ?? 0} are kept.`;
		case "too-long":
			return `${label}: ${value ?? 0} characters; at most ${max ?? 0} are kept.`;
	}
}

function writeBound(
	name: FieldName,
	bound: number,
	system: UnitSystem,
): string {
	const field = FIELDS[name];
	if (field.kind === "mass") return formatMass(bound, system);
	if (field.kind === "length" || field.kind === "readings")
		return formatLength(
			bound,
			system,
			field.bare.metric === "mm"
				? "diameter"
				: name === "stature"
					? "body"
					: "length",
		);
	return formatNumber(bound);
}
