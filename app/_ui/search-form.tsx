"use client";

import Form from "next/form";
import { Button } from "./button";
import fieldStyles from "./fields/field.module.css";
import { useReader } from "./preferences/reader";
import styles from "./search-form.module.css";

/** A search that is an address: it can be reloaded, shared and gone back to. */
export function SearchForm({
	action,
	name,
	label,
	value,
	kept = {},
}: {
	action: string;
	name: string;
	label: string;
	value: string;
	/** What else stands in the address and stays. */
	kept?: Readonly<Record<string, string>>;
}) {
	const { say } = useReader();
	return (
		<Form action={action} className={styles.search} role="search">
			<label className={fieldStyles.label} htmlFor={`search-${name}`}>
				{label}
			</label>
			{Object.entries(kept).map(([other, text]) => (
				<input key={other} type="hidden" name={other} value={text} />
			))}
			<div className={styles.row}>
				<input
					className={fieldStyles.control}
					id={`search-${name}`}
					type="search"
					name={name}
					key={value}
					defaultValue={value}
					maxLength={120}
					autoComplete="off"
				/>
				<Button type="submit">{say("part.search")}</Button>
			</div>
		</Form>
	);
}
