"use client";

import { useEffect, useState } from "react";
import { useController } from "react-hook-form";
import { Button } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { MeasureDrawing } from "@/app/_ui/measure-drawings";
import { MAX_NOTES_LENGTH } from "@/lib/forms/bounds";
import type { MeasureName } from "@/lib/forms/choices";
import { noteOn } from "@/lib/forms/fields";
import { fieldLabel } from "@/lib/present/labels";
import { useDesk } from "./desk";
import styles from "./measuring.module.css";
import { Question } from "./question";
import { hintAlone, hintOn } from "./questions";

/** A measure: how to take it drawn beside the words, "could not", and a note. */
export function MeasureQuestion({
	name,
	isAlone,
}: {
	name: Exclude<MeasureName, "gripReadings">;
	isAlone: boolean;
}) {
	const { read, reader } = useDesk();
	const hint = (isAlone ? hintAlone : hintOn)(name, reader);
	return (
		<div className={styles.measure}>
			<Question
				name={name}
				hint={
					<span className={styles.how}>
						<span className={styles.sketch}>
							<MeasureDrawing name={name} left={read.input.hand === "left"} />
						</span>
						<span>{hint}</span>
					</span>
				}
			/>
			<MeasureExtras name={name} />
		</div>
	);
}

/** "Could not be measured", kept apart from not asked, and a line of text. A reading takes the flag back. */
export function MeasureExtras({ name }: { name: MeasureName }) {
	const { control, reader } = useDesk();
	const { field: flags } = useController({ control, name: "notMeasured" });
	const { field: value } = useController({ control, name });
	const { field: note } = useController({ control, name: noteOn(name) });
	const [isWriting, setWriting] = useState(false);
	const isRead = [value.value].flat().some((text) => text.trim() !== "");
	const isFlagged = flags.value.includes(name);
	const { onChange } = flags;
	useEffect(() => {
		if (isRead && isFlagged)
			onChange(flags.value.filter((flag) => flag !== name));
	}, [isRead, isFlagged, flags.value, name, onChange]);

	return (
		<div className={styles.extras}>
			{!isRead && (
				<Button
					look="quiet"
					aria-pressed={isFlagged}
					onClick={() =>
						onChange(
							isFlagged
								? flags.value.filter((flag) => flag !== name)
								: [...flags.value, name],
						)
					}
				>
					{isFlagged && <span aria-hidden="true">✓</span>}
					{reader.say.rich("fitting.couldNot", {
						measure: fieldLabel(name, reader),
						unseen: (words) => <span className={styles.unseen}>{words}</span>,
					})}
				</Button>
			)}
			{isWriting || note.value !== "" ? (
				<TextField
					label={fieldLabel(noteOn(name), reader)}
					name={noteOn(name)}
					value={note.value}
					onChange={note.onChange}
					onBlur={note.onBlur}
					maxLength={MAX_NOTES_LENGTH}
				/>
			) : (
				<Button look="quiet" onClick={() => setWriting(true)}>
					{reader.say.rich("fitting.note", {
						measure: fieldLabel(name, reader),
						unseen: (words) => <span className={styles.unseen}>{words}</span>,
					})}
				</Button>
			)}
		</div>
	);
}
