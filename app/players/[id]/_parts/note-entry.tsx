"use client";

import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import { putBackNote, takeBackNote } from "../actions";
import styles from "./timeline.module.css";

type State = "stands" | "taken" | "back" | "gone";

/** A note with the way to take it back, and to put it back while the page is open. */
export function NoteEntry({
	playerId,
	id,
	text,
	day,
}: {
	playerId: string;
	id: string;
	text: string;
	day: string;
}) {
	const { say } = useReader();
	const [state, setState] = useState<State>("stands");
	const [isBusy, startTransition] = useTransition();
	const isTaken = state === "taken";
	const turn = () =>
		startTransition(async () => {
			const { ok } = await (isTaken ? putBackNote : takeBackNote)({
				playerId,
				id,
			});
			setState(ok ? (isTaken ? "back" : "taken") : "gone");
		});
	return (
		<>
			{isTaken ? null : <p className={styles.note}>{text}</p>}
			<p role="status" className={styles.details}>
				{state === "taken" && say("timeline.takenBack")}
				{state === "back" && say("timeline.putBack")}
				{state === "gone" && say("timeline.noteGone")}
			</p>
			{state !== "gone" && (
				<div>
					<Button
						look="quiet"
						busy={isBusy}
						onClick={turn}
						aria-label={
							isTaken ? undefined : say("timeline.takeBack", { date: day })
						}
					>
						{say(isTaken ? "timeline.undo" : "timeline.takeBackShort")}
					</Button>
				</div>
			)}
		</>
	);
}
