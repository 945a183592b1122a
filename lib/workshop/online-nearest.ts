import { WOODS } from "@/lib/reference/woods";
import {
	assess,
	type Finding,
	type Judged,
	judge,
	type OnlineCue,
} from "./online";
import { changeSize, changesFor, type OnlineChange } from "./online-changes";
import type { OnlineChoices, OnlineField, OnlineOffer } from "./online-choices";

/** A way to make a cue that could not be made, or that a border may stop. */
export interface Way {
	/** What has to change, and only that. */
	readonly change: OnlineChange;
	readonly size: number;
	/** The cue it gives. */
	readonly after: OnlineCue;
}

/** What helps against one finding. */
export interface Remedy {
	readonly code: string;
	readonly field: OnlineField;
	/** The smallest change that was found to work; null where none of those tried does. */
	readonly nearest: Way | null;
	/** The smallest that leaves this choice as it is; null where there is none, or none but larger ones. */
	readonly keeping: Way | null;
}

/** One cue that was tried on the way. */
export interface Tried {
	readonly change: OnlineChange;
	readonly size: number;
	readonly works: boolean;
}

/** So many cues are worked out for one finding, and so many changes are put together, at most. */
const MOST_TRIED = 90;
const MOST_CHANGES = 3;

const keyOf = ({ code, field }: Pick<Finding, "code" | "field">) =>
	`${field} ${code}`;

/** Findings that a change can help against: what is refused, and a listed wood on its way abroad. */
export const canBeHelped = ({ kind, code }: Finding): boolean =>
	kind === "refused" || code === "protected-wood-border";

interface Asked {
	readonly cue: Pick<OnlineCue, "choices" | "findings">;
	readonly finding: Finding;
	readonly offer: OnlineOffer;
}

/** The value a search ends with, worked out without a pause. */
function finished<T>(
	search: Generator<Tried, T, void>,
	onTried?: (tried: Tried) => void,
): T {
	for (;;) {
		const step = search.next();
		if (step.done) return step.value;
		onTried?.(step.value);
	}
}

export const remedyFor = (asked: Asked): Remedy =>
	finished(searchRemedy(asked));

/** What helps against a finding, one cue tried at each step: whoever asks may pause between, or go away. */
export function* searchRemedy(asked: Asked): Generator<Tried, Remedy, void> {
	const { finding } = asked;
	const nearest = yield* searchWay(asked);
	const isOther = nearest === null || finding.field in nearest.change;
	return {
		code: finding.code,
		field: finding.field,
		nearest,
		keeping: isOther ? yield* searchWay({ ...asked, isKept: true }) : null,
	};
}

export const nearestWay = ({
	onTried,
	...asked
}: Asked & {
	readonly isKept?: boolean;
	readonly onTried?: (tried: Tried) => void;
}): Way | null => finished(searchWay(asked), onTried);

/**
 * The smallest change after which a finding is gone and nothing else is refused that was not before.
 * Cues are tried by `judge`, in the order of how large the change is; where one change brings up
 * another refusal, a second and a third are tried on top (uniform-cost search), so the first that works
 * is the smallest of all that were tried. `isKept` leaves the choice that the finding is about.
 */
export function* searchWay({
	cue: { choices, findings },
	finding,
	offer,
	isKept = false,
}: Asked & { readonly isKept?: boolean }): Generator<Tried, Way | null, void> {
	const allowed = new Set(
		findings.filter(({ kind }) => kind === "refused").map(keyOf),
	);
	allowed.delete(keyOf(finding));
	const waiting = new Waiting();
	const grow = (from: OnlineChange, against: Finding) => {
		const here = { ...choices, ...from };
		for (const next of changesFor({ finding: against, choices: here, offer })) {
			const isTaken = (Object.keys(next) as OnlineField[]).some(
				(field) => field in from || (isKept && field === finding.field),
			);
			const change = { ...from, ...next };
			if (!isTaken && Object.keys(change).length <= MOST_CHANGES)
				waiting.add(change, changeSize(choices, change));
		}
	};
	grow({}, finding);
	for (let tried = 0; tried < MOST_TRIED; tried++) {
		const next = waiting.take();
		if (next === null) return null;
		const { change, size } = next;
		const after: OnlineChoices = { ...choices, ...change };
		const judged = judge(after, offer);
		const refused = judged.refused.filter((one) => !allowed.has(keyOf(one)));
		const works =
			refused.length === 0 &&
			!isStillListed(finding, after) &&
			!isOnlyHoped(finding, judged);
		yield { change, size, works };
		if (works) return { change, size, after: assess(after, offer) };
		const [worst] = refused;
		if (worst !== undefined) grow(change, worst);
	}
	return null;
}

/** A weight that these woods reach only where the billets come out light is no help against one too low. */
const isOnlyHoped = ({ code }: Finding, { build }: Judged): boolean =>
	code === "weight-below-natural" &&
	build?.plan.ok === true &&
	build.plan.value.cautions.some((one) => one.code === "natural-above-wanted");

/** A listed wood is no refusal: another wood has to take its place. */
const isStillListed = (
	{ code, field }: Finding,
	choices: OnlineChoices,
): boolean => {
	if (code !== "protected-wood-border") return false;
	const wood = choices[field];
	return (
		typeof wood === "string" &&
		wood in WOODS &&
		WOODS[wood as keyof typeof WOODS].protection !== null
	);
};

interface Waited {
	readonly change: OnlineChange;
	readonly size: number;
}

/** Changes still to be tried, smallest first, each once; of equal ones the first named. */
class Waiting {
	readonly #queue: Waited[] = [];
	readonly #seen = new Set<string>();

	add(change: OnlineChange, size: number): void {
		const key = JSON.stringify(
			Object.entries(change).sort(([a], [b]) => (a < b ? -1 : 1)),
		);
		if (this.#seen.has(key)) return;
		this.#seen.add(key);
		const at = this.#queue.findIndex((other) => other.size > size);
		this.#queue.splice(at < 0 ? this.#queue.length : at, 0, { change, size });
	}

	take(): Waited | null {
		return this.#queue.shift() ?? null;
	}
}
