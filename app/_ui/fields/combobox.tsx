"use client";

import { Combobox as Base } from "@base-ui/react/combobox";
import { useEffect, useMemo, useRef, useState } from "react";
import { useReader } from "../preferences/reader";
import styles from "./combobox.module.css";
import { Field } from "./field";
import fieldStyles from "./field.module.css";

export interface Entry {
	readonly id: string;
	readonly label: string;
	/** A second line, to tell namesakes apart. */
	readonly detail?: string;
}

/** An entry that exists, or a name to create one from. */
export type Picked =
	| { readonly kind: "entry"; readonly id: string; readonly label: string }
	| { readonly kind: "new"; readonly label: string };

interface Row extends Entry {
	readonly isNew: boolean;
}

/** Picks one of many by typing; a name that is not there yet can be created. */
export function Combobox({
	label,
	hint,
	error,
	name,
	entries,
	value,
	onChange,
	placeholder,
	createWord,
}: {
	label: string;
	hint?: React.ReactNode;
	error?: string | null;
	/** A hidden field of this name carries the id, empty for a new entry. */
	name?: string;
	entries: readonly Entry[];
	value: Picked | null;
	onChange: (picked: Picked | null) => void;
	placeholder?: string;
	/** Stands before the typed name: "New player: Ada". */
	createWord?: string;
}) {
	const { say } = useReader();
	const newWord = createWord ?? say("field.new");
	const [typed, setTyped] = useState(value?.label ?? "");
	const [isOpen, setOpen] = useState(false);
	const input = useRef<HTMLInputElement>(null);
	const made = useRef(typed);
	// Typed before the page's script ran: the field holds it, this does not know of it yet.
	useEffect(() => {
		const early = input.current?.value ?? made.current;
		if (early === made.current) return;
		setTyped(early);
		setOpen(document.activeElement === input.current);
	}, []);
	const wanted = typed.trim();
	const rows = useMemo<Row[]>(() => {
		const known = entries.map((entry) => ({ ...entry, isNew: false }));
		const exact = known.some(({ label: other }) => sameName(other, wanted));
		return wanted === "" || exact
			? known
			: [...known, { id: `new:${wanted}`, label: wanted, isNew: true }];
	}, [entries, wanted]);
	const selected =
		value === null
			? null
			: (rows.find((row) =>
					value.kind === "entry"
						? row.id === value.id
						: row.isNew && row.label === value.label,
				) ?? {
					id: value.kind === "entry" ? value.id : `new:${value.label}`,
					label: value.label,
					isNew: value.kind === "new",
				});

	const pick = (row: Row | null) => {
		if (row === null) onChange(null);
		else if (row.isNew) onChange({ kind: "new", label: row.label });
		else onChange({ kind: "entry", id: row.id, label: row.label });
	};
	return (
		<Field
			label={label}
			hint={hint}
			error={error}
			echo={
				value?.kind === "new" ? (
					<p className={fieldStyles.echo}>
						{newWord}: <strong>{value.label}</strong>
					</p>
				) : undefined
			}
		>
			{(wiring) => (
				<Base.Root<Row>
					items={rows}
					value={selected}
					onValueChange={pick}
					open={isOpen}
					onOpenChange={setOpen}
					inputValue={typed}
					onInputValueChange={(text) => {
						setTyped(text);
						if (text.trim() === "" && value !== null) onChange(null);
					}}
					itemToStringLabel={(row) => row.label}
					itemToStringValue={(row) => (row.isNew ? "" : row.id)}
					isItemEqualToValue={(row, other) => row.id === other.id}
					filter={(row, query) =>
						row.isNew ||
						folded(`${row.label} ${row.detail ?? ""}`).includes(folded(query))
					}
					autoHighlight
					name={name}
				>
					<Base.InputGroup className={styles.group}>
						<Base.Input
							{...wiring}
							ref={input}
							className={`${fieldStyles.control} ${styles.input}`}
							placeholder={placeholder}
							autoComplete="off"
							spellCheck={false}
						/>
						{typed !== "" && (
							<Base.Clear
								className={styles.icon}
								aria-label={say("field.clear", { label })}
							>
								<Cross />
							</Base.Clear>
						)}
						<Base.Trigger
							className={styles.icon}
							aria-label={say("field.showChoices", { label })}
						>
							<Caret />
						</Base.Trigger>
					</Base.InputGroup>
					<Base.Portal>
						<Base.Positioner className={styles.positioner} sideOffset={6}>
							<Base.Popup className={styles.popup}>
								<Base.Empty>
									<p className={styles.none}>{say("field.nothingYet")}</p>
								</Base.Empty>
								<Base.List className={styles.list}>
									{(row: Row) => (
										<Base.Item key={row.id} value={row} className={styles.item}>
											<span>
												{row.isNew ? `${newWord}: ${row.label}` : row.label}
											</span>
											{row.detail !== undefined && (
												<span className={styles.detail}>{row.detail}</span>
											)}
										</Base.Item>
									)}
								</Base.List>
							</Base.Popup>
						</Base.Positioner>
					</Base.Portal>
				</Base.Root>
			)}
		</Field>
	);
}

/** Without case and accents, so that "zoe" finds "Zoë". */
const folded = (text: string): string =>
	text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().trim();

const sameName = (a: string, b: string): boolean => folded(a) === folded(b);

const Cross = () => (
	<svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
		<path d="m5 5 10 10M15 5 5 15" stroke="currentColor" strokeWidth="2" />
	</svg>
);

const Caret = () => (
	<svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
		<path
			d="m5 7.5 5 5 5-5"
			fill="none"
			stroke="currentColor"
			strokeWidth="2"
		/>
	</svg>
);
