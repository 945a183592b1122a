"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { DayField } from "@/app/_ui/fields/day-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Columns } from "@/app/_ui/section";
import { NAME_COOKIE, remember } from "@/app/workshop/_parts/bench-choices";
import {
	ExtrasFields,
	type ExtrasOffer,
} from "@/app/workshop/_parts/extras-fields";
import { sendToWorkshop } from "@/app/workshop/actions";
import { NO_EXTRAS } from "@/lib/workshop/job-extras";

/** Opens a job with a saved revision. Pressed twice it is opened once. */
export function SendToWorkshop({
	specNumber,
	specRevision,
	playerName,
	offer,
	by: known,
}: {
	specNumber: number;
	specRevision: number;
	playerName: string;
	offer: ExtrasOffer;
	by: string;
}) {
	const { say } = useReader();
	const [customerName, setName] = useState(playerName);
	const [customerContact, setContact] = useState("");
	const [dueOn, setDue] = useState("");
	const [notes, setNotes] = useState("");
	const [extras, setExtras] = useState(NO_EXTRAS);
	const [by, setBy] = useState(known);
	const [isBusy, setBusy] = useState(false);
	const [messages, setMessages] = useState<readonly string[]>([]);
	const router = useRouter();
	const requestKey = useRef<string | null>(null);

	const send = async () => {
		const missing = [
			...(customerName.trim() === "" ? [say("job.send.customerMissing")] : []),
			...(by.trim() === "" ? [say("job.byMissing")] : []),
		];
		setMessages(missing);
		if (missing.length > 0) return;
		remember(NAME_COOKIE, by.trim());
		setBusy(true);
		requestKey.current ??= newRequestKey();
		try {
			const { number } = await sendToWorkshop({
				specNumber,
				specRevision,
				customerName,
				customerContact,
				dueOn: dueOn === "" ? null : dueOn,
				notes,
				extras,
				by,
				requestKey: requestKey.current,
			});
			router.push(`/workshop/${number}`);
		} catch {
			setMessages([say("job.noAnswer")]);
			setBusy(false);
		}
	};
	return (
		<>
			<Columns minRem={16}>
				<TextField
					label={say("job.send.customer")}
					value={customerName}
					onChange={setName}
					maxLength={200}
				/>
				<TextField
					label={say("job.send.contact")}
					hint={say("job.send.contactHint")}
					value={customerContact}
					onChange={setContact}
					maxLength={400}
				/>
				<DayField
					label={say("job.send.due")}
					hint={say("job.send.dueHint")}
					value={dueOn}
					onChange={setDue}
				/>
			</Columns>
			<ExtrasFields offer={offer} value={extras} onChange={setExtras} />
			<TextField
				label={say("job.send.notes")}
				value={notes}
				onChange={setNotes}
				rows={2}
				maxLength={2000}
			/>
			<TextField
				label={say("job.byName")}
				hint={say("job.byHint")}
				value={by}
				onChange={setBy}
				autoComplete="name"
				maxLength={120}
			/>
			{messages.length > 0 && (
				<Notice kind="error" title={say("job.notDone")} live>
					{messages.map((message) => (
						<p key={message}>{message}</p>
					))}
				</Notice>
			)}
			<Actions>
				<Button look="main" wide busy={isBusy} onClick={send}>
					{say("job.send.save")}
				</Button>
			</Actions>
		</>
	);
}
