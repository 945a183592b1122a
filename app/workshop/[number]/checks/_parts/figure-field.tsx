import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { useReader } from "@/app/_ui/preferences/reader";
import {
	type BenchStage,
	type BuildToHold,
	compareAsBuilt,
	type Finding,
} from "@/lib/build/as-built";
import { boundOf, CHECK_FIELDS, type CheckField } from "@/lib/forms/check";
import { findingRow, verdictLine } from "@/lib/present/check-view";
import { VerdictText } from "./verdict";

const specOf = (field: CheckField): QuantitySpec =>
	CHECK_FIELDS[field].dimension === "mass"
		? {
				dimension: "mass",
				kind: field === "metal" ? "added" : "cue",
				...boundOf(field),
			}
		: {
				dimension: "length",
				kind: field === "butt" || field === "tip" ? "bench" : "gap",
				...boundOf(field),
			};

/** One figure of the cue, with what is wanted before it is typed and how it compares after. */
export function FigureField({
	field,
	stage,
	build,
	plannedMetal,
	text,
	onChange,
	finding,
}: {
	field: CheckField;
	stage: BenchStage;
	build: BuildToHold;
	plannedMetal: string | null;
	text: string;
	onChange: (text: string) => void;
	finding: Finding | null;
}) {
	const reader = useReader();
	const { say } = reader;
	const wanted = wantedOf(field, stage, build);
	const row = wanted === null ? null : findingRow(wanted, reader);
	return (
		<QuantityField
			label={say(`checks.figure.${field}`)}
			hint={
				<>
					{field === "metal" &&
						say("checks.form.metalHint", { metal: plannedMetal ?? "" })}
					{row !== null &&
						(row.verdict === "noted"
							? say("checks.form.wantedOnly", { wanted: row.wanted })
							: say("checks.form.wanted", {
									wanted: row.wanted,
									allowed: row.allowed,
								}))}
					{finding !== null && (
						<VerdictText verdict={findingRow(finding, reader).verdict}>
							{verdictLine(finding, reader)}
						</VerdictText>
					)}
				</>
			}
			value={text}
			onChange={onChange}
			spec={specOf(field)}
		/>
	);
}

/** What a reading of this figure would be held to; null where a stage compares it with nothing. */
function wantedOf(
	field: CheckField,
	stage: BenchStage,
	build: BuildToHold,
): Finding | null {
	const { name } = CHECK_FIELDS[field];
	return compareAsBuilt(build, { [name]: 0 }, stage).findings[0] ?? null;
}
