"use client";

import { useRouter } from "next/navigation";
import {
	createContext,
	type ReactNode,
	useContext,
	useRef,
	useState,
} from "react";
import { TextField } from "@/app/_ui/fields/text-field";
import { Listening } from "@/app/_ui/listening";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import type { ActionResult } from "../actions";
import { NAME_COOKIE, remember } from "./bench-choices";
import styles from "./job.module.css";

interface Desk {
	readonly number: number;
	/** Of the job, as the page shows it. */
	readonly revision: number;
	readonly by: string;
	readonly setBy: (name: string) => void;
}

const DeskContext = createContext<Desk | null>(null);

/** The job that the parts of its page work on, and who works. */
export function JobDesk({
	number,
	revision,
	by: known,
	children,
}: {
	number: number;
	revision: number;
	by: string;
	children: ReactNode;
}) {
	const [by, putBy] = useState(known);
	const setBy = (name: string) => {
		putBy(name);
		remember(NAME_COOKIE, name.trim().slice(0, 120));
	};
	return (
		<DeskContext value={{ number, revision, by, setBy }}>
			<Listening>
				<div className={styles.desk}>{children}</div>
			</Listening>
		</DeskContext>
	);
}

export function useDesk(): Desk {
	const desk = useContext(DeskContext);
	if (desk === null) throw new Error("there is no job above this part");
	return desk;
}

/** Who works here; everything that is done bears it. */
export function ByField() {
	const { say } = useReader();
	const { by, setBy } = useDesk();
	return (
		<TextField
			label={say("job.byName")}
			hint={say("job.byHint")}
			value={by}
			onChange={setBy}
			maxLength={120}
			autoComplete="name"
		/>
	);
}

/** What every edit sends along. */
export interface Edit {
	readonly number: number;
	readonly revision: number;
	readonly by: string;
	readonly requestKey: string;
}

/**
 * One step of a job's page: done once however often it is pressed, with what went wrong in words. The
 * page shows the job anew afterwards.
 */
export function useStep<Result extends ActionResult = ActionResult>() {
	const { say } = useReader();
	const router = useRouter();
	const { number, revision, by } = useDesk();
	const [isBusy, setBusy] = useState(false);
	const [messages, setMessages] = useState<readonly string[]>([]);
	const pending = useRef<{ about: string; requestKey: string } | null>(null);

	/**
	 * Gives the result where the step was done. `asked` is what is sent: the same again, after an answer
	 * was lost, is the same step; anything else is another.
	 */
	const run = async (
		asked: unknown,
		step: (edit: Edit) => Promise<Result>,
	): Promise<Extract<Result, { ok: true }> | null> => {
		if (by.trim() === "") {
			setMessages([say("job.byMissing")]);
			return null;
		}
		setBusy(true);
		setMessages([]);
		const about = JSON.stringify(asked);
		if (pending.current?.about !== about)
			pending.current = { about, requestKey: newRequestKey() };
		try {
			const { requestKey } = pending.current;
			const result = await step({ number, revision, by, requestKey });
			pending.current = null;
			if (!result.ok) setMessages(result.messages);
			router.refresh();
			return result.ok ? (result as Extract<Result, { ok: true }>) : null;
		} catch {
			setMessages([say("job.noAnswer")]);
			return null;
		} finally {
			setBusy(false);
		}
	};
	return { run, isBusy, messages, setMessages };
}

export function StepMessages({ messages }: { messages: readonly string[] }) {
	const { say } = useReader();
	if (messages.length === 0) return null;
	return (
		<Notice kind="error" title={say("job.notDone")} live>
			<ul>
				{messages.map((message) => (
					<li key={message}>{message}</li>
				))}
			</ul>
		</Notice>
	);
}
