"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions } from "@/app/_ui/section";
import { agreeToQuote } from "../[token]/actions";

/** The customer's yes, by name. Pressed twice it is given once. */
export function AgreeForm({
	token,
	jobRevision,
	contentSha256,
}: {
	token: string;
	jobRevision: number;
	/** Of what this page shows: a quote that changed meanwhile is not agreed to unseen. */
	contentSha256: string;
}) {
	const { say } = useReader();
	const router = useRouter();
	const [agreedName, setName] = useState("");
	const [isBusy, setBusy] = useState(false);
	const [messages, setMessages] = useState<readonly string[]>([]);
	const requestKey = useRef<string | null>(null);

	const send = async () => {
		if (agreedName.trim() === "") {
			setMessages([say("agreement.agree.missing")]);
			return;
		}
		setBusy(true);
		setMessages([]);
		requestKey.current ??= newRequestKey();
		try {
			const result = await agreeToQuote({
				token,
				jobRevision,
				contentSha256,
				agreedName,
				requestKey: requestKey.current,
			});
			requestKey.current = null;
			if (!result.ok) setMessages(result.messages);
			router.refresh();
		} catch {
			setMessages([say("agreement.agree.noAnswer")]);
		} finally {
			setBusy(false);
		}
	};
	return (
		<form
			onSubmit={(event) => {
				event.preventDefault();
				if (!isBusy) void send();
			}}
			style={{ display: "grid", gap: "var(--space-4)" }}
		>
			<TextField
				label={say("agreement.agree.name")}
				value={agreedName}
				onChange={setName}
				autoComplete="name"
				maxLength={200}
			/>
			{messages.length > 0 && (
				<Notice kind="error" title={say("agreement.agree.not")} live>
					{messages.map((message) => (
						<p key={message}>{message}</p>
					))}
				</Notice>
			)}
			<Actions>
				<Button look="main" type="submit" wide busy={isBusy}>
					{say("agreement.agree.button")}
				</Button>
			</Actions>
		</form>
	);
}
