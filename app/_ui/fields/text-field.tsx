import { type EstimateWords, Field } from "./field";
import styles from "./field.module.css";

/** Plain text: one line, or several with `rows`. */
export function TextField({
	label,
	hint,
	error,
	estimate,
	value,
	onChange,
	onBlur,
	name,
	rows,
	inputMode,
	autoComplete = "off",
	placeholder,
	required,
	maxLength,
}: {
	label: React.ReactNode;
	hint?: React.ReactNode;
	error?: string | null;
	estimate?: EstimateWords | null;
	value: string;
	onChange: (text: string) => void;
	onBlur?: () => void;
	name?: string;
	rows?: number;
	inputMode?: "text" | "decimal" | "numeric" | "search";
	autoComplete?: string;
	placeholder?: string;
	required?: boolean;
	maxLength?: number;
}) {
	const shared = {
		className: styles.control,
		name,
		value,
		placeholder,
		required,
		maxLength,
		autoComplete,
		onBlur,
	};
	return (
		<Field
			label={label}
			hint={hint}
			error={error}
			estimate={estimate}
			empty={value.trim() === ""}
		>
			{(wiring) =>
				rows === undefined ? (
					<input
						{...wiring}
						{...shared}
						type={inputMode === "search" ? "search" : "text"}
						inputMode={inputMode}
						onChange={(event) => onChange(event.target.value)}
					/>
				) : (
					<textarea
						{...wiring}
						{...shared}
						rows={rows}
						onChange={(event) => onChange(event.target.value)}
					/>
				)
			}
		</Field>
	);
}
