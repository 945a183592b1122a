import { z } from "zod";
import { BENCH_STAGES, type BenchStage } from "@/lib/build/as-built";
import type { WoodId } from "@/lib/reference/woods";
import { parseLength, parseMass, parseNumber } from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";
import type {
	CheckBillet,
	CheckContent,
	CheckFigures,
} from "@/lib/workshop/check";
import { CHECK_DECISIONS } from "@/lib/workshop/check";
import { CHECK_LIMITS } from "@/lib/workshop/check-rules";
import type { QuantityBound } from "./bounds";

/** Fields of the cue as a whole. */
export const CHECK_FIELDS = {
	length: { name: "lengthMm", dimension: "length" },
	mass: { name: "massG", dimension: "mass" },
	balance: { name: "balanceFromButtMm", dimension: "length" },
	butt: { name: "buttDiameterMm", dimension: "length" },
	tip: { name: "tipDiameterMm", dimension: "length" },
	metal: { name: "metalMassG", dimension: "mass" },
} as const satisfies Record<
	string,
	{ name: keyof typeof CHECK_LIMITS; dimension: "length" | "mass" }
>;
export type CheckField = keyof typeof CHECK_FIELDS;

/** What is asked at each stage, in this order; diameters at stations from the glued blank on. */
export const FIELDS_AT: Readonly<Record<BenchStage, readonly CheckField[]>> = {
	billets: [],
	"blank-glued": ["length", "mass"],
	turned: ["length", "mass"],
	"before-weighting": ["mass", "balance", "length", "butt", "tip"],
	finished: ["mass", "metal", "balance", "length", "butt", "tip"],
};

const bound = ([min, max]: readonly [number, number]): QuantityBound => ({
	min,
	max,
});

export const boundOf = (field: CheckField): QuantityBound =>
	bound(CHECK_LIMITS[CHECK_FIELDS[field].name]);
export const DIAMETER_BOUND = bound(CHECK_LIMITS.diameterMm);

/** What is weighed and measured of a billet; the bounds are those of billetDensity. */
export const BILLET_FIELDS = {
	mass: { name: "massG", dimension: "mass", min: 20, max: 20_000 },
	length: { name: "lengthMm", dimension: "length", min: 100, max: 3000 },
	width: { name: "widthMm", dimension: "length", min: 8, max: 300 },
	thickness: { name: "thicknessMm", dimension: "length", min: 8, max: 300 },
} as const satisfies Record<
	string,
	{
		name: Exclude<keyof CheckBillet, "wood" | "moisturePct">;
		dimension: "length" | "mass";
	} & QuantityBound
>;
export type BilletField = keyof typeof BILLET_FIELDS;
export const MOISTURE_BOUND = { min: 4, max: 25 } as const;

/** Names under which the texts of a form travel. */
export const stationKey = (stationMm: number) =>
	`station:${stationMm.toFixed(2)}` as const;
export const billetKey = (wood: WoodId, field: BilletField | "moisture") =>
	`billet:${wood}:${field}` as const;

export type CheckTexts = Readonly<Record<string, string>>;

/** What is wrong with one field. A billet half entered lacks the others. */
export interface CheckProblem {
	readonly field: string;
	readonly code:
		| "not-a-number"
		| "unknown-unit"
		| "out-of-range"
		| "ambiguous"
		| "missing";
	readonly value: number | string | null;
	readonly min: number;
	readonly max: number;
}

export type ReadCheck =
	| { readonly ok: true; readonly content: Omit<CheckContent, "predicted"> }
	| { readonly ok: false; readonly problems: readonly CheckProblem[] };

/**
 * Reads the texts of a check, whatever else was typed beside what its stage asks: a text that the stage
 * does not ask is left out. The texts are kept as typed.
 */
