"use client";

import type { ReactNode } from "react";
import { useController } from "react-hook-form";
import { ChecksField, ChoiceField } from "@/app/_ui/fields/choice-field";
import { Field } from "@/app/_ui/fields/field";
import fieldStyles from "@/app/_ui/fields/field.module.css";
import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { ReadingsField } from "@/app/_ui/fields/readings-field";
import { SelectField } from "@/app/_ui/fields/select-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { problemsOf } from "@/lib/forms/answers";
import { MAX_GRIP_READINGS, MAX_NOTES_LENGTH } from "@/lib/forms/bounds";
import { FIELDS, type FieldName } from "@/lib/forms/fields";
import type { ListField, TextFieldName } from "@/lib/forms/fitting";
import { estimateWords } from "@/lib/present/estimates";
import { choiceLabel, fieldLabel } from "@/lib/present/labels";
import { problemText } from "@/lib/present/notices";
import type { Messages, Reader } from "@/lib/words/reader";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import { useOldAnswer } from "./old-answers";
import { hintOn, quantitySpec } from "./questions";

/** One question of a fitting, with the control its kind of answer asks for. */
export function Question({
	name,
	hint: inPlace,
}: {
	name: FieldName;
	/** In place of the usual hint. */
	hint?: ReactNode;
}) {
	const { reader } = useDesk();
	const hint = inPlace ?? hintOn(name, reader);
	const field = FIELDS[name];
	const old = useOldAnswer(name);
	const words = {
		label: fieldLabel(name, reader),
		hint:
			old === null ? (
				hint
			) : (
				<>
					<span className={styles.old}>{old}</span> {hint}
				</>
			),
		name,
	};
	if (field.kind === "readings")
		return <Readings name={name as ListField} words={words} />;
	if (field.kind === "choices")
		return (
			<Checks name={name as ListField} words={words} options={field.options} />
		);
	return <One name={name as TextFieldName} words={words} />;
}

interface Words {
	readonly label: string;
	readonly hint: ReactNode;
	readonly name: string;
}
const optionsOf = (
	name: FieldName,
	options: readonly string[],
	reader: Reader,
) =>
	options.map((value) => ({ value, label: choiceLabel(name, value, reader) }));

function useEstimate(name: FieldName) {
	const { advice, reader } = useDesk();
	return advice.ok ? estimateWords(name, advice.value, reader) : null;
}

function Readings({ name, words }: { name: ListField; words: Words }) {
	const { control } = useDesk();
	const { field } = useController({ control, name });
	return (
		<ReadingsField
			{...words}
			values={field.value}
			onChange={field.onChange}
			onBlur={field.onBlur}
			spec={quantitySpec(name)}
			estimate={useEstimate(name)}
			most={MAX_GRIP_READINGS}
		/>
	);
}

function Checks({
	name,
	words,
	options,
}: {
	name: ListField;
	words: Words;
	options: readonly string[];
}) {
	const { control, reader } = useDesk();
	const { field } = useController({ control, name });
	return (
		<ChecksField
			{...words}
			values={field.value}
			options={optionsOf(name, options, reader)}
			onChange={field.onChange}
		/>
	);
}

function One({ name, words }: { name: TextFieldName; words: Words }) {
	const { control, reader } = useDesk();
	const { field } = useController({ control, name });
	const estimate = useEstimate(name);
	const shape = FIELDS[name];
	const unsure = reader.say(`fitting.unsure.${UNSURE[name] ?? "notSure"}`);
	const problem = () => {
		const [first] = problemsOf(name, field.value, reader.system);
		return first === undefined ? null : problemText(first, reader);
	};
	switch (shape.kind) {
		case "length":
		case "mass":
			return (
				<QuantityField
					{...words}
					value={field.value}
					onChange={field.onChange}
					onBlur={field.onBlur}
					spec={quantitySpec(name)}
					estimate={estimate}
				/>
			);
		case "choice":
			if (shape.options.length > MOST_BUTTONS)
				return (
					<SelectField
						{...words}
						value={field.value}
						options={optionsOf(name, shape.options, reader)}
						onChange={field.onChange}
						unsure={unsure}
					/>
				);
			return (
				<ChoiceField
					{...words}
					value={field.value}
					options={optionsOf(name, shape.options, reader)}
					onChange={field.onChange}
					unsure={unsure}
				/>
			);
		case "yes-no":
			return (
				<ChoiceField
					{...words}
					value={field.value}
					options={optionsOf(name, ["yes", "no"], reader)}
					onChange={field.onChange}
					unsure={null}
				/>
			);
		case "years":
		case "amount":
			return (
				<TextField
					{...words}
					value={field.value}
					onChange={field.onChange}
					onBlur={field.onBlur}
					inputMode="decimal"
					maxLength={20}
					error={problem()}
				/>
			);
		case "date":
			return (
				<Field
					label={words.label}
					hint={words.hint}
					error={problem()}
					empty={field.value === ""}
				>
					{(wiring) => (
						<div className={fieldStyles.withUnit}>
							<input
								{...wiring}
								className={fieldStyles.control}
								type="date"
								autoComplete="off"
								name={name}
								value={field.value}
								onChange={field.onChange}
								onBlur={field.onBlur}
							/>
						</div>
					)}
				</Field>
			);
		case "text":
			return (
				<TextField
					{...words}
					value={field.value}
					onChange={field.onChange}
					onBlur={field.onBlur}
					rows={4}
					maxLength={MAX_NOTES_LENGTH}
					error={problem()}
				/>
			);
	}
}

/** More options than this are a list, not a wall of buttons. */
const MOST_BUTTONS = 6;

/** The word for leaving a choice open, where "Not sure" would be wrong. */
const UNSURE: Partial<Record<FieldName, keyof Messages["fitting"]["unsure"]>> =
	{
		game: "snooker",
		level: "notSaid",
		hand: "notSaid",
		sex: "ratherNot",
		budget: "notSaid",
		wishClosure: "noView",
		wishButtWood: "open",
		wishShaftWood: "open",
		wishSplice: "open",
		wishLayout: "open",
		wishTaper: "open",
		wishFerrule: "open",
		wishSteadiness: "noView",
		wishStiffness: "noView",
		wishDeflection: "noView",
	};
