import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Columns } from "@/app/_ui/section";
import type { BenchStage, BuildToHold, Finding } from "@/lib/build/as-built";
import { compareAsBuilt } from "@/lib/build/as-built";
import { type CheckTexts, DIAMETER_BOUND, stationKey } from "@/lib/forms/check";
import { findingRow, verdictLine } from "@/lib/present/check-view";
import { formatLength } from "@/lib/present/figures";
import styles from "./checks.module.css";
import { VerdictText } from "./verdict";

/** A diameter for each station of the sheet, from the butt end on. */
export function StationFields({
	stage,
	build,
	texts,
	put,
	findings,
}: {
	stage: BenchStage;
	build: BuildToHold;
	texts: CheckTexts;
	put: (key: string) => (text: string) => void;
	findings: readonly Finding[];
}) {
	const reader = useReader();
	const { say } = reader;
	return (
		<details className={styles.fold} open={stage === "turned" || undefined}>
			<summary>{say("checks.form.stations")}</summary>
			<Columns minRem={14}>
				{build.stations.toReversed().map(({ stationMm, fromButtMm }) => {
					const key = stationKey(stationMm);
					const [wanted] = compareAsBuilt(
						build,
						{ stations: [{ stationMm, diameterMm: 0 }] },
						stage,
					).findings;
					const row = wanted && findingRow(wanted, reader);
					const finding = findings.find((one) => one.stationMm === stationMm);
					return (
						<QuantityField
							key={key}
							label={say("checks.form.stationAt", {
								fromButt: formatLength(fromButtMm, reader, "station"),
							})}
							hint={
								<>
									{row &&
										say("checks.form.wanted", {
											wanted: row.wanted,
											allowed: row.allowed,
										})}
									{finding !== undefined && (
										<VerdictText verdict={findingRow(finding, reader).verdict}>
											{verdictLine(finding, reader)}
										</VerdictText>
									)}
								</>
							}
							value={texts[key] ?? ""}
							onChange={put(key)}
							spec={{ dimension: "length", kind: "bench", ...DIAMETER_BOUND }}
						/>
					);
				})}
			</Columns>
		</details>
	);
}
