import type { Outcome } from "@/lib/numerics/outcome";
import type { GameId } from "@/lib/reference/rules";
import { assess, type OnlineCue } from "@/lib/workshop/online";
import type { OnlineChoices, OnlineOffer } from "@/lib/workshop/online-choices";
import {
	type HomeMeasures,
	type Suggestion,
	suggestionsFrom,
} from "@/lib/workshop/online-measures";
import {
	canBeHelped,
	type Remedy,
	searchRemedy,
} from "@/lib/workshop/online-nearest";
import {
	type Outlook,
	optionsAhead,
	outlookOf,
} from "@/lib/workshop/online-outlook";

export type AssessQuestion =
	/** First of all, and again where the workshop's settings have changed. */
	| { readonly kind: "offer"; readonly offer: OnlineOffer }
	| {
			readonly kind: "cue";
			readonly key: number;
			readonly choices: OnlineChoices;
	  }
	| {
			readonly kind: "home";
			readonly key: number;
			readonly measures: HomeMeasures;
			readonly gameId: GameId;
	  };

/** For a cue: the cue itself, then what helps, then what every option would do. */
export type AssessAnswer =
	| { readonly kind: "cue"; readonly key: number; readonly cue: OnlineCue }
	| { readonly kind: "remedy"; readonly key: number; readonly remedy: Remedy }
	| {
			readonly kind: "outlooks";
			readonly key: number;
			readonly outlooks: readonly Outlook[];
	  }
	| { readonly kind: "done"; readonly key: number }
	| {
			readonly kind: "home";
			readonly key: number;
			readonly suggestions: Outcome<readonly Suggestion[]>;
	  }
	| {
			readonly kind: "failed";
			readonly key: number;
			readonly message: string;
	  };

const scope = globalThis as unknown as {
	onmessage: (event: MessageEvent<AssessQuestion>) => void;
	postMessage(message: AssessAnswer): void;
};

let offer: OnlineOffer | null = null;
let latest = -1;

scope.onmessage = ({ data }) => {
	if (data.kind === "offer") {
		offer = data.offer;
		return;
	}
	if (data.kind === "cue") latest = data.key;
	answer(data).catch((error: unknown) =>
		scope.postMessage({
			kind: "failed",
			key: data.key,
			message: String(error),
		}),
	);
};

async function answer(
	question: Exclude<AssessQuestion, { kind: "offer" }>,
): Promise<void> {
	if (offer === null) throw new Error("no workshop was named");
	const { key } = question;
	if (question.kind === "home") {
		const { measures, gameId } = question;
		const suggestions = suggestionsFrom(measures, gameId, offer);
		scope.postMessage({ kind: "home", key, suggestions });
		return;
	}
	// Of questions that already wait only the last is worth an answer.
	await pause();
	if (key !== latest) return;
	const cue = assess(question.choices, offer);
	scope.postMessage({ kind: "cue", key, cue });
	for (const finding of cue.findings.filter(canBeHelped)) {
		const search = searchRemedy({ cue, finding, offer });
		for (let step = search.next(); ; step = search.next()) {
			await pause();
			if (key !== latest) return;
			if (!step.done) continue;
			scope.postMessage({ kind: "remedy", key, remedy: step.value });
			break;
		}
	}
	const outlooks: Outlook[] = [];
	for (const option of optionsAhead(question.choices, offer)) {
		await pause();
		if (key !== latest) return;
		outlooks.push(outlookOf(cue, option, offer));
	}
	scope.postMessage({ kind: "outlooks", key, outlooks });
	scope.postMessage({ kind: "done", key });
}

/** Lets a newer question be heard. */
const pause = () => new Promise<void>((done) => setTimeout(done, 0));
