"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import { writeAgreement } from "../actions";
import { StepMessages, useStep } from "./job-desk";

/** What a customer said by word of mouth, written down at the bench. */
export function BenchAgreement({
	jobRevision,
	contentSha256,
	customerName,
}: {
	jobRevision: number;
	contentSha256: string;
	customerName: string;
}) {
	const { say } = useReader();
	const { run, isBusy, messages, setMessages } = useStep();
	const [agreedName, setName] = useState(customerName);
	const save = async () => {
		if (agreedName.trim() === "") {
			setMessages([say("job.agreement.nameMissing")]);
			return;
		}
		const asked = { jobRevision, contentSha256, agreedName };
		await run(asked, ({ number, by, requestKey }) =>
			writeAgreement({ ...asked, number, by, requestKey }),
		);
	};
	return (
		<details>
			<summary>{say("job.agreement.write")}</summary>
			<TextField
				label={say("job.agreement.name")}
				value={agreedName}
				onChange={setName}
				maxLength={200}
			/>
			<StepMessages messages={messages} />
			<Actions>
				<Button busy={isBusy} onClick={save}>
					{say("job.agreement.save")}
				</Button>
			</Actions>
		</details>
	);
}