export function readCheck(p: {
	stage: BenchStage;
	texts: CheckTexts;
	stationsMm: readonly number[];
	woods: readonly WoodId[];
	system: UnitSystem;
	note: string;
}): ReadCheck {
	const { stage, texts, system } = p;
	const problems: CheckProblem[] = [];
	const typed: Record<string, string> = {};
	const read = (
		field: string,
		{
			dimension,
			min,
			max,
		}: QuantityBound & { dimension: "length" | "mass" | "number" },
	): number | undefined => {
		const text = texts[field]?.trim() ?? "";
		if (text === "") return undefined;
		typed[field] = text;
		const parsed =
			dimension === "mass"
				? parseMass(text, { system, minG: min, maxG: max, field })
				: dimension === "length"
					? parseLength(text, { system, minMm: min, maxMm: max, field })
					: parseNumber(text, { min, max, field });
		if (!parsed.ok) {
			const { code, value } = parsed.refusal;
			problems.push({
				field,
				code: code === "empty" ? "not-a-number" : code,
				value,
				min,
				max,
			});
			return undefined;
		}
		return "mm" in parsed ? parsed.mm : "g" in parsed ? parsed.g : parsed.value;
	};
	const figures: Partial<Record<keyof CheckFigures, unknown>> = {};
	for (const field of FIELDS_AT[stage]) {
		const { name, dimension } = CHECK_FIELDS[field];
		const value = read(field, { dimension, ...boundOf(field) });
		if (value !== undefined) figures[name] = value;
	}
	const stations =
		stage === "billets"
			? []
			: p.stationsMm.flatMap((stationMm) => {
					const diameterMm = read(stationKey(stationMm), {
						dimension: "length",
						...DIAMETER_BOUND,
					});
					return diameterMm === undefined ? [] : [{ stationMm, diameterMm }];
				});
	if (stations.length > 0) figures.stations = stations;
	const billets =
		stage === "billets"
			? p.woods.flatMap((wood) => readBillet(wood, read, problems))
			: [];
	if (problems.length > 0) return { ok: false, problems };
	return {
		ok: true,
		content: {
			schemaVersion: 1,
			figures: figures as CheckFigures,
			billets,
			typed,
			note: p.note.trim(),
		},
	};
}

function readBillet(
	wood: WoodId,
	read: (
		field: string,
		p: QuantityBound & { dimension: "length" | "mass" | "number" },
	) => number | undefined,
	problems: CheckProblem[],
): CheckBillet[] {
	const before = problems.length;
	const values = Object.entries(BILLET_FIELDS).map(([field, spec]) => ({
		field: field as BilletField,
		...spec,
		value: read(billetKey(wood, field as BilletField), spec),
	}));
	const moisturePct =
		read(billetKey(wood, "moisture"), {
			dimension: "number",
			...MOISTURE_BOUND,
		}) ?? null;
	if (values.every(({ value }) => value === undefined)) return [];
	if (problems.length === before)
		for (const { field, value, min, max } of values)
			if (value === undefined)
				problems.push({
					field: billetKey(wood, field),
					code: "missing",
					value: null,
					min,
					max,
				});
	const [massG, lengthMm, widthMm, thicknessMm] = values.map(
		({ value }) => value ?? Number.NaN,
	) as [number, number, number, number];
	return problems.length > before
		? []
		: [{ wood, massG, lengthMm, widthMm, thicknessMm, moisturePct }];
}

const textsSchema = z
	.record(z.string().max(80), z.string().max(80))
	.refine((texts) => Object.keys(texts).length <= 300, "too many texts");
const edit = {
	number: z.number().int().min(1),
	by: z.string().trim().min(1).max(120),
	requestKey: z.uuid(),
};
const idSchema = z.string().min(1).max(64);

export const writeCheckSchema = z.strictObject({
	...edit,
	after: idSchema.nullable(),
	stage: z.enum(BENCH_STAGES),
	texts: textsSchema,
	note: z.string().max(2000),
});
export const decideCheckSchema = z.strictObject({
	...edit,
	revision: z.number().int().min(1),
	checkId: idSchema,
	decision: z.enum(CHECK_DECISIONS),
	note: z.string().trim().max(2000),
});
export const takeEvidenceSchema = z.strictObject({
	...edit,
	checkId: idSchema,
});
export const evidenceSchema = z.strictObject({
	id: idSchema,
	by: edit.by,
	requestKey: edit.requestKey,
});
