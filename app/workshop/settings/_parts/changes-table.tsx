import { DataTable } from "@/app/_ui/data-table";
import type { SettingChange } from "@/lib/present/setting-changes";
import type { Reader } from "@/lib/words/reader";

/** What differs between two versions, before and after. */
export function ChangesTable({
	caption,
	changes,
	reader: { say },
}: {
	caption: string;
	changes: readonly SettingChange[];
	reader: Pick<Reader, "say">;
}) {
	if (changes.length === 0)
		return <p>{say("settings.version.nothingChanged")}</p>;
	return (
		<DataTable
			caption={caption}
			captionHidden
			columns={[
				{ key: "label", label: say("settings.row.what") },
				{ key: "before", label: say("settings.row.before") },
				{ key: "after", label: say("settings.row.after") },
			]}
			rows={changes.map(({ label, before, after }) => ({
				label,
				before: before ?? "–",
				after: after ?? "–",
			}))}
		/>
	);
}
