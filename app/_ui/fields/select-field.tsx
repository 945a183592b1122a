"use client";

import { useReader } from "../preferences/reader";
import type { Option } from "./choice-field";
import { Field } from "./field";
import styles from "./field.module.css";

/**
 * One of many, as the device's own list. The empty string stands for leaving it open; pass
 * `unsure={null}` where one has to be chosen.
 */
export function SelectField({
	label,
	hint,
	name,
	value,
	options,
	onChange,
	unsure,
	error,
}: {
	label: React.ReactNode;
	hint?: React.ReactNode;
	name?: string;
	value: string;
	options: readonly Option[];
	onChange: (value: string) => void;
	unsure?: string | null;
	error?: string | null;
}) {
	const { say } = useReader();
	return (
		<Field label={label} hint={hint} error={error}>
			{(wiring) => (
				<select
					{...wiring}
					className={styles.control}
					name={name}
					autoComplete="off"
					value={value}
					onChange={(event) => onChange(event.target.value)}
				>
					{unsure !== null && (
						<option value="">{unsure ?? say("field.notSure")}</option>
					)}
					{options.map((option) => (
						<option key={option.value} value={option.value}>
							{option.label}
						</option>
					))}
				</select>
			)}
		</Field>
	);
}
