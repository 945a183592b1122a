"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { Outcome } from "@/lib/numerics/outcome";
import type { OnlineCue } from "@/lib/workshop/online";
import type {
	OnlineChoices,
	OnlineField,
	OnlineOffer,
} from "@/lib/workshop/online-choices";
import type { HomeMeasures, Suggestion } from "@/lib/workshop/online-measures";
import type { Remedy } from "@/lib/workshop/online-nearest";
import type { Outlook } from "@/lib/workshop/online-outlook";
import type { AssessAnswer, AssessQuestion } from "./assess-worker";

export interface Assessed {
	/** As last worked out; `isCurrent` while nothing was chosen since. */
	readonly cue: OnlineCue;
	readonly isCurrent: boolean;
	/** What helps, by field and code, as far as it is known. */
	readonly remedies: ReadonlyMap<string, Remedy>;
	/** What each option would do, by field and option; empty until it is known. */
	readonly outlooks: ReadonlyMap<string, Outlook>;
	/** Nothing more will come for this cue. */
	readonly isDone: boolean;
	/** Why nothing can be worked out; null while all is well. */
	readonly failure: string | null;
	readonly suggest: (
		measures: HomeMeasures,
	) => Promise<Outcome<readonly Suggestion[]>>;
}

export const remedyKey = (field: OnlineField, code: string) =>
	`${field} ${code}`;
export const outlookKey = (field: OnlineField, option: unknown) =>
	`${field} ${String(option)}`;

interface Known {
	readonly cue: OnlineCue;
	readonly remedies: ReadonlyMap<string, Remedy>;
	readonly outlooks: ReadonlyMap<string, Outlook>;
	readonly isDone: boolean;
}

type Home = (answer: Extract<AssessAnswer, { kind: "home" }>) => void;

/**
 * Works a cue out in a worker while it is put together: the cue as soon as it was chosen, then what
 * would help, then what each option would do. Answers that a newer choice has overtaken are dropped.
 */
export function useAssessed(
	choices: OnlineChoices,
	offer: OnlineOffer,
	first: OnlineCue,
): Assessed {
	const worker = useRef<Worker | null>(null);
	const lastKey = useRef(0);
	const lastHome = useRef(0);
	const asked = useRef<OnlineChoices | null>(null);
	const homes = useRef(
		new Map<number, { done: Home; fail: (e: Error) => void }>(),
	);
	const [known, setKnown] = useState<Known>({
		cue: first,
		remedies: new Map(),
		outlooks: new Map(),
		isDone: false,
	});
	const [failure, setFailure] = useState<string | null>(null);

	const workerOf = useCallback((): Worker => {
		if (worker.current !== null) return worker.current;
		const made = new Worker(new URL("./assess-worker.ts", import.meta.url), {
			type: "module",
		});
		made.onmessage = ({ data }: MessageEvent<AssessAnswer>) => {
			const home = homes.current.get(data.key);
			if (home !== undefined) {
				homes.current.delete(data.key);
				if (data.kind === "home") home.done(data);
				else if (data.kind === "failed") home.fail(new Error(data.message));
				return;
			}
			if (data.kind === "home" || data.key !== lastKey.current) return;
			if (data.kind === "failed") setFailure(data.message);
			else setKnown((before) => after(before, data));
		};
		made.onerror = (event) => setFailure(event.message || "Worker");
		made.postMessage({ kind: "offer", offer } satisfies AssessQuestion);
		worker.current = made;
		return made;
	}, [offer]);

	// Settings that changed while the page lay open: everything is worked out anew.
	useEffect(() => {
		if (worker.current === null) return;
		worker.current.postMessage({
			kind: "offer",
			offer,
		} satisfies AssessQuestion);
		asked.current = null;
	}, [offer]);

	useEffect(() => {
		if (same(asked.current, choices)) return;
		asked.current = choices;
		const key = ++lastKey.current;
		setFailure(null);
		setKnown((before) => ({ ...before, isDone: false }));
		try {
			workerOf().postMessage({
				kind: "cue",
				key,
				choices,
			} satisfies AssessQuestion);
		} catch (error) {
			setFailure(String(error));
		}
	}, [choices, workerOf]);

	useEffect(
		() => () => {
			worker.current?.terminate();
			worker.current = null;
			asked.current = null;
		},
		[],
	);

	const { gameId } = choices;
	const suggest = useCallback<Assessed["suggest"]>(
		(measures) =>
			new Promise((done, fail) => {
				// Below 0: never a number of a cue.
				const key = --lastHome.current;
				homes.current.set(key, {
					done: ({ suggestions }) => done(suggestions),
					fail,
				});
				workerOf().postMessage({
					kind: "home",
					key,
					measures,
					gameId,
				} satisfies AssessQuestion);
			}),
		[gameId, workerOf],
	);

	return {
		...known,
		isCurrent: same(known.cue.choices, choices),
		failure,
		suggest,
	};
}

function after(
	before: Known,
	answer: Exclude<AssessAnswer, { kind: "failed" | "home" }>,
): Known {
	switch (answer.kind) {
		case "cue":
			return {
				cue: answer.cue,
				remedies: new Map(),
				outlooks: before.outlooks,
				isDone: false,
			};
		case "remedy": {
			const { field, code } = answer.remedy;
			return {
				...before,
				remedies: new Map([
					...before.remedies,
					[remedyKey(field, code), answer.remedy],
				]),
			};
		}
		case "outlooks":
			return {
				...before,
				outlooks: new Map(
					answer.outlooks.map((one) => [
						outlookKey(one.field, one.option),
						one,
					]),
				),
			};
		case "done":
			return { ...before, isDone: true };
	}
}

const same = (a: OnlineChoices | null, b: OnlineChoices): boolean =>
	a !== null &&
	(Object.keys(b) as OnlineField[]).every((field) => a[field] === b[field]);
