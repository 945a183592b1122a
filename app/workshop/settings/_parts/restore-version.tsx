"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Section } from "@/app/_ui/section";
import { useWho } from "@/app/workshop/_parts/use-who";
import { settingProblemText } from "@/lib/present/setting-refusal-words";
import type { SettingKind } from "@/lib/workshop/settings";
import { restore } from "../actions";

/** Saves a version once more as the newest. */
export function RestoreVersion({
	kind,
	version,
	newest,
}: {
	kind: SettingKind;
	version: number;
	newest: number;
}) {
	const reader = useReader();
	const { say } = reader;
	const router = useRouter();
	const [by, putBy] = useWho();
	const [isAsked, setAsked] = useState(false);
	const [message, setMessage] = useState<string | null>(null);
	const [isBusy, startTransition] = useTransition();
	const requestKey = useRef<string | null>(null);
	const carryOut = () => {
		setAsked(true);
		if (by.trim() === "") return;
		requestKey.current ??= newRequestKey();
		const request = {
			kind,
			version,
			editedFrom: newest,
			by,
			note: say("settings.version.restoreNote", { version: String(version) }),
			requestKey: requestKey.current,
		};
		setMessage(null);
		startTransition(async () => {
			try {
				const saved = await restore(request);
				if (saved.ok) {
					router.push(`/workshop/settings/${kind}`);
					return;
				}
				setMessage(
					"conflict" in saved
						? say("settings.save.conflict", {
								version: String(saved.conflict),
							})
						: saved.refusals
								.map((refusal) => settingProblemText(refusal, reader))
								.join(" "),
				);
			} catch {
				setMessage(say("settings.save.noAnswer"));
			}
		});
	};
	return (
		<Section
			title={say("settings.version.restore")}
			lead={say("settings.version.restoreHint")}
			card
		>
			<TextField
				label={say("settings.save.by")}
				hint={say("settings.save.byHint")}
				name="by"
				value={by}
				onChange={putBy}
				maxLength={120}
				error={
					isAsked && by.trim() === "" ? say("settings.save.byMissing") : null
				}
			/>
			{message !== null && (
				<Notice kind="error" title={say("settings.save.notSaved")} live>
					{message}
				</Notice>
			)}
			<Actions>
				<Button busy={isBusy} onClick={carryOut}>
					{say("settings.version.restore")}
				</Button>
			</Actions>
		</Section>
	);
}
