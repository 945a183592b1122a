import "server-only";
import { cache } from "react";
import { database } from "@/lib/records/database";
import {
	type CurrentSettings,
	type SettingRecord,
	toSetting,
} from "@/lib/records/settings/data";
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

/** The settings as they hold on a day; what was never set is the invented default. */
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
