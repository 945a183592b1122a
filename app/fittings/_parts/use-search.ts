"use client";

import {
	startTransition,
	useCallback,
	useEffect,
	useMemo,
	useRef,
	useState,
} from "react";
import { useReader } from "@/app/_ui/preferences/reader";
import type { CueChoice } from "@/lib/advice/choice";
import type { FittingInput } from "@/lib/advice/input";
import type { LikeMine, LikeMineChange } from "@/lib/advice/like-mine-advice";
import type { SearchReport } from "@/lib/advice/search";
import type { Influence } from "@/lib/advice/sensitivity";
import type { TwoGames } from "@/lib/advice/two-games";
import type { Outcome, Refusal } from "@/lib/numerics/outcome";
import type { Cloud, SearchAnswer, SearchQuestion } from "./search-worker";

export interface Found {
	readonly key: number;
	readonly input: FittingInput;
	readonly report: SearchReport;
	readonly cloud: Cloud;
}

/** What is known of the search for one input; `working` until the worker has answered for it. */
export type SearchState =
	| { readonly status: "working" }
	| ({ readonly status: "found" } & Found)
	| { readonly status: "refused"; readonly refusals: readonly Refusal[] }
	| { readonly status: "failed"; readonly message: string };

export interface SearchTools {
	readonly state: SearchState;
	/** The cues last found: those before while others are looked for; null after a refusal. */
	readonly shown: Found | null;
	/** Null until they are worked out; they come after the cues. */
	readonly influences: readonly Influence[] | null;
	/** The cue at a place of the cloud. */
	readonly cueAt: (place: number) => Promise<CueChoice>;
	readonly twoGames: (
		p: Pick<
			Extract<SearchQuestion, { kind: "two-games" }>,
			"second" | "shareOfFirst"
		>,
	) => Promise<Outcome<TwoGames>>;
	readonly likeMine: (change: LikeMineChange) => Promise<Outcome<LikeMine>>;
}

/** A moved wish is looked for when it has rested this long. */
const REST_MS = 200;
/**
 * While questions are still answered one search is made ahead, so that the worker has its code read and
 * its loops compiled when the recommendation is opened: a first search takes three times a later one.
 */
const AHEAD_MS = 1500;

/** What was asked no longer fits what the page shows: no failure. */
export class Superseded extends Error {}

type Settled = Exclude<SearchState, { status: "working" }>;
interface Waiting {
	readonly question: SearchQuestion;
	readonly done: (answer: SearchAnswer) => void;
	readonly fail: (error: Error) => void;
}

/**
 * Looks through the cues for an input in a worker: the first one asked for at once, later ones when the
 * input has rested. Late answers are dropped. Until it is wanted, only one search is made ahead.
 */
