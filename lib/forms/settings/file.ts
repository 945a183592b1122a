import { z } from "zod";
import { readJsonLines } from "@/lib/forms/json-lines";
import type { Refusal } from "@/lib/numerics/outcome";
import {
	SETTING_KINDS,
	SETTING_NAMES,
	type SettingContents,
	type SettingKind,
	type Settings,
} from "@/lib/workshop/settings";
import { checkedSetting } from "@/lib/workshop/settings-check";
import { isIsoDate } from "@/lib/workshop/working-days";
import { SETTING_SCHEMAS } from "./schemas";
import { readPricesCsv, readStockCsv } from "./tables";

export const SETTINGS_FORMAT = "workshop-settings";
/** Raised when a member changes its meaning or goes; new members do not raise it. */
export const SETTINGS_FORMAT_VERSION = 1;
/** Far above any sensible file. */
export const MOST_FILE_CHARACTERS = 1_000_000;

/** One version of a setting as a file holds it. */
export type FileEntry = {
	readonly [K in SettingKind]: {
		readonly kind: K;
		/** ISO date; null where the file does not say: from the day it is taken over. */
		readonly validFrom: string | null;
		readonly content: SettingContents[K];
	};
}[SettingKind];

/** What is wrong in a file, and where. */
export interface FileProblem {
	/** From 1; null where it is the file as a whole. */
	readonly line: number | null;
	/** As the file names it: "settings.prices.0.content.rows.3.labourMinor", "labour". */
	readonly field: string;
	readonly refusal: Refusal;
}

export type FileRead =
	| { readonly ok: true; readonly entries: readonly FileEntry[] }
	| { readonly ok: false; readonly problems: readonly FileProblem[] };

const entriesOf = <K extends SettingKind>(kind: K) =>
	z
		.array(
			z.strictObject({
				validFrom: z.string(),
				content: SETTING_SCHEMAS[kind],
			}),
		)
		.max(100)
		.optional();

/** The JSON file of all settings: of each kind the version in force and those that follow, first to last. */
export const settingsFileSchema = z.strictObject({
	$schema: z.string().optional(),
	format: z.literal(SETTINGS_FORMAT),
	formatVersion: z.literal(SETTINGS_FORMAT_VERSION),
	exportedOn: z.string().optional(),
	settings: z.strictObject({
		header: entriesOf("header"),
		catalogue: entriesOf("catalogue"),
		stock: entriesOf("stock"),
		prices: entriesOf("prices"),
		"lead-times": entriesOf("lead-times"),
	}),
});

export type SettingsFile = z.infer<typeof settingsFileSchema>;

/**
 * Reads a file of settings: the JSON file, or the CSV table of the price list or of the woods at hand.
 * `current` lends what a table does not hold. Everything wrong is told with line, field, value and bound.
 */
export function readSettingsFile(text: string, current: Settings): FileRead {
	if (text.length > MOST_FILE_CHARACTERS)
		return {
			ok: false,
			problems: [
				{
					line: null,
					field: "",
					refusal: {
						code: "file-too-large",
						field: "",
						value: text.length,
						max: MOST_FILE_CHARACTERS,
					},
				},
			],
		};
	const plain = text.replace(/^\ufeff/, "");
	if (/^\s*[{[]/.test(plain)) return readJson(plain);
	const table = /^"?wood\b/i.test(plain)
		? readStockCsv(plain)
		: readPricesCsv(plain, current.prices);
	return table.ok
		? { ok: true, entries: [{ ...table.entry, validFrom: null }] }
		: table;
}

function readJson(text: string): FileRead {
	const json = readJsonLines(text);
	if (!json.ok)
		return {
			ok: false,
			problems: [
				{
					line: json.line,
					field: "",
					refusal: { code: "not-json", field: "", value: json.found },
				},
			],
		};
	const { value, lineAt } = json;
	const shape = settingsFileSchema.safeParse(value);
	if (!shape.success)
		return {
			ok: false,
			problems: shape.error.issues.flatMap((issue) =>
				problemsOf(issue, value, lineAt),
			),
		};
	const problems: FileProblem[] = [];
	const entries: FileEntry[] = [];
	for (const kind of SETTING_KINDS)
		(shape.data.settings[kind] ?? []).forEach(({ validFrom, content }, i) => {
			const at = ["settings", kind, i] as const;
			const tell = (path: readonly PropertyKey[], refusal: Refusal) =>
				problems.push({
					line: lineAt(path),
					field: path.map(String).join("."),
					refusal,
				});
			if (!isIsoDate(validFrom))
				tell([...at, "validFrom"], {
					code: "not-a-date",
					field: "validFrom",
					value: validFrom,
				});
			const checked = checkedSetting(kind, content as never);
			if (!checked.ok)
				for (const refusal of checked.refusals)
					tell(
						[
							...at,
							"content",
							...refusal.field
								.slice(SETTING_NAMES[kind].length + 1)
								.split(".")
								.filter(Boolean),
						],
						refusal,
					);
			entries.push({ kind, validFrom, content } as FileEntry);
		});
	return problems.length > 0 ? { ok: false, problems } : { ok: true, entries };
}

const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
	path.reduce<unknown>(
		(at, step) =>
			typeof at === "object" && at !== null
				? (at as Record<PropertyKey, unknown>)[step]
				: undefined,
		value,
	);

const shown = (value: unknown): string =>
	(typeof value === "string" ? value : (JSON.stringify(value) ?? "")).slice(
		0,
		60,
	);

/** A shape that is not as described, in the terms of a refusal; of a choice of shapes the nearest one. */
function problemsOf(
	issue: z.core.$ZodIssue,
	file: unknown,
	lineAt: (path: readonly PropertyKey[]) => number,
): FileProblem[] {
	const tell = (
		path: readonly PropertyKey[],
		refusal: Omit<Refusal, "field">,
	): FileProblem => {
		const field = path.map(String).join(".");
		return { line: lineAt(path), field, refusal: { ...refusal, field } };
	};
	const { path } = issue;
	const value = valueAt(file, path);
	if (
		issue.code === "invalid_value" &&
		(path[0] === "format" || path[0] === "formatVersion")
	)
		return [
			tell(path, {
				code: "not-this-file",
				value: shown(value),
				facts: { expected: SETTINGS_FORMAT_VERSION },
			}),
		];
	if (issue.code === "unrecognized_keys")
		return issue.keys.map((key) =>
			tell([...path, key], { code: "unknown-key", value: key }),
		);
	if (issue.code === "invalid_union" && issue.errors.length > 0) {
		const [nearest = []] = [...issue.errors].sort(
			(a, b) => a.length - b.length,
		);
		return nearest.flatMap((inner) =>
			problemsOf({ ...inner, path: [...path, ...inner.path] }, file, lineAt),
		);
	}
	if (value === undefined)
		return [tell(path, { code: "missing-here", value: null })];
	if (issue.code === "too_big")
		return [
			tell(path, {
				code: "out-of-range",
				value: Array.isArray(value) ? value.length : shown(value),
				max: Number(issue.maximum),
			}),
		];
	return [
		tell(path, {
			code: "wrong-shape",
			value: shown(value),
			facts: {
				expected:
					issue.code === "invalid_value"
						? issue.values.map(String).join(", ")
						: issue.code === "invalid_type"
							? issue.expected
							: issue.message,
			},
		}),
	];
}
