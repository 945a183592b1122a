"use client";

import { type ReactNode, useId } from "react";
import { useReader } from "../preferences/reader";
import styles from "./field.module.css";

/** What stands in while an answer is left out, already in words. */
export interface EstimateWords {
	/** "1046 mm" */
	readonly value: string;
	/** "1010–1082 mm", where nine in ten lie. */
	readonly band: string;
	/** What it rests on: "from height", "average of the tables". */
	readonly from?: string;
}

export interface FieldWords {
	label: ReactNode;
	/** How to measure or what is meant; stays visible. */
	hint?: ReactNode;
	/** What is wrong, naming field, value and bound. */
	error?: string | null;
	/** Shown while the answer is empty. */
	estimate?: EstimateWords | null;
}

/** Ids and states that a control takes from its wrapper. */
export interface ControlWiring {
	id: string;
	"aria-describedby": string | undefined;
	"aria-invalid": true | undefined;
	"data-estimated": true | undefined;
}

/**
 * Label, hint, error and estimate round one control. `empty` says whether the answer is left out;
 * `echo` is what was understood.
 */
export function Field({
	label,
	hint,
	error,
	estimate,
	empty = false,
	echo,
	children,
}: FieldWords & {
	empty?: boolean;
	echo?: ReactNode;
	children: (wiring: ControlWiring) => ReactNode;
}) {
	const id = useId();
	const estimated = empty && estimate != null && !error;
	const ids = {
		hint: hint === undefined ? null : `${id}-hint`,
		message: `${id}-message`,
	};
	return (
		<div className={styles.field}>
			<label className={styles.label} htmlFor={id}>
				{label}
			</label>
			{ids.hint !== null && (
				<p className={styles.hint} id={ids.hint}>
					{hint}
				</p>
			)}
			{children({
				id,
				"aria-describedby": [ids.hint, ids.message].filter(Boolean).join(" "),
				"aria-invalid": error ? true : undefined,
				"data-estimated": estimated || undefined,
			})}
			<FieldMessage
				id={ids.message}
				error={error}
				estimate={estimated ? estimate : null}
				echo={echo}
			/>
		</div>
	);
}

/** The same for a group of controls: a fieldset with a legend. */
export function GroupField({
	label,
	hint,
	error,
	estimate,
	empty = false,
	echo,
	children,
}: FieldWords & {
	empty?: boolean;
	echo?: ReactNode;
	children: ReactNode;
}) {
	const id = useId();
	const hintId = hint === undefined ? null : `${id}-hint`;
	return (
		<fieldset
			className={styles.field}
			aria-describedby={[hintId, `${id}-message`].filter(Boolean).join(" ")}
		>
			<legend className={styles.label}>{label}</legend>
			{hintId !== null && (
				<p className={styles.hint} id={hintId}>
					{hint}
				</p>
			)}
			{children}
			<FieldMessage
				id={`${id}-message`}
				error={error}
				estimate={empty && !error ? estimate : null}
				echo={echo}
			/>
		</fieldset>
	);
}

function FieldMessage({
	id,
	error,
	estimate,
	echo,
}: {
	id: string;
	error: string | null | undefined;
	estimate: EstimateWords | null | undefined;
	echo: ReactNode;
}) {
	return (
		<div className={styles.message} id={id}>
			<div aria-live="polite">
				{error && <p className={styles.error}>{error}</p>}
			</div>
			{estimate != null && <EstimateLine {...estimate} />}
			{!error && echo}
		</div>
	);
}

function EstimateLine({ value, band, from }: EstimateWords) {
	const { say } = useReader();
	return (
		<p className={styles.estimate}>
			{say.rich("field.estimate", {
				value,
				has: from === undefined ? "none" : "from",
				from: from ?? "",
				tag: (text) => <span className={styles.tag}>{text}</span>,
				soft: (text) => <span className={styles.soft}>{text}</span>,
				band: () => <span className={styles.band}>{band}</span>,
			})}
		</p>
	);
}
