"use client";

import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import { change } from "../actions";
import { StepMessages, useStep } from "./job-desk";

/** Back to what was agreed to: word for word the same needs no second agreement. */
export function TakeBack({ revision }: { revision: number }) {
	const { say } = useReader();
	const { run, isBusy, messages } = useStep();
	const asked = {
		change: { from: "earlier", jobRevision: revision },
		reason: "",
		priceMinor: null,
	} as const;
	return (
		<>
			<StepMessages messages={messages} />
			<Actions>
				<Button
					busy={isBusy}
					onClick={() => run(asked, (edit) => change({ ...edit, ...asked }))}
				>
					{say("job.change.back", { revision })}
				</Button>
			</Actions>
		</>
	);
}
