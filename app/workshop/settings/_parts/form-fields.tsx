"use client";

import type { ReactNode } from "react";
import {
	type Control,
	type FieldPath,
	type FieldValues,
	useController,
} from "react-hook-form";
import {
	ChecksField,
	ChoiceField,
	type Option,
} from "@/app/_ui/fields/choice-field";
import { DayField } from "@/app/_ui/fields/day-field";
import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { SelectField } from "@/app/_ui/fields/select-field";
import { TextField } from "@/app/_ui/fields/text-field";

interface Named<Form extends FieldValues> {
	// A form read to other values has a control of another type.
	// biome-ignore lint/suspicious/noExplicitAny: the transformed type is of no matter to a field
	readonly control: Control<Form, any, any>;
	readonly name: FieldPath<Form>;
	readonly label: string;
	readonly hint?: ReactNode;
}

const useNamed = <Form extends FieldValues>({ control, name }: Named<Form>) => {
	const { field, fieldState } = useController({ control, name });
	return {
		value: field.value,
		onChange: field.onChange as (value: unknown) => void,
		onBlur: field.onBlur,
		error: fieldState.error?.message ?? null,
	};
};

/** A typed text of the form. */
export function FormText<Form extends FieldValues>({
	rows,
	inputMode,
	maxLength,
	...named
}: Named<Form> & {
	rows?: number;
	inputMode?: "text" | "decimal" | "numeric";
	maxLength?: number;
}) {
	const { value, onChange, onBlur, error } = useNamed(named);
	return (
		<TextField
			label={named.label}
			hint={named.hint}
			name={named.name}
			value={value}
			onChange={onChange}
			onBlur={onBlur}
			error={error}
			rows={rows}
			inputMode={inputMode}
			maxLength={maxLength}
		/>
	);
}

/** A length or mass of the form, with its unit. */
export function FormQuantity<Form extends FieldValues>({
	spec,
	...named
}: Named<Form> & { spec: QuantitySpec }) {
	const { value, onChange, onBlur, error } = useNamed(named);
	return (
		<QuantityField
			label={named.label}
			hint={named.hint}
			name={named.name}
			value={value}
			onChange={onChange}
			onBlur={onBlur}
			spec={spec}
			error={error}
		/>
	);
}

/** One of a few. */
export function FormChoice<Form extends FieldValues>({
	options,
	...named
}: Named<Form> & { options: readonly Option[] }) {
	const { value, onChange, error } = useNamed(named);
	return (
		<ChoiceField
			label={named.label}
			hint={named.hint}
			name={named.name}
			value={value}
			onChange={onChange}
			options={options}
			unsure={null}
			error={error}
		/>
	);
}

/** One of many. */
export function FormSelect<Form extends FieldValues>({
	options,
	...named
}: Named<Form> & { options: readonly Option[] }) {
	const { value, onChange, error } = useNamed(named);
	return (
		<SelectField
			label={named.label}
			hint={named.hint}
			name={named.name}
			value={value}
			onChange={onChange}
			options={options}
			unsure={null}
			error={error}
		/>
	);
}

/** Any number of a few. */
export function FormChecks<Form extends FieldValues>({
	options,
	...named
}: Named<Form> & { options: readonly Option[] }) {
	const { value, onChange, error } = useNamed(named);
	return (
		<ChecksField
			label={named.label}
			hint={named.hint}
			name={named.name}
			values={value}
			onChange={onChange}
			options={options}
			error={error}
		/>
	);
}

/** A day of the calendar. */
export function FormDay<Form extends FieldValues>(named: Named<Form>) {
	const { value, onChange, error } = useNamed(named);
	return (
		<DayField
			label={named.label}
			hint={named.hint}
			name={named.name}
			value={value}
			onChange={onChange}
			error={error}
		/>
	);
}
