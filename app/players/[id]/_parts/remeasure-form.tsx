"use client";

import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { DayField } from "@/app/_ui/fields/day-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Stack } from "@/app/_ui/section";
import { setRemeasure } from "../actions";

/** Sets the day to measure again; empty leaves it to the growth tables. */
export function RemeasureForm({
	playerId,
	revision,
	remeasureOn,
}: {
	playerId: string;
	revision: number;
	remeasureOn: string | null;
}) {
	const { say } = useReader();
	const [day, setDay] = useState(remeasureOn ?? "");
	const [told, setTold] = useState<
		"daySet" | "dayTaken" | "dayConflict" | null
	>(null);
	const [isBusy, startTransition] = useTransition();
	const put = (wanted: string | null) =>
		startTransition(async () => {
			const { ok } = await setRemeasure({
				playerId,
				revision,
				remeasureOn: wanted,
			});
			if (ok && wanted === null) setDay("");
			setTold(!ok ? "dayConflict" : wanted === null ? "dayTaken" : "daySet");
		});
	return (
		<form
			onSubmit={(event) => {
				event.preventDefault();
				if (!isBusy) put(day === "" ? null : day);
			}}
		>
			<Stack>
				<DayField
					label={say("timeline.dayLabel")}
					hint={say("timeline.dayHint")}
					value={day}
					onChange={setDay}
				/>
				<Actions>
					<Button type="submit" aria-disabled={isBusy || undefined}>
						{say("timeline.setDay")}
					</Button>
					{remeasureOn !== null && (
						<Button look="quiet" busy={isBusy} onClick={() => put(null)}>
							{say("timeline.takeDayAway")}
						</Button>
					)}
				</Actions>
				<p role="status">{told !== null && say(`timeline.${told}`)}</p>
			</Stack>
		</form>
	);
}
