import "server-only";
import { notFound } from "next/navigation";
import { SETTING_KINDS, type SettingKind } from "@/lib/workshop/settings";

/** The kind an address names; the page is not found where it names none. */
export function kindOf(text: string): SettingKind {
	const kind = SETTING_KINDS.find((one) => one === text);
	if (kind === undefined) notFound();
	return kind;
}

/** A version an address names; the page is not found where it is no number. */
export function versionOf(text: string): number {
	if (!/^[1-9]\d{0,5}$/.test(text)) notFound();
	return Number(text);
}
