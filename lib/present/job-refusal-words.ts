import type { Refusal } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";
import { isJobState } from "@/lib/workshop/job-state";
import { formatDay } from "./dates";

const state = (id: unknown, { say }: Reader): string => {
	if (typeof id !== "string" || !isJobState(id))
		throw new TypeError(`a refusal names no state: ${String(id)}`);
	return say(`job.state.${id}`);
};

const day = (isoDate: unknown, reader: Reader): string =>
	formatDay(String(isoDate), reader);

/** Sentences of what an edit of a job, a quote or an agreement is refused for. */
export const JOB_REFUSAL_WORDS: Readonly<
	Record<string, (refusal: Refusal, reader: Reader) => string>
> = {
	"no-such-move": ({ value, facts }, reader) =>
		reader.say("jobRefusal.noSuchMove", {
			from: state(facts?.from, reader),
			to: state(value, reader),
		}),
	"not-agreed": ({ facts }, { say }) =>
		say("jobRefusal.notAgreed", { revision: String(facts?.revision) }),
	"wait-needs-reason": (_, { say }) => say("jobRefusal.waitNeedsReason"),
	"job-closed": ({ value }, reader) =>
		reader.say("jobRefusal.jobClosed", { state: state(value, reader) }),
	"quote-missing": (_, { say }) => say("jobRefusal.quoteMissing"),
	"quote-replaced": ({ value }, { say }) =>
		say("jobRefusal.quoteReplaced", { revision: String(value) }),
	"no-quote": (_, { say }) => say("jobRefusal.noQuote"),
	"quote-expired": ({ value }, reader) =>
		reader.say("jobRefusal.quoteExpired", { date: day(value, reader) }),
	"extra-not-priced": ({ value }, { say }) =>
		say("jobRefusal.extraNotPriced", { name: String(value) }),
	"date-too-far": ({ value, facts }, reader) =>
		reader.say("jobRefusal.dateTooFar", {
			date: day(value, reader),
			latest: day(facts?.latest, reader),
		}),
};
