"use client";

import {
	createContext,
	type ReactNode,
	useCallback,
	useContext,
	useDeferredValue,
	useEffect,
	useMemo,
	useState,
} from "react";
import { useReader } from "@/app/_ui/preferences/reader";
import { answerCue, type CueAnswer } from "@/lib/advice/answer-cue";
import type { BilletDensities } from "@/lib/cue/design";
import {
	type BenchAnswers,
	type BenchFieldName,
	type BenchProblem,
	type BenchQuestion,
	benchQuery,
	readBench,
} from "@/lib/forms/cue-bench";
import type { Refusal } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";

interface Bench {
	readonly answers: BenchAnswers;
	readonly answer: (name: BenchFieldName, text: string) => void;
	readonly reader: Reader;
	/** As the answers read now; may lag typing by a frame, never the field itself. */
	readonly question: BenchQuestion;
	readonly problems: readonly BenchProblem[];
	/** The cue asked for, or the nearest without the wanted weight; null where neither can be made. */
	readonly cue: CueAnswer | null;
	readonly refusals: readonly Refusal[];
}

const BenchContext = createContext<Bench | null>(null);

export function useBench(): Bench {
	const bench = useContext(BenchContext);
	if (bench === null) throw new Error("useBench outside a BenchProvider");
	return bench;
}

/** How long typing rests before the address follows. */
const ADDRESS_AFTER_MS = 300;

/** Holds what was chosen, computes as it changes, and keeps it in the address. */
export function BenchProvider({
	initial,
	densities,
	children,
}: {
	initial: BenchAnswers;
	densities: BilletDensities;
	children: ReactNode;
}) {
	const reader = useReader();
	const [answers, setAnswers] = useState(initial);
	const settled = useDeferredValue(answers);
	const { question, problems } = useMemo(() => {
		const read = readBench(settled, reader.system);
		const { cue } = read.question;
		return {
			...read,
			question: { ...read.question, cue: { ...cue, densities } },
		};
	}, [settled, reader.system, densities]);
	const { cue, refusals } = useMemo(() => computed(question), [question]);
	const answer = useCallback(
		(name: BenchFieldName, text: string) =>
			setAnswers((before) => ({ ...before, [name]: text })),
		[],
	);
	useEffect(() => {
		if (answers === initial) return;
		const timer = setTimeout(() => {
			const query = benchQuery(answers);
			window.history.replaceState(null, "", query ? `?${query}` : "?");
		}, ADDRESS_AFTER_MS);
		return () => clearTimeout(timer);
	}, [answers, initial]);
	const bench = useMemo<Bench>(
		() => ({ answers, answer, reader, question, problems, cue, refusals }),
		[answers, answer, reader, question, problems, cue, refusals],
	);
	return (
		<BenchContext.Provider value={bench}>{children}</BenchContext.Provider>
	);
}

function computed(question: BenchQuestion): Pick<Bench, "cue" | "refusals"> {
	const asked = answerCue(question);
	if (asked.ok) return { cue: asked.value, refusals: [] };
	const { wantedMassG: _, ...rest } = question;
	const natural = answerCue(rest);
	return {
		cue: natural.ok ? natural.value : null,
		refusals: asked.refusals,
	};
}
