import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import type { SettingVersionSummary } from "@/lib/records/settings/data";
import type { Reader } from "@/lib/words/reader";
import type { SettingKind } from "@/lib/workshop/settings";

/** Every version of a setting, newest first. */
export function History({
	kind,
	history,
	inForce,
	today,
	reader,
}: {
	kind: SettingKind;
	history: readonly SettingVersionSummary[];
	/** The version that holds today. */
	inForce: number | null;
	today: string;
	reader: Reader;
}) {
	const { say } = reader;
	const named = ({ version, validFrom }: SettingVersionSummary): string => {
		if (version === inForce)
			return say("settings.history.now", { version: String(version) });
		return validFrom > today
			? say("settings.history.later", { version: String(version) })
			: String(version);
	};
	return (
		<Section title={say("settings.history.title")}>
			{history.length === 0 ? (
				<p>{say("settings.history.empty")}</p>
			) : (
				<DataTable
					caption={say("settings.history.title")}
					captionHidden
					columns={[
						{ key: "version", label: say("settings.history.version") },
						{ key: "validFrom", label: say("settings.history.validFrom") },
						{ key: "saved", label: say("settings.history.savedOn") },
						{ key: "by", label: say("settings.history.by") },
						{ key: "note", label: say("settings.history.note") },
					]}
					rows={history.map((one) => ({
						version: (
							<Link href={`/workshop/settings/${kind}/${one.version}`}>
								{named(one)}
							</Link>
						),
						validFrom: formatDay(one.validFrom, reader),
						saved: formatDay(one.createdAt, reader),
						by: one.by,
						note: one.note,
					}))}
				/>
			)}
		</Section>
	);
}
