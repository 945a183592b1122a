"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import { newRequestKey } from "@/app/_ui/request-key";
import { type OnlineAnswers, settledOnline } from "@/lib/forms/online-cue";
import { changeCue, type Held, keepCue, renewAddress } from "../actions";
import { useBuilding } from "./building";
import { sameAnswers } from "./draft";
import { handIn, type useWork } from "./use-work";

export type KeepState =
	| "idle"
	| "saving"
	| "saved"
	| "waiting"
	/** The server does not answer; tried again. */
	| "offline"
	/** Another device's, or deleted: it can be kept anew. */
	| "gone";

export interface Theirs {
	readonly answers: OnlineAnswers;
	readonly revision: number;
}

/** Typing rests this long before it is sent. */
const REST_MS = 800;
/** After a failure it is tried again this often. */
const RETRY_MS = 6000;

/**
 * Keeps the cue under an address when asked to, and from then on every change, on the revision it was
 * made on. What another window changed meanwhile is never written over: the customer chooses.
 */
export function useKeeping(work: ReturnType<typeof useWork>): {
	readonly state: KeepState;
	readonly held: Held | null;
	readonly conflict: Theirs | null;
	readonly keep: () => Promise<void>;
	readonly renew: () => Promise<boolean>;
	readonly resolve: (whose: "mine" | "theirs") => void;
} {
	const { answers, kept, reader, setKept, putAnswers } = useBuilding();
	const [state, setState] = useState<KeepState>("idle");
	const [held, setHeld] = useState<Held | null>(null);
	const [conflict, setConflict] = useState<Theirs | null>(null);
	const requestKey = useRef<string | null>(null);
	const sending = useRef(false);
	const [retry, setRetry] = useState(0);

	const keep = useCallback(async () => {
		if (sending.current) return;
		sending.current = true;
		setState("saving");
		setHeld(null);
		const sent = settledOnline(answers, reader.system);
		// The same key until the server has confirmed: pressed again it is the same cue.
		requestKey.current ??= newRequestKey();
		const key = requestKey.current;
		try {
			const result = await handIn({
				take: work.take,
				hand: (done) => keepCue({ requestKey: key, answers: sent, work: done }),
				onWait: setHeld,
			});
			if (result.ok) {
				requestKey.current = null;
				setHeld(null);
				setKept({ ...result.kept, answers: sent });
				setState("saved");
			} else {
				setHeld(result.held);
				setState("idle");
			}
		} catch {
			// Told by the state; everything typed is still on the device.
			setState("offline");
		} finally {
			sending.current = false;
		}
	}, [answers, reader.system, setKept, work]);

	const change = useCallback(async () => {
		if (kept === null || sending.current) return;
		const sent = settledOnline(answers, reader.system);
		sending.current = true;
		try {
			const result = await changeCue({
				id: kept.id,
				revision: kept.revision,
				answers: sent,
			});
			if (result.ok) {
				setKept({ ...kept, revision: result.revision, answers: sent });
				setHeld(null);
				setState("saved");
			} else if ("held" in result) {
				setHeld(result.held);
				setState("offline");
			} else if (result.conflict === null) {
				setKept(null);
				setState("gone");
			} else setConflict(result.conflict);
		} catch {
			setState("offline");
		} finally {
			sending.current = false;
			setRetry((count) => count + 1);
		}
	}, [answers, kept, reader.system, setKept]);

	const isUnsent =
		kept !== null &&
		!sameAnswers(settledOnline(answers, reader.system), kept.answers);
	useEffect(() => {
		if (!isUnsent || conflict !== null) return;
		setState((now) => (now === "offline" ? now : "waiting"));
		const timer = setTimeout(
			() => void change(),
			state === "offline" && retry > 0 ? RETRY_MS : REST_MS,
		);
		return () => clearTimeout(timer);
	}, [isUnsent, conflict, change, state, retry]);

	const renew = useCallback(async () => {
		if (kept === null) return false;
		try {
			const renewed = await renewAddress({ id: kept.id });
			if (renewed === null) return false;
			setKept({ ...kept, ...renewed });
			return true;
		} catch {
			setState("offline");
			return false;
		}
	}, [kept, setKept]);

	const resolve = useCallback(
		(whose: "mine" | "theirs") => {
			if (conflict === null || kept === null) return;
			if (whose === "theirs") putAnswers(conflict.answers);
			setKept({ ...kept, ...conflict });
			setConflict(null);
		},
		[conflict, kept, putAnswers, setKept],
	);

	return { state, held, conflict, keep, renew, resolve };
}
