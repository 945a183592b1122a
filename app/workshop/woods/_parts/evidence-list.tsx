"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { useWho } from "@/app/workshop/_parts/use-who";
import { restore, withdraw } from "../../[number]/checks/actions";

export interface EvidenceLine {
	readonly id: string;
	readonly wood: string;
	readonly jobNumber: number | null;
	readonly implied: string;
	readonly state: string;
	readonly isCounted: boolean;
}

/** What each weighed cue said of a wood, to leave out or take back in, by name. */
export function EvidenceList({ rows }: { rows: readonly EvidenceLine[] }) {
	const { say } = useReader();
	const [by, setBy] = useWho();
	const { carryOut, busyId, messages } = useSwitch(by);
	return (
		<>
			<TextField
				label={say("woods.evidence.by")}
				hint={say("woods.evidence.byHint")}
				value={by}
				onChange={setBy}
				maxLength={120}
				autoComplete="name"
			/>
			{messages.length > 0 && (
				<Notice kind="error" title={say("woods.evidence.notDone")} live>
					{messages.join(" ")}
				</Notice>
			)}
			<DataTable
				caption={say("woods.evidence.title")}
				captionHidden
				narrow="stack"
				columns={[
					{ key: "wood", label: say("woods.bands.wood") },
					{ key: "from", label: say("woods.evidence.from") },
					{ key: "implied", label: say("woods.evidence.implied") },
					{ key: "state", label: say("woods.evidence.state") },
				]}
				rows={rows.map((row) => {
					const number = String(row.jobNumber ?? "");
					return {
						wood: row.wood,
						from:
							row.jobNumber === null ? (
								say("woods.evidence.noJob")
							) : (
								<Link href={`/workshop/${number}/checks`}>
									{say("woods.evidence.job", { number })}
								</Link>
							),
						implied: row.implied,
						state: (
							<>
								{row.state}{" "}
								<Button
									look="quiet"
									busy={busyId === row.id}
									aria-label={say(
										row.isCounted
											? "woods.evidence.leaveOutOf"
											: "woods.evidence.takeInOf",
										{ number, wood: row.wood },
									)}
									onClick={() => carryOut(row)}
								>
									{say(
										row.isCounted
											? "woods.evidence.leaveOut"
											: "woods.evidence.takeIn",
									)}
								</Button>
							</>
						),
					};
				})}
			/>
		</>
	);
}

/** The switch of one result: pressed again after a lost answer, it is the same request. */
function useSwitch(by: string) {
	const { say } = useReader();
	const router = useRouter();
	const [busyId, setBusyId] = useState<string | null>(null);
	const [messages, setMessages] = useState<readonly string[]>([]);
	const pending = useRef<{ about: string; requestKey: string } | null>(null);
	const carryOut = async ({ id, isCounted }: EvidenceLine) => {
		if (by.trim() === "") {
			setMessages([say("woods.evidence.byMissing")]);
			return;
		}
		const about = `${id} ${isCounted} ${by}`;
		if (pending.current?.about !== about)
			pending.current = { about, requestKey: newRequestKey() };
		const { requestKey } = pending.current;
		setBusyId(id);
		setMessages([]);
		try {
			const done = await (isCounted ? withdraw : restore)({
				id,
				by,
				requestKey,
			});
			pending.current = null;
			if (!done.ok) setMessages(done.messages);
			router.refresh();
		} catch {
			setMessages([say("woods.evidence.noAnswer")]);
		} finally {
			setBusyId(null);
		}
	};
	return { carryOut, busyId, messages };
}
