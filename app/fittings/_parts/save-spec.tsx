"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button, LinkButton } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Section } from "@/app/_ui/section";
import type { Advice } from "@/lib/advice/advise";
import { seenIn } from "@/lib/advice/seen";
import { useDesk, useKeeping } from "./desk";
import styles from "./fitting.module.css";

/** Freezes what is on the page as a numbered spec. Pressed twice it is still saved once. */
export function SaveSpec({
	advice,
	isBuildable,
	isSettled,
}: {
	advice: Advice;
	isBuildable: boolean;
	/** False while the cues are still looked through: the figures may yet move. */
	isSettled: boolean;
}) {
	const { fitting, keeper } = useDesk();
	const { say } = useReader();
	const { save: waiting } = useKeeping();
	const router = useRouter();
	const [reason, setReason] = useState("");
	const [isBusy, setBusy] = useState(false);
	const [messages, setMessages] = useState<readonly string[]>([]);

	const save = async () => {
		setBusy(true);
		setMessages([]);
		const outcome = await keeper.save({ reason, seen: seenIn(advice) });
		setBusy(false);
		if (outcome.kind === "saved")
			router.push(`/specs/${outcome.number}/${outcome.revision}`);
		else if (outcome.kind === "refused") setMessages(outcome.messages);
	};

	return (
		<Section
			title={
				fitting.specNumber === null
					? say("fitting.save.title")
					: say("fitting.save.next", { number: String(fitting.specNumber) })
			}
			lead={say("fitting.save.lead")}
			card
		>
			{fitting.specNumber !== null && (
				<TextField
					label={say("fitting.save.reason")}
					hint={say("fitting.save.reasonHint")}
					value={reason}
					onChange={setReason}
					maxLength={400}
				/>
			)}
			{messages.length > 0 && (
				<Notice kind="error" title={say("fitting.save.notSaved")} live>
					<ul className={styles.list}>
						{messages.map((message) => (
							<li key={message}>{message}</li>
						))}
					</ul>
				</Notice>
			)}
			{waiting?.refusal === null && <p>{say("offline.queued.here")}</p>}
			<Actions>
				<Button
					look="main"
					wide
					busy={isBusy}
					onClick={save}
					disabled={!isBuildable || !isSettled}
				>
					{say("fitting.save.save")}
				</Button>
				{fitting.number !== null && (
					<LinkButton
						href={`/fittings/${fitting.number}/summary`}
						prefetch={false}
					>
						{say("summary.open")}
					</LinkButton>
				)}
				{!isBuildable && <p>{say("fitting.save.cannot")}</p>}
			</Actions>
		</Section>
	);
}
