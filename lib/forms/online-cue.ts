import { TAPER_LIMITS, TAPER_SHAPES } from "@/lib/cue/taper";
import { FITTING_LIMITS } from "@/lib/cue/validity";
import { METALS } from "@/lib/reference/metals";
import { GAMES } from "@/lib/reference/rules";
import { WOOD_IDS } from "@/lib/reference/woods";
import {
	type ParseRefusal,
	parseLength,
	parseMass,
	parseNumber,
} from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";
import type { OnlineChange } from "@/lib/workshop/online-changes";
import {
	type OnlineChoices,
	type OnlineField,
	type OnlineOffer,
	usualOnline,
} from "@/lib/workshop/online-choices";
import { CHOICES_OF } from "@/lib/workshop/prices-check";
import { BOUNDS } from "./bounds";

/** How a choice is asked for. Lengths in mm and masses in g; a bare length is mm or inches. */
export type OnlineQuestion =
	| { readonly kind: "length"; readonly min: number; readonly max: number }
	| { readonly kind: "mass"; readonly min: number; readonly max: number }
	| { readonly kind: "count"; readonly min: number; readonly max: number }
	/** One of a list that the catalogue may shorten. */
	| { readonly kind: "choice"; readonly options: readonly string[] }
	/** In the workshop's own words. */
	| { readonly kind: "named" }
	| { readonly kind: "yes-no" };

const length = (min: number, max: number) =>
	({ kind: "length", min, max }) as const;
const choice = (options: readonly string[]) =>
	({ kind: "choice", options }) as const;
const wood = choice(WOOD_IDS);

/** Wide enough that what the workshop or a rule refuses can be typed, and be answered with a reason. */
export const ONLINE_QUESTIONS = {
	gameId: choice(Object.keys(GAMES)),
	lengthMm: length(...TAPER_LIMITS.lengthMm),
	layout: choice(CHOICES_OF.layout ?? []),
	jointFromButtMm: length(50, 1200),
	jointMetal: choice(Object.keys(METALS)),
	endPieceMm: length(...FITTING_LIMITS.endPieceMm),
	buttDiameterMm: length(...TAPER_LIMITS.buttDiameterMm),
	tipDiameterMm: length(...TAPER_LIMITS.tipDiameterMm),
	taperShape: choice(Object.keys(TAPER_SHAPES)),
	shaftWood: wood,
	buttWood: wood,
	splice: choice(CHOICES_OF.splice ?? []),
	pointsFromButtMm: length(50, 1200),
	pointsBetween: wood,
	frontWedge: wood,
	wedges: wood,
	wedgeCount: { kind: "count", min: 3, max: 12 },
	veneer: wood,
	veneerCount: { kind: "count", min: 1, max: 5 },
	veneerMm: length(0.1, 6),
	ferruleMetal: choice(CHOICES_OF.ferrule ?? []),
	tip: { kind: "named" },
	case: { kind: "named" },
	massG: { kind: "mass", ...BOUNDS.cueMassG },
	balanceFromButtMm: length(
		BOUNDS.balanceFromButtMm.min,
		BOUNDS.balanceFromButtMm.max,
	),
	isGoingAbroad: { kind: "yes-no" },
} as const satisfies Record<OnlineField, OnlineQuestion>;

export const ONLINE_FIELDS = Object.keys(ONLINE_QUESTIONS) as OnlineField[];

/** As typed or chosen, by choice; missing or empty: left to the workshop. */
export type OnlineAnswers = Partial<Record<OnlineField, string>>;

/** Longer than any answer. */
export const MOST_ONLINE_TYPED = 120;

/** An answer that cannot be read. It counts as left open. */
export interface OnlineProblem {
	readonly field: OnlineField;
	readonly code: ParseRefusal["code"] | "not-a-choice";
	readonly text: string;
	readonly min?: number;
	readonly max?: number;
}

type Read =
	| {
			readonly ok: true;
			readonly value: string | number | boolean;
			/** The unit a bare number was taken in. */
			readonly assumedUnit: string | null;
	  }
	| { readonly ok: false; readonly problem: Omit<OnlineProblem, "field"> };

