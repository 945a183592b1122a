import "server-only";
import type { FileEntry } from "@/lib/forms/settings/file";
import { canonicalJson } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	database,
	inTransaction,
} from "@/lib/records/database";
import type { SettingVersionSummary } from "@/lib/records/settings/data";
import { settingHistory, today } from "@/lib/records/settings/loaders";
import {
	type NewSetting,
	type SettingSaved,
	saveSettingIn,
} from "@/lib/records/settings/mutations";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import {
	inForce,
	SETTING_KINDS,
	type SettingContents,
	type SettingKind,
	settingOf,
} from "@/lib/workshop/settings";

/** A version that taking a file over would save. */
export type ImportStep = {
	readonly [K in SettingKind]: {
		readonly kind: K;
		/** Today or later: a day of the file that has passed becomes today. */
		readonly validFrom: string;
		readonly content: SettingContents[K];
		/** What holds on that day without it. */
		readonly before: SettingContents[K];
	};
}[SettingKind];

export interface ImportPlan {
	readonly steps: readonly ImportStep[];
	/** Newest version of each kind when the plan was made; 0 where there is none. */
	readonly editedFrom: Readonly<Record<SettingKind, number>>;
}

/**
 * What taking a file over would change: of versions whose day has passed the one that would be in force,
 * today; later ones from their day; nothing where that is what holds then anyway.
 */
export async function planImport(
	entries: readonly FileEntry[],
): Promise<ImportPlan> {
	const now = today();
	const steps: ImportStep[] = [];
	const editedFrom: Partial<Record<SettingKind, number>> = {};
	for (const kind of SETTING_KINDS) {
		const history = await settingHistory(kind);
		editedFrom[kind] = history[0]?.version ?? 0;
		const dated = entries
			.filter((entry) => entry.kind === kind)
			.map(({ validFrom, content }, i) => ({
				validFrom: validFrom ?? now,
				content,
				version: i,
			}));
		const begun = inForce(dated, now);
		const wanted = [
			...(begun === null ? [] : [{ ...begun, validFrom: now }]),
			...dated.filter(({ validFrom }) => validFrom > now),
		].sort((a, b) => (a.validFrom < b.validFrom ? -1 : 1));
		// Each step is seen against what is saved and the steps before it.
		const versions: Pick<
			SettingVersionSummary & { content: SettingContents[SettingKind] },
			"version" | "validFrom" | "content"
		>[] = [...history];
		for (const { validFrom, content } of wanted) {
			const before =
				inForce(versions, validFrom)?.content ??
				settingOf(DEFAULT_SETTINGS, kind);
			if (canonicalJson(before) === canonicalJson(content)) continue;
			steps.push({ kind, validFrom, content, before } as ImportStep);
			versions.push({
				version: editedFrom[kind] + steps.length,
				validFrom,
				content,
			});
		}
	}
	return { steps, editedFrom: editedFrom as ImportPlan["editedFrom"] };
}

export type Imported =
	| {
			readonly ok: true;
			readonly saved: readonly {
				readonly kind: SettingKind;
				readonly version: number;
			}[];
	  }
	/** The settings changed since the plan was shown. */
	| { readonly ok: false };

class Overtaken extends Error {}

/**
 * Takes a file over, all of it or nothing, on the versions its changes were shown against, once for each
 * request key.
 */
export async function importSettings(p: {
	entries: readonly FileEntry[];
	editedFrom: ImportPlan["editedFrom"];
	note: string;
	by: string;
	requestKey: string;
}): Promise<Imported> {
	const before = await database().settingVersion.findMany({
		where: { requestKey: { startsWith: `${p.requestKey}:` } },
		orderBy: { requestKey: "asc" },
		select: { kind: true, version: true },
	});
	if (before.length > 0)
		return {
			ok: true,
			saved: before.map(({ kind, version }) => ({
				kind: kind as SettingKind,
				version,
			})),
		};
	const { steps, editedFrom } = await planImport(p.entries);
	if (SETTING_KINDS.some((kind) => editedFrom[kind] !== p.editedFrom[kind]))
		return { ok: false };
	try {
		return await inTransaction((transaction) =>
			saveSteps(transaction, { ...p, steps }),
		);
	} catch (error) {
		if (error instanceof Overtaken) return { ok: false };
		throw error;
	}
}

async function saveSteps(
	transaction: DatabaseTransaction,
	{
		steps,
		editedFrom,
		note,
		by,
		requestKey,
	}: Parameters<typeof importSettings>[0] & Pick<ImportPlan, "steps">,
): Promise<Imported> {
	const newest = { ...editedFrom };
	const saved: { kind: SettingKind; version: number }[] = [];
	for (const [i, { kind, content, validFrom }] of steps.entries()) {
		const result: SettingSaved = await saveSettingIn(transaction, {
			kind,
			content,
			validFrom,
			editedFrom: newest[kind],
			note,
			by,
			requestKey: `${requestKey}:${i}`,
		} as NewSetting);
		if (!result.ok) {
			if ("conflict" in result) throw new Overtaken();
			throw new Error(
				`a step of an import was refused: ${JSON.stringify(result.refusals)}`,
			);
		}
		newest[kind] = result.version;
		saved.push({ kind, version: result.version });
	}
	return { ok: true, saved };
}
