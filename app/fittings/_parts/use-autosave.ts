"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { Answers, FieldName } from "@/lib/forms/fields";
import { mergeAnswers } from "@/lib/forms/merge";
import type { TakenWish } from "@/lib/forms/taken-wishes";
import { currentAnswers, keepAnswers } from "../[number]/actions";
import { dropDraft, keepDraft, readDraft } from "./draft";

export type SaveState = "saved" | "saving" | "on-device" | "unkept";

export interface Conflict {
	readonly field: FieldName;
	readonly theirs: string | readonly string[];
}

/** Typing rests this long before it is sent. */
const REST_MS = 700;
/** After a failure it is tried again this often. */
const RETRY_MS = 5000;

/** What the server has of a fitting. */
interface Stored {
	readonly answers: Answers;
	readonly revision: number;
}

const same = (a: Answers, b: Answers) =>
	JSON.stringify(a) === JSON.stringify(b);

/**
 * Keeps answers safe: at once on the device, shortly after on the server, merged field by field
 * where another device was faster. `put` replaces the form's content.
 */
export function useAutosave({
	fittingId,
	fittingNumber,
	answers,
	server,
	put,
}: {
	fittingId: string;
	fittingNumber: number;
	/** The form's present content. */
	answers: Answers;
	/** What the page was rendered with. */
	server: Stored & { readonly takenWishes: readonly TakenWish[] };
	put: (answers: Answers) => void;
}): {
	state: SaveState;
	conflicts: readonly Conflict[];
	draftDamaged: boolean;
	/** Wishes that trials gave and that stand, as the server last said. */
	takenWishes: readonly TakenWish[];
	/** Resolves with the revision all typing is stored under, or null when it could not be sent. */
	flush: () => Promise<number | null>;
} {
	const base = useRef<Stored>(server);
	const mine = useRef(answers);
	const sending = useRef<Promise<boolean> | null>(null);
	const [state, setState] = useState<SaveState>("saved");
	const [conflicts, setConflicts] = useState<readonly Conflict[]>([]);
	const [draftDamaged, setDraftDamaged] = useState(false);
	const [takenWishes, setTakenWishes] = useState(server.takenWishes);
	const [isReady, setReady] = useState(false);

	/** Takes what the server has in, keeping what is typed here. */
	const takeIn = useCallback(
		(theirs: { answers: Answers; revision: number }) => {
			const merged = mergeAnswers({
				base: base.current.answers,
				mine: mine.current,
				theirs: theirs.answers,
			});
			base.current = theirs;
			if (merged.conflicts.length > 0) setConflicts(merged.conflicts);
			if (!same(merged.answers, mine.current)) {
				mine.current = merged.answers;
				put(merged.answers);
			}
		},
		[put],
	);

	const sendOnce = useCallback(async (): Promise<boolean> => {
		const sent = mine.current;
		if (same(sent, base.current.answers)) return true;
		setState("saving");
		const result = await keepAnswers({
			fittingId,
			answers: sent,
			revision: base.current.revision,
		});
		if (result.ok) base.current = { answers: sent, revision: result.revision };
		else {
			takeIn(result.conflict);
			setTakenWishes(result.conflict.takenWishes);
		}
		return same(mine.current, base.current.answers);
	}, [fittingId, takeIn]);

	const send = useCallback((): Promise<boolean> => {
		sending.current ??= (async () => {
			try {
				while (!(await sendOnce()));
				dropDraft(fittingId);
				setState("saved");
				return true;
			} catch {
				// The device still has it (see keepDraft); the state line says so and it is tried again.
				setState((now) => (now === "unkept" ? now : "on-device"));
				return false;
			} finally {
				sending.current = null;
			}
		})();
		return sending.current;
	}, [fittingId, sendOnce]);

	// Once, on opening: what this device kept, then what the server has by now.
	useEffect(() => {
		const draft = readDraft(fittingId);
		if (draft === "damaged") {
			setDraftDamaged(true);
			dropDraft(fittingId);
		} else if (draft !== null) {
			const rendered = base.current;
			base.current = draft.base;
			mine.current = draft.answers;
			put(draft.answers);
			takeIn(rendered);
		}
		setReady(true);
	}, [fittingId, put, takeIn]);

	useEffect(() => {
		const refresh = async () => {
			if (document.visibilityState !== "visible") return;
			try {
				const now = await currentAnswers(fittingNumber);
				if (now === null) return;
				if (now.revision > base.current.revision) takeIn(now);
				setTakenWishes((known) =>
					JSON.stringify(known) === JSON.stringify(now.takenWishes)
						? known
						: now.takenWishes,
				);
			} catch {
				setState("on-device");
			}
		};
		void refresh();
		document.addEventListener("visibilitychange", refresh);
		return () => document.removeEventListener("visibilitychange", refresh);
	}, [fittingNumber, takeIn]);

	useEffect(() => {
		if (!isReady) return;
		mine.current = answers;
		if (same(answers, base.current.answers)) return;
		if (!keepDraft(fittingId, { answers, base: base.current }))
			setState("unkept");
		const timer = setTimeout(() => void send(), REST_MS);
		return () => clearTimeout(timer);
	}, [answers, fittingId, isReady, send]);

	useEffect(() => {
		if (state !== "on-device" && state !== "unkept") return;
		const timer = setInterval(() => void send(), RETRY_MS);
		const online = () => void send();
		window.addEventListener("online", online);
		return () => {
			clearInterval(timer);
			window.removeEventListener("online", online);
		};
	}, [state, send]);

	const flush = useCallback(
		async () => ((await send()) ? base.current.revision : null),
		[send],
	);
	return { state, conflicts, draftDamaged, takenWishes, flush };
}
