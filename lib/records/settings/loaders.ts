import "server-only";
import { cache } from "react";
import type { SettingsFile } from "@/lib/forms/settings/file";
import { database } from "@/lib/records/database";
import {
	type CurrentSettings,
	type SettingRecord,
	toSetting,
} from "@/lib/records/settings/data";
import { evidenceByWood } from "@/lib/records/wood-evidence/loaders";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import {
	inForce,
	SETTING_KINDS,
	type SettingContents,
	type SettingKind,
	settingOf,
} from "@/lib/workshop/settings";

/** Today as an ISO date, in the time zone the app runs in. */
export function today(now = new Date()): string {
	const two = (part: number) => String(part).padStart(2, "0");
	return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * The settings as they hold on a day, what was never set as the invented default, with what finished
 * cues say of the woods by now.
 */
export async function settingsOn(onDate: string): Promise<CurrentSettings> {
	const stubs = await database().settingVersion.findMany({
		where: { validFrom: { lte: onDate } },
		select: { id: true, kind: true, version: true, validFrom: true },
	});
	const chosen = SETTING_KINDS.map((kind) =>
		inForce(
			stubs.filter((one) => one.kind === kind),
			onDate,
		),
	);
	const rows = await database().settingVersion.findMany({
		where: { id: { in: chosen.flatMap((one) => (one ? [one.id] : [])) } },
	});
	const contentOf = <K extends SettingKind>(kind: K): SettingContents[K] => {
		const row = rows.find((one) => one.kind === kind);
		return row
			? toSetting(kind, row).content
			: settingOf(DEFAULT_SETTINGS, kind);
	};
	return {
		header: contentOf("header"),
		catalogue: contentOf("catalogue"),
		stock: contentOf("stock"),
		prices: contentOf("prices"),
		leadTimes: contentOf("lead-times"),
		evidence: await evidenceByWood(),
		versions: Object.fromEntries(
			SETTING_KINDS.map((kind, i) => [kind, chosen[i]?.version ?? 0]),
		) as CurrentSettings["versions"],
	};
}

/** The settings in force today; asked of the database once a request. */
export const currentSettings: () => Promise<CurrentSettings> = cache(() =>
	settingsOn(today()),
);

/** Every version of a kind, newest first. */
export async function settingHistory<K extends SettingKind>(
	kind: K,
): Promise<SettingRecord<K>[]> {
	const rows = await database().settingVersion.findMany({
		where: { kind },
		orderBy: { version: "desc" },
	});
	return rows.map((row) => toSetting(kind, row));
}

/** One version of a kind, the newest where none is named; null where there is none. */
export async function getSetting<K extends SettingKind>(
	kind: K,
	version?: number,
): Promise<SettingRecord<K> | null> {
	const row = await database().settingVersion.findFirst({
		where: { kind, ...(version === undefined ? {} : { version }) },
		orderBy: { version: "desc" },
	});
	return row && toSetting(kind, row);
}

/**
 * What a file of all settings holds: of each kind the version in force and those that begin later,
 * first to last; of a kind never set the invented default.
 */
export async function settingsToExport(
	onDate: string,
): Promise<SettingsFile["settings"]> {
	const entriesOf = async <K extends SettingKind>(kind: K) => {
		const history = await settingHistory(kind);
		const now = inForce(history, onDate);
		const later = new Map(
			// Of several from one day the newest, which comes first here, holds.
			[...history]
				.reverse()
				.filter(({ validFrom }) => validFrom > onDate)
				.map((one) => [one.validFrom, one]),
		);
		return [
			{
				validFrom: now?.validFrom ?? onDate,
				content: now?.content ?? settingOf(DEFAULT_SETTINGS, kind),
			},
			...[...later.values()]
				.sort((a, b) => (a.validFrom < b.validFrom ? -1 : 1))
				.map(({ validFrom, content }) => ({ validFrom, content })),
		];
	};
	return {
		header: await entriesOf("header"),
		catalogue: await entriesOf("catalogue"),
		stock: await entriesOf("stock"),
		prices: await entriesOf("prices"),
		"lead-times": await entriesOf("lead-times"),
	};
}