export function useSearching(
	input: FittingInput,
	isWanted: boolean,
): SearchTools {
	const { say } = useReader();
	const noWorker = say("fitting.search.noWorker");
	const notStarted = say("fitting.search.notStarted");
	const worker = useRef<Worker | null>(null);
	const inputs = useRef(new Map<number, FittingInput>());
	const lastKey = useRef(0);
	const lastAsked = useRef(0);
	const newest = useRef(input);
	const waiting = useRef(new Map<string, Waiting>());
	const [settled, setSettled] = useState<{
		input: FittingInput;
		state: Settled;
	} | null>(null);
	const [influences, setInfluences] = useState<{
		key: number;
		list: readonly Influence[];
	} | null>(null);

	const workerOf = useCallback((): Worker => {
		if (worker.current !== null) return worker.current;
		const made = new Worker(new URL("./search-worker.ts", import.meta.url), {
			type: "module",
		});
		made.onmessage = ({ data }: MessageEvent<SearchAnswer>) => {
			const asked = waiting.current.get(nameOf(data));
			if (asked !== undefined) {
				if (!isAnswerTo(data, asked.question)) return;
				waiting.current.delete(nameOf(data));
				if (data.kind === "gone") asked.fail(new Superseded());
				else if (data.kind === "failed") asked.fail(new Error(data.message));
				else asked.done(data);
				return;
			}
			if (data.key !== lastKey.current) return;
			const of = inputs.current.get(data.key);
			// Overtaken by a wish that has moved on: another answer is on its way.
			if (of === undefined || of !== newest.current) return;
			// The whole page follows: in pieces that let a moved wish pass.
			if (data.kind === "found")
				startTransition(() =>
					setSettled({
						input: of,
						state: { ...data, status: "found", input: of },
					}),
				);
			else if (data.kind === "refused")
				setSettled({ input: of, state: { ...data, status: "refused" } });
			else if (data.kind === "influences")
				startTransition(() =>
					setInfluences({ key: data.key, list: data.influences }),
				);
			else if (data.kind === "failed")
				setSettled({
					input: of,
					state: { status: "failed", message: data.message },
				});
		};
		made.onerror = (event) => {
			const message = event.message || notStarted;
			for (const { fail } of waiting.current.values()) fail(new Error(message));
			waiting.current.clear();
			const of = inputs.current.get(lastKey.current);
			// A script that did not arrive may arrive later: the next question starts another worker.
			made.terminate();
			if (worker.current === made) worker.current = null;
			inputs.current = new Map();
			if (of !== undefined)
				setSettled({ input: of, state: { status: "failed", message } });
		};
		worker.current = made;
		return made;
	}, [notStarted]);

	const [networks, setNetworks] = useState(0);
	useEffect(() => {
		const onOnline = () => setNetworks((count) => count + 1);
		window.addEventListener("online", onOnline);
		return () => window.removeEventListener("online", onOnline);
	}, []);

	// With the network back, what could not be started is tried again; what was answered stands.
	// biome-ignore lint/correctness/useExhaustiveDependencies: see above
	useEffect(() => {
		newest.current = input;
		if (inputs.current.get(lastKey.current) === input) return;
		const isFirst = lastKey.current === 0;
		if (!isWanted && !isFirst) return;
		const restMs = isWanted ? (isFirst ? 0 : REST_MS) : AHEAD_MS;
		const timer = setTimeout(() => {
			const key = ++lastKey.current;
			inputs.current = new Map([[key, input]]);
			if (typeof Worker === "undefined") {
				setSettled({ input, state: { status: "failed", message: noWorker } });
				return;
			}
			try {
				workerOf().postMessage({
					kind: "search",
					key,
					input,
				} satisfies SearchQuestion);
			} catch (error) {
				setSettled({
					input,
					state: { status: "failed", message: String(error) },
				});
			}
		}, restMs);
		return () => clearTimeout(timer);
	}, [input, isWanted, workerOf, noWorker, networks]);

	useEffect(
		() => () => {
			worker.current?.terminate();
			worker.current = null;
		},
		[],
	);

	const ask = useCallback(
		(question: SearchQuestion) =>
			new Promise<SearchAnswer>((done, fail) => {
				waiting.current.get(nameOf(question))?.fail(new Superseded());
				waiting.current.set(nameOf(question), { question, done, fail });
				workerOf().postMessage(question);
			}),
		[workerOf],
	);

	const state = useMemo<SearchState>(
		() =>
			settled !== null && settled.input === input
				? settled.state
				: { status: "working" },
		[settled, input],
	);
	const shown = settled?.state.status === "found" ? settled.state : null;
	const key = shown?.key ?? null;

	const cueAt = useCallback(
		async (place: number): Promise<CueChoice> => {
			if (key === null) throw new Error("no cues were found yet");
			const answer = await ask({ kind: "cue", key, place });
			if (answer.kind !== "cue") throw new Error(`answered ${answer.kind}`);
			return answer.choice;
		},
		[ask, key],
	);
	const twoGames = useCallback<SearchTools["twoGames"]>(
		async (p) => {
			const answer = await ask({
				kind: "two-games",
				key: --lastAsked.current,
				input,
				...p,
			});
			if (answer.kind !== "two-games")
				throw new Error(`answered ${answer.kind}`);
			return answer.outcome;
		},
		[ask, input],
	);

	const likeMine = useCallback<SearchTools["likeMine"]>(
		async (change) => {
			const answer = await ask({
				kind: "like-mine",
				key: --lastAsked.current,
				input,
				change,
			});
			if (answer.kind !== "like-mine")
				throw new Error(`answered ${answer.kind}`);
			return answer.outcome;
		},
		[ask, input],
	);

	const known =
		influences !== null && influences.key === key ? influences.list : null;
	return useMemo(
		() => ({ state, shown, influences: known, cueAt, twoGames, likeMine }),
		[state, shown, known, cueAt, twoGames, likeMine],
	);
}

/** An answer to an earlier question of its kind comes late, and is none to the one that is open. */
const isAnswerTo = (answer: SearchAnswer, question: SearchQuestion): boolean =>
	answer.key === question.key &&
	(answer.kind !== "cue" ||
		question.kind !== "cue" ||
		answer.place === question.place);

/** What an answer answers: one question of a kind is open at a time. */
const nameOf = (one: SearchQuestion | SearchAnswer): string => {
	if (one.kind === "gone") return "cue";
	return one.kind === "failed" ? one.during : one.kind;
};
