import { DataTable } from "@/app/_ui/data-table";
import type { Finding } from "@/lib/build/as-built";
import { findingRow } from "@/lib/present/check-view";
import type { Reader } from "@/lib/words/reader";
import { VerdictText } from "./verdict";

/** Readings against what was wanted, a row each. */
export function Findings({
	caption,
	findings,
	reader,
}: {
	caption: string;
	findings: readonly Finding[];
	reader: Reader;
}) {
	const { say } = reader;
	return (
		<DataTable
			caption={caption}
			captionHidden
			columns={[
				{ key: "figure", label: say("checks.list.figure") },
				{ key: "measured", label: say("checks.list.measured"), numeric: true },
				{ key: "wanted", label: say("checks.list.wanted"), numeric: true },
				{
					key: "deviation",
					label: say("checks.list.deviation"),
					numeric: true,
				},
				{ key: "allowed", label: say("checks.list.allowed") },
				{ key: "verdict", label: say("checks.list.verdict") },
			]}
			rows={findings.map((finding) => {
				const { verdict, verdictText, ...row } = findingRow(finding, reader);
				return {
					...row,
					verdict: <VerdictText verdict={verdict}>{verdictText}</VerdictText>,
				};
			})}
		/>
	);
}
