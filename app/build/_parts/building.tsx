"use client";

import {
	createContext,
	type ReactNode,
	useCallback,
	useContext,
	useEffect,
	useMemo,
	useState,
} from "react";
import { useReader } from "@/app/_ui/preferences/reader";
import {
	type OnlineAnswers,
	type OnlineProblem,
	readOnline,
	withOnlineChange,
} from "@/lib/forms/online-cue";
import type { HomeAnswers } from "@/lib/forms/online-measures";
import type { Currency } from "@/lib/present/money";
import { onlineLabel } from "@/lib/present/online-names";
import { moneyOf } from "@/lib/present/online-view";
import type { Reader } from "@/lib/words/reader";
import type { OnlineCue } from "@/lib/workshop/online";
import type { OnlineChange } from "@/lib/workshop/online-changes";
import type {
	OnlineChoices,
	OnlineField,
	OnlineOffer,
} from "@/lib/workshop/online-choices";
import {
	bringBack,
	type Draft,
	EMPTY_DRAFT,
	type Kept,
	keepDraft,
	readAside,
	readDraft,
	replaceDraft,
	sameAnswers,
} from "./draft";
import { differing, type StepBack, stepped } from "./steps-back";
import { type Assessed, useAssessed } from "./use-assessed";

/** What the server knows of a cue that this device keeps; null for one begun here. */
export interface Opened {
	readonly kept: Kept;
	readonly jobs: readonly {
		readonly number: number;
		readonly sentOn: string;
	}[];
}

interface Held {
	readonly draft: Draft;
	readonly past: readonly StepBack[];
}

interface Building {
	readonly reader: Reader;
	readonly offer: OnlineOffer;
	readonly money: Currency;
	readonly answers: OnlineAnswers;
	readonly home: HomeAnswers;
	readonly kept: Kept | null;
	readonly jobs: Opened["jobs"];
	/** As the answers read now. */
	readonly choices: OnlineChoices;
	readonly problems: readonly OnlineProblem[];
	readonly assessed: Assessed;
	readonly answer: (field: OnlineField, text: string) => void;
	readonly measure: (home: HomeAnswers) => void;
	/** Takes several choices at once, and says what was done. */
	readonly apply: (change: OnlineChange, done: string) => void;
	readonly said: string;
	/** Takes the last change of the choices back; null where there is none. */
	readonly undo: (() => void) | null;
	readonly setKept: (kept: Kept | null) => void;
	readonly putAnswers: (answers: OnlineAnswers) => void;
	readonly startAnew: () => void;
	/** Null where nothing was put aside. */
	readonly bringBack: (() => void) | null;
	/** False where the device stores nothing: then nothing survives a reload. */
	readonly isOnDevice: boolean;
}

const BuildingContext = createContext<Building | null>(null);

export function useBuilding(): Building {
	const building = useContext(BuildingContext);
	if (building === null) throw new Error("useBuilding outside its provider");
	return building;
}

