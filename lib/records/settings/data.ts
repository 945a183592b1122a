import "server-only";
import type { SettingVersion } from "@/generated/prisma/client";
import { SETTING_SCHEMAS } from "@/lib/forms/settings/schemas";
import type {
	SettingContents,
	SettingKind,
	Settings,
} from "@/lib/workshop/settings";

/** A saved version of a setting without its content. */
export interface SettingVersionSummary {
	readonly kind: SettingKind;
	readonly version: number;
	/** ISO date from which it holds. */
	readonly validFrom: string;
	readonly note: string;
	readonly by: string;
	readonly isDemo: boolean;
	readonly createdAt: Date;
}

export interface SettingRecord<K extends SettingKind = SettingKind>
	extends SettingVersionSummary {
	readonly kind: K;
	readonly content: SettingContents[K];
}

/** The settings in force on a day, with the version of each kind; 0 where nothing was set yet. */
export interface CurrentSettings extends Settings {
	readonly versions: Readonly<Record<SettingKind, number>>;
}

export const toSetting = <K extends SettingKind>(
	kind: K,
	row: SettingVersion,
): SettingRecord<K> => ({
	kind,
	version: row.version,
	validFrom: row.validFrom,
	note: row.note,
	by: row.by,
	isDemo: row.isDemo,
	createdAt: row.createdAt,
	content: SETTING_SCHEMAS[kind].parse(row.content),
});
