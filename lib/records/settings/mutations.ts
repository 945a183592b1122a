import "server-only";
import { z } from "zod";
import { SETTING_SCHEMAS } from "@/lib/forms/settings/schemas";
import type { Refusal } from "@/lib/numerics/outcome";
import { canonicalJson } from "@/lib/records/canonical";
import {
	type DatabaseTransaction,
	inTransaction,
} from "@/lib/records/database";
import { once } from "@/lib/records/once";
import { type SettingRecord, toSetting } from "@/lib/records/settings/data";
import { today } from "@/lib/records/settings/loaders";
import type { SettingContents, SettingKind } from "@/lib/workshop/settings";
import { checkedSetting } from "@/lib/workshop/settings-check";
import { notBefore } from "@/lib/workshop/working-days";

/** The version was saved; or it was refused; or someone saved another since it was read. */
export type SettingSaved<K extends SettingKind = SettingKind> =
	| { readonly ok: true; readonly version: number }
	| { readonly ok: false; readonly refusals: readonly Refusal[] }
	| { readonly ok: false; readonly conflict: SettingRecord<K> | null };

export interface NewSetting<K extends SettingKind = SettingKind> {
	readonly kind: K;
	readonly content: SettingContents[K];
	/** Newest version of the kind when the edit began; 0 where there was none. */
	readonly editedFrom: number;
	/** ISO date from which it holds: today or later, so that no day that was worked with changes. */
	readonly validFrom: string;
	readonly note?: string;
	readonly by: string;
	readonly requestKey: string;
	/** For what the seed invents. */
	readonly isDemo?: boolean;
}

const noteSchema = z.string().trim().max(500);
const bySchema = z.string().trim().min(1).max(120);

/**
 * Saves a setting as the next version of its kind, once for each request key. Content equal to the
 * newest version from the same day is that version again. Throws a ZodError for content of another shape.
 */
export async function saveSetting<K extends SettingKind>(
	given: NewSetting<K>,
): Promise<SettingSaved<K>> {
	return inTransaction((transaction) => saveSettingIn(transaction, given));
}

/** The same inside a caller's transaction, for several kinds at once. */
export async function saveSettingIn<K extends SettingKind>(
	transaction: DatabaseTransaction,
	given: NewSetting<K>,
): Promise<SettingSaved<K>> {
	const { kind, validFrom, editedFrom, requestKey } = given;
	const content = SETTING_SCHEMAS[kind].parse(given.content);
	const data = {
		note: noteSchema.parse(given.note ?? ""),
		by: bySchema.parse(given.by),
		isDemo: given.isDemo ?? false,
		validFrom,
		requestKey,
	};
	const before = await transaction.settingVersion.findUnique({
		where: { requestKey },
	});
	if (before && before.kind === kind)
		return { ok: true, version: before.version };
	const checked = checkedSetting(kind, content);
	const refusals = [
		...notBefore("validFrom", validFrom, today()),
		...(checked.ok ? [] : checked.refusals),
	];
	if (refusals.length > 0) return { ok: false, refusals };
	const newest = await transaction.settingVersion.findFirst({
		where: { kind },
		orderBy: { version: "desc" },
	});
	if (
		newest &&
		newest.validFrom === validFrom &&
		canonicalJson(newest.content) === canonicalJson(content)
	)
		return { ok: true, version: newest.version };
	if ((newest?.version ?? 0) !== editedFrom)
		return { ok: false, conflict: newest && toSetting(kind, newest) };
	const id = await once(
		transaction,
		{ key: requestKey, kind: "save-setting" },
		async () => {
			const created = await transaction.settingVersion.create({
				data: {
					...data,
					kind,
					version: editedFrom + 1,
					content: JSON.parse(canonicalJson(content)),
				},
			});
			return created.id;
		},
	);
	const saved = await transaction.settingVersion.findUniqueOrThrow({
		where: { id },
	});
	return { ok: true, version: saved.version };
}
