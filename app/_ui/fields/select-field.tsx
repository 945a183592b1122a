import type { Option } from "./choice-field";
import { Field } from "./field";
import styles from "./field.module.css";

/** One of many, as the device's own list. The empty string stands for leaving it open. */
export function SelectField({
	label,
	hint,
	name,
	value,
	options,
	onChange,
	unsure = "Not sure",
	error,
}: {
	label: React.ReactNode;
	hint?: React.ReactNode;
	name?: string;
	value: string;
	options: readonly Option[];
	onChange: (value: string) => void;
	unsure?: string;
	error?: string | null;
}) {
	return (
		<Field label={label} hint={hint} error={error}>
			{(wiring) => (
				<select
					{...wiring}
					className={styles.control}
					name={name}
					value={value}
					onChange={(event) => onChange(event.target.value)}
				>
					<option value="">{unsure}</option>
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
