"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Section } from "@/app/_ui/section";
import type { Advice } from "@/lib/advice/advise";
import { seenIn } from "@/lib/advice/seen";
import { freezeSpec } from "../[number]/actions";
import { useDesk } from "./desk";
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
	const { fitting, flush } = useDesk();
	const router = useRouter();
	const [reason, setReason] = useState("");
	const [isBusy, setBusy] = useState(false);
	const [messages, setMessages] = useState<readonly string[]>([]);
	const requestKey = useRef<string | null>(null);

	const save = async () => {
		setBusy(true);
		setMessages([]);
		requestKey.current ??= newRequestKey();
		try {
			const revision = await flush();
			if (revision === null) {
				setMessages([
					"The server does not answer. The answers are kept; save again when it is back.",
				]);
				return;
			}
			const result = await freezeSpec({
				fittingNumber: fitting.number,
				revision,
				reason,
				requestKey: requestKey.current,
				seen: seenIn(advice),
			});
			requestKey.current = null;
			if (result.ok) router.push(`/specs/${result.number}/${result.revision}`);
			else setMessages(result.messages);
		} catch {
			setMessages([
				"The server did not confirm. Press again: the same save is never stored twice.",
			]);
		} finally {
			setBusy(false);
		}
	};

	return (
		<Section
			title={
				fitting.specNumber === null
					? "Save it as a spec"
					: `Save as the next revision of spec ${fitting.specNumber}`
			}
			lead="A saved revision never changes. A later change becomes a new one."
			card
		>
			{fitting.specNumber !== null && (
				<TextField
					label="What changed, and why"
					hint="Stands beside the revision; may be left empty."
					value={reason}
					onChange={setReason}
					maxLength={400}
				/>
			)}
			{messages.length > 0 && (
				<Notice kind="error" title="Not saved" live>
					<ul className={styles.list}>
						{messages.map((message) => (
							<li key={message}>{message}</li>
						))}
					</ul>
				</Notice>
			)}
			<Actions>
				<Button
					look="main"
					wide
					busy={isBusy}
					onClick={save}
					disabled={!isBuildable || !isSettled}
				>
					Save the spec
				</Button>
				{!isBuildable && (
					<p>It cannot be built as it stands: see “Not possible” above.</p>
				)}
			</Actions>
		</Section>
	);
}
