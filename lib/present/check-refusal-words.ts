import { BENCH_STAGES } from "@/lib/build/as-built";
import type { Refusal } from "@/lib/numerics/outcome";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import { isJobState } from "@/lib/workshop/job-state";
import { formatLength, formatMass } from "./figures";
import { woodName } from "./labels";
import { formatDensity } from "./solid-figures";

type Words = (refusal: Refusal, reader: Reader) => string;

const figures = ({ facts }: Refusal): number => Number(facts?.figures);

const wood = (id: unknown, reader: Reader): string => {
	if (typeof id !== "string" || !Object.hasOwn(WOODS, id))
		throw new TypeError(`a refusal names no wood: ${String(id)}`);
	return woodName(id as WoodId, reader);
};

const stage = (id: unknown, { say }: Reader): string => {
	const found = BENCH_STAGES.find((one) => one === id);
	if (found === undefined)
		throw new TypeError(`a refusal names no stage: ${String(id)}`);
	return say(`checks.stage.${found}`);
};

/** Sentences of what a check on the bench, a decision on it, or the evidence in it is refused for. */
export const CHECK_REFUSAL_WORDS: Readonly<Record<string, Words>> = {
	"check-undecided": (refusal, { say }) =>
		say("checks.refusal.checkUndecided", { count: figures(refusal) }),
	"rework-not-measured": (refusal, { say }) =>
		say("checks.refusal.reworkNotMeasured", { count: figures(refusal) }),
	"customer-not-told": (refusal, { say }) =>
		say("checks.refusal.customerNotTold", { count: figures(refusal) }),
	"not-on-the-bench": ({ value }, { say }) => {
		if (typeof value !== "string" || !isJobState(value))
			throw new TypeError(`a refusal names no state: ${String(value)}`);
		return say("checks.refusal.notOnTheBench", {
			state: say(`job.state.${value}`),
		});
	},
	"nothing-read": (_, { say }) => say("checks.refusal.nothingRead"),
	"no-such-station": ({ value }, reader) =>
		reader.say("checks.refusal.noSuchStation", {
			station: formatLength(Number(value), reader, "station"),
		}),
	"wood-not-in-cue": ({ value }, reader) =>
		reader.say("checks.refusal.woodNotInCue", { wood: wood(value, reader) }),
	"nothing-to-decide": (_, { say }) => say("checks.refusal.nothingToDecide"),
	"note-missing": (_, { say }) => say("checks.refusal.noteMissing"),
	"other-evidence-stands": ({ value }, reader) =>
		reader.say("checks.refusal.otherEvidenceStands", {
			wood: wood(value, reader),
		}),
	"stage-tells-nothing": ({ value }, reader) =>
		reader.say("checks.refusal.stageTellsNothing", {
			stage: stage(value, reader),
		}),
	"not-weighed": (_, { say }) => say("checks.refusal.notWeighed"),
	"metal-not-told": (_, { say }) => say("checks.refusal.metalNotTold"),
	"metal-not-planned": ({ value }, reader) =>
		reader.say("checks.refusal.metalNotPlanned", {
			metal: formatMass(Number(value), reader, "added"),
		}),
	"says-nothing": (_, { say }) => say("checks.refusal.saysNothing"),
	"wild-density": ({ value, facts }, reader) =>
		reader.say("checks.refusal.wildDensity", {
			wood: wood(facts?.wood, reader),
			density: formatDensity(Number(value), reader),
			expected: formatDensity(Number(facts?.expectedKgM3), reader),
			spread: formatDensity(Number(facts?.sdKgM3), reader),
		}),
};
