"use client";

import { useState } from "react";
import { useReader } from "../preferences/reader";
import { type EstimateWords, Field } from "./field";
import styles from "./field.module.css";
import {
	bareUnit,
	bothOf,
	type QuantitySpec,
	readTyped,
	refusedWords,
	settledText,
} from "./quantity";

/**
 * One typed quantity. The text stays as the person wrote it, except that a bare number gets its unit
 * on leaving the field, so that switching units later cannot change what was meant.
 */
export function QuantityField({
	label,
	hint,
	name,
	value,
	onChange,
	onBlur,
	spec,
	estimate,
	error: outerError,
	placeholder,
	disabled,
}: {
	label: string;
	hint?: React.ReactNode;
	name?: string;
	/** The text as typed; empty when left out. */
	value: string;
	onChange: (text: string) => void;
	onBlur?: () => void;
	spec: QuantitySpec;
	estimate?: EstimateWords | null;
	/** A refusal from elsewhere, shown before the field's own. */
	error?: string | null;
	placeholder?: string;
	disabled?: boolean;
}) {
	const reader = useReader();
	const [typing, setTyping] = useState(false);
	const read = readTyped(value, spec, reader);
	const empty = value.trim() === "";
	const own =
		read.ok || empty || typing
			? null
			: refusedWords(label, read.refusal, spec, reader);

	const settle = () => {
		setTyping(false);
		const settled = settledText(value, spec, reader);
		if (settled !== value) onChange(settled);
	};
	return (
		<Field
			label={label}
			hint={hint}
			error={outerError ?? own}
			estimate={estimate}
			empty={empty}
			echo={read.ok ? <Understood value={read.value} spec={spec} /> : undefined}
		>
			{(wiring) => (
				<div className={styles.withUnit}>
					<input
						{...wiring}
						className={styles.control}
						type="text"
						inputMode="decimal"
						autoComplete="off"
						autoCapitalize="off"
						spellCheck={false}
						name={name}
						value={value}
						placeholder={placeholder}
						disabled={disabled}
						onChange={(event) => {
							// A field that is already wrong is judged again at each key.
							if (own === null) setTyping(true);
							onChange(event.target.value);
						}}
						onKeyDown={(event) => {
							if (event.key === "Enter") settle();
						}}
						onBlur={() => {
							settle();
							onBlur?.();
						}}
					/>
					{(empty || (read.ok && read.assumedUnit !== null)) && (
						<span className={styles.unit} aria-hidden="true">
							{bareUnit(spec, reader)}
						</span>
					)}
				</div>
			)}
		</Field>
	);
}

export function Understood({
	value,
	spec,
}: {
	value: number;
	spec: QuantitySpec;
}) {
	const both = bothOf(value, spec, useReader());
	return (
		<p className={styles.echo}>
			= <strong>{both.main}</strong> · {both.other}
		</p>
	);
}
