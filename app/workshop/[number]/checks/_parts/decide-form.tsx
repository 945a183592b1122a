"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Stack } from "@/app/_ui/section";
import type { CheckDecision } from "@/lib/workshop/check";
import { StepMessages, useStep } from "../../../_parts/job-desk";
import { decide } from "../actions";

/** What becomes of a cue out of tolerance, by name. */
export function DecideForm({
	checkId,
	isFinished,
}: {
	checkId: string;
	isFinished: boolean;
}) {
	const { say } = useReader();
	const { run, isBusy, messages } = useStep();
	const [note, setNote] = useState("");
	const go = async (decision: CheckDecision) => {
		const asked = { checkId, decision, note };
		if (await run(asked, (edit) => decide({ ...edit, ...asked }))) setNote("");
	};
	return (
		<Stack>
			<TextField
				label={say("checks.open.note")}
				hint={say("checks.open.noteHint")}
				value={note}
				onChange={setNote}
				maxLength={2000}
			/>
			<StepMessages messages={messages} />
			<Actions>
				<Button busy={isBusy} onClick={() => go("accept")}>
					{say("checks.open.accept")}
				</Button>
				<Button busy={isBusy} onClick={() => go("rework")}>
					{say("checks.open.doRework")}
				</Button>
				<Button busy={isBusy} onClick={() => go("tell-customer")}>
					{say("checks.open.tell")}
				</Button>
			</Actions>
			<p>
				{say(isFinished ? "checks.open.tellHint" : "checks.open.tellEarly")}
			</p>
		</Stack>
	);
}
