"use client";

import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { DayField } from "@/app/_ui/fields/day-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Stack } from "@/app/_ui/section";
import { writeNote } from "../actions";

/** Writes a line into the diary. Sent twice it is written once. */
export function NoteForm({
	playerId,
	today,
	maxLength,
}: {
	playerId: string;
	today: string;
	maxLength: number;
}) {
	const { say } = useReader();
	const [text, setText] = useState("");
	const [day, setDay] = useState(today);
	const [wasSent, setWasSent] = useState(false);
	const [isSaved, setIsSaved] = useState(false);
	const [isBusy, startTransition] = useTransition();
	const requestKey = useRef<string | null>(null);
	return (
		<form
			onSubmit={(event) => {
				event.preventDefault();
				setWasSent(true);
				setIsSaved(false);
				if (isBusy || text.trim() === "" || day === "") return;
				requestKey.current ??= newRequestKey();
				const request = {
					playerId,
					text,
					writtenOn: day,
					requestKey: requestKey.current,
				};
				startTransition(async () => {
					await writeNote(request);
					requestKey.current = null;
					setText("");
					setWasSent(false);
					setIsSaved(true);
				});
			}}
		>
			<Stack>
				<TextField
					label={say("timeline.noteLabel")}
					rows={3}
					value={text}
					maxLength={maxLength}
					onChange={(typed) => {
						requestKey.current = null;
						setText(typed);
					}}
					error={
						wasSent && text.trim() === "" ? say("timeline.noteEmpty") : null
					}
				/>
				<DayField
					label={say("timeline.noteDay")}
					value={day}
					onChange={(chosen) => {
						requestKey.current = null;
						setDay(chosen);
					}}
					error={wasSent && day === "" ? say("timeline.noteNoDay") : null}
				/>
				<Actions>
					<Button type="submit" aria-disabled={isBusy || undefined}>
						{say("timeline.noteSave")}
					</Button>
				</Actions>
				<p role="status">{isSaved && say("timeline.noteSaved")}</p>
			</Stack>
		</form>
	);
}