/** Holds what was chosen, works it out as it changes, and keeps it on the device at once. */
export function BuildingProvider({
	offer,
	first,
	opened,
	children,
}: {
	offer: OnlineOffer;
	/** What the server worked out for the first answers. */
	first: OnlineCue;
	opened: Opened | null;
	children: ReactNode;
}) {
	const reader = useReader();
	const [{ draft, past }, setHeld] = useState<Held>(() => ({
		draft:
			opened === null
				? EMPTY_DRAFT
				: { ...EMPTY_DRAFT, answers: opened.kept.answers, kept: opened.kept },
		past: [],
	}));
	const setDraft = useCallback(
		(after: (draft: Draft) => Draft) =>
			setHeld((before) => ({ ...before, draft: after(before.draft) })),
		[],
	);
	const [isReady, setReady] = useState(false);
	const [isOnDevice, setOnDevice] = useState(true);
	const [hasAside, setAside] = useState(false);
	const [said, setSaid] = useState("");

	// Once, on opening: what this device holds of this cue.
	useEffect(() => {
		const before = readDraft();
		if (opened === null) {
			if (before !== null) setDraft(() => before);
		} else if (
			before?.kept?.id === opened.kept.id &&
			!sameAnswers(before.answers, before.kept.answers)
		) {
			// Typed here and not sent yet: it goes on from what the server had then (use-keeping.ts).
			const kept = { ...before.kept, token: opened.kept.token };
			setDraft(() => ({ ...before, kept }));
		} else {
			const home = before?.home ?? {};
			const { kept } = opened;
			const draft = { answers: kept.answers, home, kept };
			if (before?.kept?.id !== kept.id) replaceDraft(draft);
			setDraft(() => draft);
		}
		setAside(readAside() !== null);
		setReady(true);
	}, [opened, setDraft]);

	useEffect(() => {
		if (isReady) setOnDevice(keepDraft(draft));
	}, [draft, isReady]);

	const { answers } = draft;
	const { choices, problems } = useMemo(
		() => readOnline(answers, offer, reader.system),
		[answers, offer, reader.system],
	);
	const assessed = useAssessed(choices, offer, first);

	const change = useCallback(
		(
			after: (answers: OnlineAnswers) => OnlineAnswers,
			field: OnlineField | null,
			done: string,
		) => {
			setSaid(done);
			setHeld(({ draft, past }) => {
				const answers = after(draft.answers);
				const isOther = differing(draft.answers, answers).length > 0;
				return {
					draft: { ...draft, answers },
					past: isOther ? stepped(past, draft.answers, field) : past,
				};
			});
		},
		[],
	);
	const answer = useCallback(
		(field: OnlineField, text: string) =>
			change((answers) => ({ ...answers, [field]: text }), field, ""),
		[change],
	);
	const apply = useCallback(
		(wanted: OnlineChange, done: string) =>
			change((answers) => withOnlineChange(answers, wanted), null, done),
		[change],
	);
	const last = past.at(-1);
	const undo = useCallback(() => {
		if (last === undefined) return;
		setHeld(({ draft, past }) => ({
			draft: { ...draft, answers: last.answers },
			past: past.slice(0, past.indexOf(last)),
		}));
		setSaid(
			reader.say("online.undo.done", {
				fields: differing(answers, last.answers)
					.map((field) => onlineLabel(field, reader))
					.join(", "),
			}),
		);
	}, [answers, last, reader]);
	const measure = useCallback(
		(home: HomeAnswers) => setDraft((before) => ({ ...before, home })),
		[setDraft],
	);
	const setKept = useCallback(
		(kept: Kept | null) => setDraft((before) => ({ ...before, kept })),
		[setDraft],
	);
	const putAnswers = useCallback(
		(after: OnlineAnswers) => change(() => after, null, ""),
		[change],
	);
	const startAnew = useCallback(() => {
		replaceDraft(EMPTY_DRAFT);
		setHeld(({ draft: { home } }) => ({
			draft: { ...EMPTY_DRAFT, home },
			past: [],
		}));
		setAside(readAside() !== null);
	}, []);
	const back = useCallback(() => {
		const former = bringBack();
		if (former !== null) setHeld({ draft: former, past: [] });
		setAside(readAside() !== null);
	}, []);

	const building = useMemo<Building>(
		() => ({
			reader,
			offer,
			money: moneyOf(offer),
			...draft,
			jobs: opened?.jobs ?? [],
			choices,
			problems,
			assessed,
			answer,
			measure,
			apply,
			said,
			undo: last === undefined ? null : undo,
			setKept,
			putAnswers,
			startAnew,
			bringBack: hasAside ? back : null,
			isOnDevice,
		}),
		[
			reader,
			offer,
			draft,
			opened,
			choices,
			problems,
			assessed,
			answer,
			measure,
			apply,
			said,
			last,
			undo,
			setKept,
			putAnswers,
			startAnew,
			hasAside,
			back,
			isOnDevice,
		],
	);
	return <BuildingContext value={building}>{children}</BuildingContext>;
}
