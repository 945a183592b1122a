"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { DayField } from "@/app/_ui/fields/day-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns } from "@/app/_ui/section";
import { addNote, putCustomer, putDue } from "../actions";
import { StepMessages, useStep } from "./job-desk";

export function DueForm({
	dueOn,
	hint,
}: {
	dueOn: string | null;
	hint: string;
}) {
	const { say } = useReader();
	const { run, isBusy, messages } = useStep();
	const [day, setDay] = useState(dueOn ?? "");
	return (
		<>
			<DayField
				label={say("job.details.due")}
				hint={hint}
				value={day}
				onChange={setDay}
			/>
			<StepMessages messages={messages} />
			<Actions>
				<Button
					busy={isBusy}
					onClick={() => {
						const asked = { dueOn: day === "" ? null : day };
						return run(asked, (edit) => putDue({ ...edit, ...asked }));
					}}
				>
					{say("job.details.saveDue")}
				</Button>
			</Actions>
		</>
	);
}

export function CustomerForm({
	name,
	contact,
	notes: written,
}: {
	name: string;
	contact: string;
	notes: string;
}) {
	const { say } = useReader();
	const { run, isBusy, messages, setMessages } = useStep();
	const [customerName, setName] = useState(name);
	const [customerContact, setContact] = useState(contact);
	const [notes, setNotes] = useState(written);
	const save = async () => {
		if (customerName.trim() === "") {
			setMessages([say("job.send.customerMissing")]);
			return;
		}
		const asked = { customerName, customerContact, notes };
		await run(asked, (edit) => putCustomer({ ...edit, ...asked }));
	};
	return (
		<>
			<Columns minRem={16}>
				<TextField
					label={say("job.details.customer")}
					value={customerName}
					onChange={setName}
					maxLength={200}
				/>
				<TextField
					label={say("job.details.contact")}
					value={customerContact}
					onChange={setContact}
					maxLength={400}
				/>
			</Columns>
			<TextField
				label={say("job.details.notes")}
				hint={say("job.details.notesHint")}
				value={notes}
				onChange={setNotes}
				rows={3}
				maxLength={2000}
			/>
			<StepMessages messages={messages} />
			<Actions>
				<Button busy={isBusy} onClick={save}>
					{say("job.details.save")}
				</Button>
			</Actions>
		</>
	);
}

export function NoteForm() {
	const { say } = useReader();
	const { run, isBusy, messages } = useStep();
	const [note, setNote] = useState("");
	return (
		<details>
			<summary>{say("job.history.add")}</summary>
			<TextField
				label={say("job.history.text")}
				value={note}
				onChange={setNote}
				rows={2}
				maxLength={2000}
			/>
			<StepMessages messages={messages} />
			<Actions>
				<Button
					busy={isBusy}
					onClick={async () => {
						if (note.trim() === "") return;
						if (await run({ note }, (edit) => addNote({ ...edit, note })))
							setNote("");
					}}
				>
					{say("job.history.save")}
				</Button>
			</Actions>
		</details>
	);
}
