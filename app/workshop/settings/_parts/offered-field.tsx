"use client";

import {
	type Control,
	type FieldPath,
	type FieldValues,
	useController,
} from "react-hook-form";
import { ChecksField, type Option } from "@/app/_ui/fields/choice-field";
import { SelectField } from "@/app/_ui/fields/select-field";
import { useReader } from "@/app/_ui/preferences/reader";
import type { ChosenForm } from "@/lib/forms/settings/catalogue";

/** Several offered, and which of them is the usual one. */
export function OfferedField<Form extends FieldValues>({
	control,
	name,
	label,
	options,
}: {
	// biome-ignore lint/suspicious/noExplicitAny: the transformed type is of no matter to a field
	control: Control<Form, any, any>;
	name: FieldPath<Form>;
	label: string;
	options: readonly Option[];
}) {
	const { say } = useReader();
	const { field, fieldState } = useController({ control, name });
	const { offered, usual } = field.value as ChosenForm;
	const put = field.onChange as (chosen: ChosenForm) => void;
	const error = fieldState.error as
		| { offered?: { message?: string } }
		| undefined;
	return (
		<>
			<ChecksField
				label={label}
				name={`${name}.offered`}
				values={offered}
				options={options}
				error={error?.offered?.message ?? null}
				onChange={(next) =>
					put({
						offered: next,
						usual: next.includes(usual) ? usual : (next[0] ?? ""),
					})
				}
			/>
			{offered.length > 1 && (
				<SelectField
					label={say("settings.catalogue.usualOf", { what: label })}
					name={`${name}.usual`}
					value={usual}
					unsure={null}
					options={options.filter(({ value }) => offered.includes(value))}
					onChange={(next) => put({ offered, usual: next })}
				/>
			)}
		</>
	);
}
