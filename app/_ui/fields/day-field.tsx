import { Field, type FieldWords } from "./field";
import styles from "./field.module.css";

/** A day of the calendar by the device's own picker, as an ISO date; empty where none is chosen. */
export function DayField({
	value,
	onChange,
	name,
	min,
	...words
}: FieldWords & {
	value: string;
	onChange: (isoDate: string) => void;
	name?: string;
	min?: string;
}) {
	return (
		<Field {...words} empty={value === ""}>
			{(wiring) => (
				<input
					{...wiring}
					className={styles.control}
					type="date"
					autoComplete="off"
					name={name}
					value={value}
					min={min}
					onChange={(event) => onChange(event.target.value)}
				/>
			)}
		</Field>
	);
}
