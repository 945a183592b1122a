"use client";

import { useId } from "react";
import { useReader } from "../preferences/reader";
import { type EstimateWords, GroupField } from "./field";
import styles from "./field.module.css";

export interface Option {
	readonly value: string;
	readonly label: string;
	readonly hint?: string;
}

/**
 * One of a few, as large native radio buttons. The empty string stands for "not sure"; pass
 * `unsure={null}` where the question must be answered.
 */
export function ChoiceField({
	label,
	hint,
	name,
	value,
	options,
	onChange,
	unsure,
	estimate,
	error,
}: {
	label: React.ReactNode;
	hint?: React.ReactNode;
	name?: string;
	value: string;
	options: readonly Option[];
	onChange: (value: string) => void;
	/** Left out: "not sure". */
	unsure?: string | null;
	estimate?: EstimateWords | null;
	error?: string | null;
}) {
	const { say } = useReader();
	const own = useId();
	return (
		<GroupField
			label={label}
			hint={hint}
			error={error}
			estimate={estimate}
			empty={value === ""}
		>
			<div className={styles.segments}>
				{options.map((option) => (
					<label className={styles.segment} key={option.value}>
						<input
							type="radio"
							autoComplete="off"
							name={name ?? own}
							value={option.value}
							checked={value === option.value}
							onChange={() => onChange(option.value)}
						/>
						<span className={styles.dot} aria-hidden="true" />
						<OptionText {...option} />
					</label>
				))}
				{unsure !== null && (
					<label className={`${styles.segment} ${styles.unsure}`}>
						<input
							type="radio"
							autoComplete="off"
							name={name ?? own}
							value=""
							checked={value === ""}
							onChange={() => onChange("")}
						/>
						<span className={styles.dot} aria-hidden="true" />
						{unsure ?? say("field.notSure")}
					</label>
				)}
			</div>
		</GroupField>
	);
}

/** Any number of a few. */
export function ChecksField({
	label,
	hint,
	name,
	values,
	options,
	onChange,
	error,
}: {
	label: React.ReactNode;
	hint?: React.ReactNode;
	name?: string;
	values: readonly string[];
	options: readonly Option[];
	onChange: (values: string[]) => void;
	error?: string | null;
}) {
	return (
		<GroupField label={label} hint={hint} error={error}>
			<div className={styles.segments}>
				{options.map((option) => (
					<label className={styles.segment} key={option.value}>
						<input
							type="checkbox"
							autoComplete="off"
							name={name}
							value={option.value}
							checked={values.includes(option.value)}
							onChange={(event) =>
								onChange(
									event.target.checked
										? [...values, option.value]
										: values.filter((value) => value !== option.value),
								)
							}
						/>
						<span
							className={`${styles.dot} ${styles.square}`}
							aria-hidden="true"
						/>
						<OptionText {...option} />
					</label>
				))}
			</div>
		</GroupField>
	);
}

function OptionText({ label, hint }: Option) {
	return (
		<span className={styles.segmentText}>
			{label}
			{hint !== undefined && <small>{hint}</small>}
		</span>
	);
}
