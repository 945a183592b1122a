import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Columns, Stack } from "@/app/_ui/section";
import {
	BILLET_FIELDS,
	type BilletField,
	billetKey,
	type CheckProblem,
	type CheckTexts,
	MOISTURE_BOUND,
} from "@/lib/forms/check";
import { formatNumber } from "@/lib/present/figures";
import { woodName } from "@/lib/present/labels";
import type { WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";

const NAMES = {
	mass: "checks.form.billetMass",
	length: "checks.form.billetLength",
	width: "checks.form.billetWidth",
	thickness: "checks.form.billetThickness",
} as const satisfies Record<BilletField, string>;

/** A billet of each wood of the cue, before the saw. */
export function BilletFields({
	woods,
	texts,
	put,
	problems,
}: {
	woods: readonly WoodId[];
	texts: CheckTexts;
	put: (key: string) => (text: string) => void;
	problems: readonly CheckProblem[];
}) {
	const reader = useReader();
	const { say } = reader;
	return (
		<Stack>
			{woods.map((wood) => (
				<fieldset key={wood}>
					<legend>
						{say("checks.form.billet", { wood: woodName(wood, reader) })}
					</legend>
					<Columns minRem={13}>
						{(Object.keys(BILLET_FIELDS) as BilletField[]).map((field) => {
							const { dimension, min, max } = BILLET_FIELDS[field];
							const key = billetKey(wood, field);
							const label = say(NAMES[field]);
							const isMissing = problems.some(
								(one) => one.field === key && one.code === "missing",
							);
							return (
								<QuantityField
									key={key}
									label={label}
									value={texts[key] ?? ""}
									onChange={put(key)}
									error={
										isMissing ? say("checks.form.missing", { label }) : null
									}
									spec={
										dimension === "mass"
											? { dimension, kind: "added", min, max }
											: { dimension, kind: "gap", min, max }
									}
								/>
							);
						})}
						<TextField
							label={say("checks.form.moisture")}
							hint={say("checks.form.moistureHint")}
							value={texts[billetKey(wood, "moisture")] ?? ""}
							onChange={put(billetKey(wood, "moisture"))}
							inputMode="decimal"
							maxLength={20}
							error={moistureWords(problems, wood, reader)}
						/>
					</Columns>
				</fieldset>
			))}
		</Stack>
	);
}

function moistureWords(
	problems: readonly CheckProblem[],
	wood: WoodId,
	reader: Reader,
): string | null {
	const problem = problems.find(
		({ field }) => field === billetKey(wood, "moisture"),
	);
	if (problem === undefined) return null;
	const { value } = problem;
	const bounds = {
		min: formatNumber(MOISTURE_BOUND.min, reader),
		max: formatNumber(MOISTURE_BOUND.max, reader),
	};
	return problem.code === "out-of-range" && typeof value === "number"
		? reader.say("checks.form.moistureOut", {
				...bounds,
				value: formatNumber(value, reader, 1),
			})
		: reader.say("checks.form.moistureWrong", {
				...bounds,
				value: String(value ?? ""),
			});
}
