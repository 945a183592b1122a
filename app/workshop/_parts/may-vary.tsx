"use client";

import { useId } from "react";
import fieldStyles from "@/app/_ui/fields/field.module.css";
import {
	type QuantitySpec,
	readTyped,
	refusedWords,
	written,
} from "@/app/_ui/fields/quantity";
import { useReader } from "@/app/_ui/preferences/reader";
import type { Reader } from "@/lib/words/reader";
import {
	MAY_VARY,
	type MayVary,
	type MayVaryCode,
} from "@/lib/workshop/may-vary";
import styles from "./job.module.css";

/** What may vary, as it stands in the form: ticked or not, and by how much as typed. */
export type Deviations = Readonly<
	Record<MayVaryCode, { readonly isOn: boolean; readonly text: string }>
>;

const length = (max: number, kind: "station" | "bench"): QuantitySpec => ({
	dimension: "length",
	kind,
	min: 0,
	max,
});

/** How far off a finished cue may be said to be; null where no number belongs to it. */
const SPECS: Readonly<Record<MayVaryCode, QuantitySpec | "days" | null>> = {
	"mass-g": { dimension: "mass", kind: "added", min: 0, max: 100 },
	"balance-mm": length(100, "station"),
	"length-mm": length(50, "station"),
	"diameter-mm": length(3, "bench"),
	"hand-over-days": "days",
	"grain-and-colour": null,
};

const USUAL_TEXT = "";
const MOST_DAYS = 365;

export function deviationsOf(
	list: readonly MayVary[],
	reader: Reader,
): Deviations {
	const lineOf = (code: MayVaryCode) => {
		const known = list.find((one) => one.code === code);
		const spec = SPECS[code];
		if (known === undefined || known.within === null || spec === null)
			return { isOn: known !== undefined, text: USUAL_TEXT };
		return {
			isOn: true,
			text:
				spec === "days"
					? String(known.within)
					: written(known.within, spec, reader),
		};
	};
	return Object.fromEntries(
		MAY_VARY.map((code) => [code, lineOf(code)]),
	) as Deviations;
}

/** The ticked ones with their numbers, or what cannot be read. */
export function readDeviations(
	given: Deviations,
	reader: Reader,
):
	| { readonly ok: true; readonly list: readonly MayVary[] }
	| { readonly ok: false; readonly problems: readonly string[] } {
	const problems: string[] = [];
	const list: MayVary[] = [];
	for (const code of MAY_VARY) {
		const { isOn, text } = given[code];
		if (!isOn) continue;
		const spec = SPECS[code];
		if (spec === null || text.trim() === "") list.push({ code, within: null });
		else if (spec === "days") {
			const days = Number(text.trim());
			if (Number.isInteger(days) && days >= 0 && days <= MOST_DAYS)
				list.push({ code, within: days });
			else problems.push(reader.say("job.quote.daysWrong"));
		} else {
			const read = readTyped(text, spec, reader);
			if (read.ok) list.push({ code, within: read.value });
			else
				problems.push(
					refusedWords(
						reader.say(`job.mayVary.${code}`),
						read.refusal,
						spec,
						reader,
					),
				);
		}
	}
	return problems.length > 0 ? { ok: false, problems } : { ok: true, list };
}

export function MayVaryLine({
	code,
	value,
	onChange,
}: {
	code: MayVaryCode;
	value: { readonly isOn: boolean; readonly text: string };
	onChange: (value: { isOn: boolean; text: string }) => void;
}) {
	const { say } = useReader();
	const id = useId();
	const spec = SPECS[code];
	return (
		<div className={styles.mayVaryLine}>
			<label className={styles.tick}>
				<input
					type="checkbox"
					checked={value.isOn}
					onChange={({ target }) =>
						onChange({ ...value, isOn: target.checked })
					}
				/>
				<span id={id}>{say(`job.mayVary.${code}`)}</span>
			</label>
			{spec !== null && value.isOn && (
				<span className={styles.within}>
					<span id={`${id}-by`}>{say("job.quote.by")}</span>
					<input
						className={fieldStyles.control}
						type="text"
						inputMode="decimal"
						autoComplete="off"
						aria-labelledby={`${id} ${id}-by ${id}-unit`}
						value={value.text}
						onChange={({ target }) =>
							onChange({ ...value, text: target.value })
						}
					/>
					<span id={`${id}-unit`}>
						{spec === "days" ? say("job.quote.days") : ""}
					</span>
				</span>
			)}
		</div>
	);
}
