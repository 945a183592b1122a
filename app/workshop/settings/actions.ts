"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { readReader } from "@/app/_ui/preferences/loaders";
import {
	MOST_FILE_CHARACTERS,
	readSettingsFile,
} from "@/lib/forms/settings/file";
import { SETTING_SCHEMAS } from "@/lib/forms/settings/schemas";
import type { Refusal } from "@/lib/numerics/outcome";
import {
	type SettingChange,
	settingChanges,
} from "@/lib/present/setting-changes";
import { fileProblemText } from "@/lib/present/setting-refusal-words";
import { removeDemo } from "@/lib/records/demo/mutations";
import { importSettings, planImport } from "@/lib/records/settings/import";
import {
	currentSettings,
	getSetting,
	today,
} from "@/lib/records/settings/loaders";
import { saveSetting } from "@/lib/records/settings/mutations";
import {
	SETTING_KINDS,
	type SettingContents,
	type SettingKind,
} from "@/lib/workshop/settings";

/** An action is a public endpoint: whatever comes in is parsed, whoever the type says sent it. */
const kindSchema = z.enum(SETTING_KINDS);
const versionSchema = z.number().int().min(0).max(1_000_000);
const keySchema = z.uuid();
const saveSchema = z.strictObject({
	kind: kindSchema,
	content: z.unknown(),
	editedFrom: versionSchema,
	validFrom: z.string().max(10),
	note: z.string().max(500),
	by: z.string().trim().min(1).max(120),
	requestKey: keySchema,
});
const restoreSchema = z.strictObject({
	kind: kindSchema,
	version: versionSchema,
	editedFrom: versionSchema,
	by: z.string().trim().min(1).max(120),
	note: z.string().max(500),
	requestKey: keySchema,
});
const fileSchema = z.string().max(2 * MOST_FILE_CHARACTERS);
const takeOverSchema = z.strictObject({
	text: fileSchema,
	editedFrom: z.record(kindSchema, versionSchema),
	note: z.string().max(500),
	by: z.string().trim().min(1).max(120),
	requestKey: keySchema,
});

export type Saved =
	| { readonly ok: true; readonly version: number }
	| { readonly ok: false; readonly refusals: readonly Refusal[] }
	/** Somebody saved this version meanwhile; null where the one edited from is gone. */
	| { readonly ok: false; readonly conflict: number };

/** Saves a setting as its next version. Advice everywhere is then worked out with it. */
export async function save<K extends SettingKind>(request: {
	kind: K;
	content: SettingContents[K];
	editedFrom: number;
	validFrom: string;
	note: string;
	by: string;
	requestKey: string;
}): Promise<Saved> {
	const { content, ...asked } = saveSchema.parse(request);
	const saved = await saveSetting({
		...asked,
		content: SETTING_SCHEMAS[asked.kind].parse(content) as SettingContents[K],
	});
	if (saved.ok) {
		revalidatePath("/", "layout");
		return saved;
	}
	return "refusals" in saved
		? saved
		: { ok: false, conflict: saved.conflict?.version ?? 0 };
}

/** Saves an earlier version again as the newest, from today on. */
export async function restore(
	request: z.input<typeof restoreSchema>,
): Promise<Saved> {
	const { version, ...asked } = restoreSchema.parse(request);
	const { kind } = asked;
	const earlier = await getSetting(kind, version);
	if (earlier === null)
		throw new Error(`there is no version ${version} of ${kind}`);
	const saved = await saveSetting({
		...asked,
		content: earlier.content,
		validFrom: today(),
	});
	if (!saved.ok)
		return "refusals" in saved
			? saved
			: { ok: false, conflict: saved.conflict?.version ?? 0 };
	revalidatePath("/", "layout");
	return saved;
}

export type Preview =
	| {
			readonly ok: false;
			readonly problems: readonly string[];
			readonly more: number;
	  }
	| {
			readonly ok: true;
			readonly steps: readonly {
				readonly kind: SettingKind;
				readonly validFrom: string;
				readonly changes: readonly SettingChange[];
			}[];
			readonly editedFrom: Readonly<Record<SettingKind, number>>;
	  };

/** Problems shown at once. */
const MOST_PROBLEMS = 30;

/** What taking a file over would change; or everything that keeps it from being taken. Changes nothing. */
export async function previewFile(text: string): Promise<Preview> {
	const reader = await readReader();
	const read = readSettingsFile(
		fileSchema.parse(text),
		await currentSettings(),
	);
	if (!read.ok)
		return {
			ok: false,
			problems: read.problems
				.slice(0, MOST_PROBLEMS)
				.map((problem) => fileProblemText(problem, reader)),
			more: Math.max(0, read.problems.length - MOST_PROBLEMS),
		};
	const { steps, editedFrom } = await planImport(read.entries);
	return {
		ok: true,
		editedFrom,
		steps: steps.map(({ kind, validFrom, content, before }) => ({
			kind,
			validFrom,
			changes: settingChanges(
				kind,
				{ before, after: content } as never,
				reader,
			),
		})),
	};
}

export type TakenOver =
	| {
			readonly ok: true;
			readonly saved: readonly {
				readonly kind: SettingKind;
				readonly version: number;
			}[];
	  }
	| { readonly ok: false };

/** Takes a file over, on the versions it was shown against. */
export async function takeOver(
	request: z.input<typeof takeOverSchema>,
): Promise<TakenOver> {
	const { text, ...asked } = takeOverSchema.parse(request);
	const read = readSettingsFile(text, await currentSettings());
	if (!read.ok) throw new Error("a file that was refused was sent again");
	const imported = await importSettings({ ...asked, entries: read.entries });
	if (imported.ok) revalidatePath("/", "layout");
	return imported;
}

/** Takes away all invented demo data; gives how many rows went. */
export async function takeDemoAway(): Promise<{ readonly count: number }> {
	const { counts } = await removeDemo();
	revalidatePath("/", "layout");
	return { count: Object.values(counts).reduce((sum, one) => sum + one, 0) };
}
