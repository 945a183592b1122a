import { Field } from "@/app/_ui/fields/field";
import fieldStyles from "@/app/_ui/fields/field.module.css";

/** A select that always has an answer. */
export function Pick<Value extends string>({
	label,
	value,
	options,
	onChange,
}: {
	label: string;
	value: Value;
	options: readonly { readonly value: Value; readonly label: string }[];
	onChange: (value: Value) => void;
}) {
	return (
		<Field label={label}>
			{(wiring) => (
				<select
					{...wiring}
					className={fieldStyles.control}
					value={value}
					onChange={(event) => onChange(event.target.value as Value)}
				>
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
