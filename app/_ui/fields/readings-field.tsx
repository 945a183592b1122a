"use client";

import { useRef, useState } from "react";
import { formatLength, formatMass } from "@/lib/present/figures";
import type { Reader } from "@/lib/words/reader";
import { Button } from "../button";
import { useReader } from "../preferences/reader";
import { type EstimateWords, GroupField } from "./field";
import styles from "./field.module.css";
import {
	bareUnit,
	bothOf,
	type QuantitySpec,
	readTyped,
	refusedWords,
	settledText,
} from "./quantity";

/** Several readings of one thing, with their mean and how far apart they lie. */
export function ReadingsField({
	label,
	hint,
	name,
	values,
	onChange,
	onBlur,
	spec,
	estimate,
	error,
	most = 12,
}: {
	label: string;
	hint?: React.ReactNode;
	name?: string;
	/** The texts as typed, one a reading. */
	values: readonly string[];
	onChange: (texts: string[]) => void;
	onBlur?: () => void;
	spec: QuantitySpec;
	estimate?: EstimateWords | null;
	error?: string | null;
	most?: number;
}) {
	const reader = useReader();
	const inputs = useRef<(HTMLInputElement | null)[]>([]);
	const [typingAt, setTypingAt] = useState<number | null>(null);
	const rows = values.length === 0 ? [""] : [...values];
	const put = (at: number, text: string) =>
		onChange(rows.map((row, index) => (index === at ? text : row)));
	const good = rows
		.map((row) => readTyped(row, spec, reader))
		.flatMap((read) => (read.ok ? [read.value] : []));

	const add = () => {
		onChange([...rows, ""]);
		const at = rows.length;
		requestAnimationFrame(() => inputs.current[at]?.focus());
	};
	const remove = (at: number) => {
		onChange(rows.filter((_, index) => index !== at));
		requestAnimationFrame(() => inputs.current[Math.max(0, at - 1)]?.focus());
	};
	return (
		<GroupField
			label={label}
			hint={hint}
			error={error}
			estimate={estimate}
			empty={rows.every((row) => row.trim() === "")}
			echo={<Summary values={good} spec={spec} reader={reader} />}
		>
			<ol className={styles.readings}>
				{rows.map((row, at) => {
					const read = readTyped(row, spec, reader);
					const wrong =
						!read.ok && row.trim() !== "" && typingAt !== at
							? refusedWords(
									reader.say("field.reading", { place: String(at + 1) }),
									read.refusal,
									spec,
									reader,
								)
							: null;
					return (
						// biome-ignore lint/suspicious/noArrayIndexKey: a reading has no name but its place
						<li className={styles.reading} key={at}>
							<div className={styles.withUnit}>
								<input
									ref={(element) => {
										inputs.current[at] = element;
									}}
									className={styles.control}
									type="text"
									inputMode="decimal"
									autoComplete="off"
									spellCheck={false}
									name={name}
									aria-label={reader.say("field.readingOf", {
										label,
										place: String(at + 1),
									})}
									aria-invalid={wrong === null ? undefined : true}
									value={row}
									onChange={(event) => {
										if (wrong === null) setTypingAt(at);
										put(at, event.target.value);
									}}
									onBlur={() => {
										setTypingAt(null);
										const settled = settledText(row, spec, reader);
										if (settled !== row) put(at, settled);
										onBlur?.();
									}}
								/>
								{(row.trim() === "" ||
									(read.ok && read.assumedUnit !== null)) && (
									<span className={styles.unit} aria-hidden="true">
										{bareUnit(spec, reader)}
									</span>
								)}
							</div>
							{rows.length > 1 && (
								<Button
									look="quiet"
									onClick={() => remove(at)}
									aria-label={reader.say("field.removeReading", {
										place: String(at + 1),
									})}
								>
									{reader.say("field.remove")}
								</Button>
							)}
							{wrong !== null && (
								<p className={styles.readingError} role="alert">
									{wrong}
								</p>
							)}
						</li>
					);
				})}
			</ol>
			{rows.length < most && (
				<div>
					<Button onClick={add}>{reader.say("field.addReading")}</Button>
				</div>
			)}
		</GroupField>
	);
}

function Summary({
	values,
	spec,
	reader,
}: {
	values: readonly number[];
	spec: QuantitySpec;
	reader: Reader;
}) {
	if (values.length === 0) return null;
	const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
	const spread = Math.max(...values) - Math.min(...values);
	const both = bothOf(mean, spec, reader);
	const apart =
		spec.dimension === "length"
			? formatLength(spread, reader, "gap")
			: formatMass(spread, reader, "added");
	return (
		<p className={styles.echo}>
			{reader.say.rich("field.mean", {
				count: values.length,
				...both,
				b: (text) => <strong>{text}</strong>,
			})}
			{values.length > 1 && reader.say("field.apart", { apart })}
		</p>
	);
}
