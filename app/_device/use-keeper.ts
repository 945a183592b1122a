"use client";

import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import { answerOf, differingFields } from "@/lib/forms/answer-changes";
import type { Answers, FieldName } from "@/lib/forms/fields";
import { FittingKeeper, type KeeperView } from "./keeper";
import type { KeptFitting } from "./records";
import { browserTools } from "./tools";

/** After a failure it is tried again this often. */
const RETRY_MS = 5000;
/** What other devices did is asked this often while the page is in sight. */
const LOOK_MS = 15_000;

/** A keeper for as long as the part stands, with what it shows. */
export function useKeeper(initial: KeptFitting): {
	keeper: FittingKeeper;
	view: KeeperView;
} {
	const [keeper] = useState(() => new FittingKeeper(browserTools, initial));
	const view = useSyncExternalStore(
		keeper.subscribe,
		() => keeper.view,
		() => keeper.view,
	);

	useEffect(() => {
		keeper.open();
		void keeper.sync();
		const onVisible = () => {
			if (document.visibilityState === "visible") void keeper.sync();
		};
		/** Asked at once, it is also noticed at once that nobody answers any more. */
		const onNetwork = () => void keeper.sync();
		document.addEventListener("visibilitychange", onVisible);
		window.addEventListener("online", onNetwork);
		window.addEventListener("offline", onNetwork);
		const looking = setInterval(onVisible, LOOK_MS);
		return () => {
			document.removeEventListener("visibilitychange", onVisible);
			window.removeEventListener("online", onNetwork);
			window.removeEventListener("offline", onNetwork);
			clearInterval(looking);
			keeper.close();
		};
	}, [keeper]);

	const retries =
		!view.isReached &&
		(view.waitingCount > 0 ||
			view.fitting.start !== null ||
			view.save !== null);
	useEffect(() => {
		if (!retries) return;
		const trying = setInterval(() => void keeper.sync(), RETRY_MS);
		return () => clearInterval(trying);
	}, [keeper, retries]);

	return { keeper, view };
}

/**
 * Keeps a form and its keeper alike. What was typed goes to the keeper first, then what came in goes to
 * the form, so that neither takes the other's news for a word of its own.
 */
export function useFormKept({
	keeper,
	view,
	answers,
	put,
}: {
	keeper: FittingKeeper;
	view: KeeperView;
	/** The form's present content. */
	answers: Answers;
	put: (field: FieldName, answer: Answers[FieldName]) => void;
}): void {
	const known = useRef(answers);
	useEffect(() => {
		const typed = differingFields(answers, known.current);
		known.current = answers;
		if (typed.length > 0)
			keeper.type(typed.map((field) => [field, answerOf(answers[field])]));
		const shown = keeper.view === view ? view.answers : keeper.view.answers;
		const came = differingFields(shown, answers);
		if (came.length === 0) return;
		known.current = shown;
		for (const field of came) put(field, shown[field]);
	}, [keeper, view, answers, put]);
}