/** One answer in mm, g or as a choice. Texts of lengths and masses name their unit or take the reader's. */
export function readOnlineField(
	field: OnlineField,
	text: string,
	system: UnitSystem,
): Read {
	const question: OnlineQuestion = ONLINE_QUESTIONS[field];
	const refused = ({ code, min, max }: ParseRefusal): Read => ({
		ok: false,
		problem: { code, text, min, max },
	});
	const plain = (value: string | number | boolean): Read => ({
		ok: true,
		value,
		assumedUnit: null,
	});
	const noChoice: Read = {
		ok: false,
		problem: { code: "not-a-choice", text },
	};
	switch (question.kind) {
		case "choice":
			return question.options.includes(text) ? plain(text) : noChoice;
		case "named":
			return plain(text);
		case "yes-no":
			return text === "yes" || text === "no" ? plain(text === "yes") : noChoice;
		case "count": {
			const parsed = parseNumber(text, question);
			if (!parsed.ok) return refused(parsed.refusal);
			return Number.isInteger(parsed.value) ? plain(parsed.value) : noChoice;
		}
		case "mass": {
			const { min, max } = question;
			const parsed = parseMass(text, { system, minG: min, maxG: max });
			return parsed.ok
				? { ok: true, value: parsed.g, assumedUnit: parsed.assumedUnit }
				: refused(parsed.refusal);
		}
		case "length": {
			const { min, max } = question;
			const parsed = parseLength(text, {
				system,
				minMm: min,
				maxMm: max,
				defaultUnit: system === "metric" ? "mm" : "in",
			});
			return parsed.ok
				? { ok: true, value: parsed.mm, assumedUnit: parsed.assumedUnit }
				: refused(parsed.refusal);
		}
	}
}

/** What was chosen, the workshop's usual where nothing was said or nothing could be read. */
export function readOnline(
	answers: OnlineAnswers,
	offer: OnlineOffer,
	system: UnitSystem,
): { choices: OnlineChoices; problems: readonly OnlineProblem[] } {
	const problems: OnlineProblem[] = [];
	const given: Partial<Record<OnlineField, unknown>> = {};
	for (const field of ONLINE_FIELDS) {
		const text = answers[field]?.trim();
		if (!text) continue;
		const read = readOnlineField(field, text, system);
		if (read.ok) given[field] = read.value;
		else problems.push({ ...read.problem, field });
	}
	const { gameId } = given as OnlineChange;
	return {
		choices: { ...usualOnline(offer, gameId), ...(given as OnlineChange) },
		problems,
	};
}

/** A choice as it would be typed; empty where it is left to the workshop. */
export function onlineAnswer(
	field: OnlineField,
	value: OnlineChoices[OnlineField],
): string {
	if (value === null) return "";
	if (typeof value === "boolean") return value ? "yes" : "no";
	if (typeof value === "string") return value;
	const { kind } = ONLINE_QUESTIONS[field];
	if (kind === "mass") return `${value} g`;
	return kind === "length" ? `${value} mm` : String(value);
}

/** The answers after a change; what is not in it stays as it was typed. */
export const withOnlineChange = (
	answers: OnlineAnswers,
	change: OnlineChange,
): OnlineAnswers => ({
	...answers,
	...Object.fromEntries(
		(Object.entries(change) as [OnlineField, OnlineChoices[OnlineField]][]).map(
			([field, value]) => [field, onlineAnswer(field, value)],
		),
	),
});

/** The answers with the unit of every bare number written down, as this reader means it: others may read in other units. */
export function settledOnline(
	answers: OnlineAnswers,
	system: UnitSystem,
): OnlineAnswers {
	const settled: OnlineAnswers = {};
	for (const field of ONLINE_FIELDS) {
		const text = answers[field]?.trim();
		if (!text) continue;
		settled[field] = text;
		const { kind } = ONLINE_QUESTIONS[field];
		if (kind !== "length" && kind !== "mass") continue;
		const read = readOnlineField(field, text, system);
		if (read.ok && read.assumedUnit !== null)
			settled[field] = `${text} ${read.assumedUnit}`;
	}
	return settled;
}
