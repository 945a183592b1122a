"use client";

import { useCallback, useEffect, useMemo, useRef } from "react";
import type { WorkDone } from "@/lib/access/work";
import { type Held, newChallenge } from "../actions";
import type { WorkAsked, WorkFound } from "./work-worker";

interface Made {
	readonly done: WorkDone;
	readonly expiresAtMs: number;
}

/** Work that runs out within this is not handed in. */
const ROOM_MS = 60_000;

/**
 * The small piece of work that has to be done before anything is kept or sent. `begin` does it ahead,
 * while there is time; `take` gives it, doing it where that was not done, and it is gone.
 */
export function useWork(): {
	readonly begin: () => void;
	readonly take: () => Promise<WorkDone>;
} {
	const making = useRef<Promise<Made> | null>(null);
	const worker = useRef<Worker | null>(null);

	useEffect(
		() => () => {
			worker.current?.terminate();
			worker.current = null;
			making.current = null;
		},
		[],
	);

	const make = useCallback(async (): Promise<Made> => {
		const { token, workBits, expiresAtMs } = await newChallenge();
		worker.current ??= new Worker(
			new URL("./work-worker.ts", import.meta.url),
			{ type: "module" },
		);
		const found = await answerOf(worker.current, { token, workBits });
		if (!found.ok) throw new Error(found.message);
		return { done: { token, counter: found.counter }, expiresAtMs };
	}, []);

	const begin = useCallback(() => {
		if (making.current !== null) return;
		const made = make();
		making.current = made;
		made.catch(() => {
			// Tried anew when it is wanted, and told then.
			if (making.current === made) making.current = null;
		});
	}, [make]);

	const take = useCallback(async (): Promise<WorkDone> => {
		for (let tried = 0; ; tried++) {
			begin();
			const made = await making.current;
			making.current = null;
			// A page may have lain open for hours.
			if (made !== null && made.expiresAtMs - Date.now() > ROOM_MS)
				return made.done;
			if (tried > 1) throw new Error("no challenge lasts long enough");
		}
	}, [begin]);

	return useMemo(() => ({ begin, take }), [begin, take]);
}

/** Added to a wait, since clocks differ in what they call over. */
const SURE_MS = 200;
const MOST_TRIES = 3;

/**
 * Hands something in with the work that was done for it. What came too soon is handed in again after
 * the wait with the same work, and work that does not count is done anew; anything else is the answer.
 */
export async function handIn<Answer extends { readonly ok: boolean }>(p: {
	take: () => Promise<WorkDone>;
	hand: (done: WorkDone) => Promise<Answer>;
	onWait: (held: Held) => void;
}): Promise<Answer> {
	let done = await p.take();
	for (let tried = 1; ; tried++) {
		const answer = await p.hand(done);
		const held = heldIn(answer);
		if (held === null || held.code === "too-many" || tried === MOST_TRIES)
			return answer;
		if (held.code === "too-soon") {
			p.onWait(held);
			await new Promise((over) => setTimeout(over, held.waitMs + SURE_MS));
		} else done = await p.take();
	}
}

const heldIn = (answer: { readonly ok: boolean; readonly held?: Held }) =>
	answer.ok ? null : (answer.held ?? null);

const answerOf = (worker: Worker, asked: WorkAsked) =>
	new Promise<WorkFound>((done, fail) => {
		worker.onmessage = ({ data }: MessageEvent<WorkFound>) => done(data);
		worker.onerror = (event) => fail(new Error(event.message || "Worker"));
		worker.postMessage(asked);
	});
