import { candidateAt } from "@/lib/advice/axes";
import type { CueChoice } from "@/lib/advice/choice";
import { AT, CRITERION_COUNT } from "@/lib/advice/criteria";
import { readingOf } from "@/lib/advice/feel";
import { needsFor } from "@/lib/advice/fitting-needs";
import type { FittingInput } from "@/lib/advice/input";
import {
	type LikeMine,
	type LikeMineChange,
	likeMineBut,
} from "@/lib/advice/like-mine-advice";
import { seededUniform } from "@/lib/advice/normal";
import { choicesFrom, SEARCH_SEED, searchFor } from "@/lib/advice/recommend";
import type { CueSearch, SearchReport } from "@/lib/advice/search";
import { type Influence, whatWouldChange } from "@/lib/advice/sensitivity";
import { type TwoGames, twoGames } from "@/lib/advice/two-games";
import type { Outcome, Refusal } from "@/lib/numerics/outcome";

/** The cues beaten by none, best first: measures in rows of the criteria, and their worth. */
export interface Cloud {
	readonly count: number;
	readonly measures: Float32Array;
	readonly overall: Float64Array;
}

export type SearchQuestion =
	| {
			readonly kind: "search";
			readonly key: number;
			readonly input: FittingInput;
	  }
	| { readonly kind: "cue"; readonly key: number; readonly place: number }
	| {
			readonly kind: "two-games";
			readonly key: number;
			readonly input: FittingInput;
			readonly second: Parameters<typeof twoGames>[0]["second"];
			readonly shareOfFirst: number;
	  }
	| {
			readonly kind: "like-mine";
			readonly key: number;
			readonly input: FittingInput;
			readonly change: LikeMineChange;
	  };

export type SearchAnswer =
	| {
			readonly kind: "found";
			readonly key: number;
			readonly report: SearchReport;
			readonly cloud: Cloud;
	  }
	| {
			readonly kind: "refused";
			readonly key: number;
			readonly refusals: readonly Refusal[];
	  }
	| {
			readonly kind: "influences";
			readonly key: number;
			readonly influences: readonly Influence[];
	  }
	| {
			readonly kind: "cue";
			readonly key: number;
			readonly place: number;
			readonly choice: CueChoice;
	  }
	| {
			/** The cues asked about have made way for others. */
			readonly kind: "gone";
			readonly key: number;
	  }
	| {
			readonly kind: "two-games";
			readonly key: number;
			readonly outcome: Outcome<TwoGames>;
	  }
	| {
			readonly kind: "like-mine";
			readonly key: number;
			readonly outcome: Outcome<LikeMine>;
	  }
	| {
			readonly kind: "failed";
			readonly key: number;
			readonly during: SearchQuestion["kind"] | "influences";
			readonly message: string;
	  };

interface Kept {
	readonly key: number;
	readonly search: CueSearch;
	/** Rows of the pool in the order of the cloud. */
	readonly rows: Uint32Array;
}

const scope = globalThis as unknown as {
	onmessage: (event: MessageEvent<SearchQuestion>) => void;
	postMessage(message: SearchAnswer, transfer?: Transferable[]): void;
};

let kept: Kept | null = null;
let latest = -1;
/** The search to make next: of those asked for while another was made, only the last. */
let next: { key: number; input: FittingInput } | null = null;

scope.onmessage = ({ data }) => {
	try {
		if (data.kind === "search") queue(data);
		else if (data.kind === "cue") cue(data.key, data.place);
		else if (data.kind === "like-mine")
			scope.postMessage({
				kind: "like-mine",
				key: data.key,
				outcome: likeMine(data.input, data.change),
			});
		else
			scope.postMessage({
				kind: "two-games",
				key: data.key,
				outcome: twoGames({
					input: data.input,
					second: data.second,
					shareOfFirst: data.shareOfFirst,
					options: {
						...choicesFrom(data.input.priorities),
						uniform: seededUniform(SEARCH_SEED),
					},
				}),
			});
	} catch (error) {
		failed(data.key, data.kind, error);
	}
};

const failed = (
	key: number,
	during: SearchQuestion["kind"] | "influences",
	error: unknown,
) => scope.postMessage({ kind: "failed", key, during, message: String(error) });

/** Starts when the questions that already wait have been heard. */
function queue(asked: { key: number; input: FittingInput }): void {
	latest = asked.key;
	if (next === null) setTimeout(searchNext, 0);
	next = asked;
}

function searchNext(): void {
	if (next === null) return;
	const { key, input } = next;
	next = null;
	try {
		search(key, input);
	} catch (error) {
		failed(key, "search", error);
	}
}

function search(key: number, input: FittingInput): void {
	const found = searchFor(input);
	if (!found.ok) {
		kept = null;
		scope.postMessage({ kind: "refused", key, refusals: found.refusals });
		return;
	}
	const { report, pool, front } = found.value;
	const rows = Uint32Array.from(front).sort(
		(a, b) =>
			(pool.overall[b] as number) - (pool.overall[a] as number) || a - b,
	);
	const measures = new Float32Array(rows.length * CRITERION_COUNT);
	const overall = new Float64Array(rows.length);
	rows.forEach((row, i) => {
		const from = row * CRITERION_COUNT;
		measures.set(
			pool.measures.subarray(from, from + CRITERION_COUNT),
			i * CRITERION_COUNT,
		);
		overall[i] = pool.overall[row] as number;
	});
	kept = { key, search: found.value, rows };
	scope.postMessage(
		{
			kind: "found",
			key,
			report,
			cloud: { count: rows.length, measures, overall },
		},
		[measures.buffer, overall.buffer],
	);
	// After whatever waits: a newer fitting goes before what would change this one.
	setTimeout(() => influences(key), 0);
}

function influences(key: number): void {
	if (key !== latest || kept?.key !== key) return;
	try {
		scope.postMessage({
			kind: "influences",
			key,
			influences: whatWouldChange({
				search: kept.search,
				choices: choicesFrom(kept.search.report.input.priorities),
			}),
		});
	} catch (error) {
		failed(key, "influences", error);
	}
}

function likeMine(
	input: FittingInput,
	change: LikeMineChange,
): Outcome<LikeMine> {
	const needs = needsFor(input);
	if (!needs.ok) return needs;
	const reading = readingOf(needs.value);
	if (reading?.gripFromButtMm === undefined)
		throw new RangeError("likeMine: the present cue was not measured");
	const { gripFromButtMm } = reading;
	return likeMineBut({ reading: { ...reading, gripFromButtMm }, change });
}

function cue(key: number, place: number): void {
	if (kept === null || kept.key !== key) {
		scope.postMessage({ kind: "gone", key });
		return;
	}
	const row = kept.rows[place];
	if (row === undefined) throw new RangeError(`no cue ${place}`);
	const { pool } = kept.search;
	const { request, massG, forwardMm } = candidateAt(
		pool.axes,
		pool.place[row] as number,
	);
	scope.postMessage({
		kind: "cue",
		key,
		place,
		choice: {
			request,
			wantedMassG: massG,
			wantedBalanceFromButtMm:
				forwardMm > 0
					? (pool.measures[row * CRITERION_COUNT + AT.balance] as number)
					: null,
		},
	});
}
