import type { Refusal } from "@/lib/numerics/outcome";
import type { JobContent } from "./job-content";
import {
	type JobState,
	mayMove,
	NEEDS_AGREEMENT,
	WAITING_FOR,
	type WaitingFor,
} from "./job-state";
import { quoteRefusals } from "./quote";
import { notBefore } from "./working-days";

/** What of a job the rules below look at. */
export interface JobStanding {
	readonly state: JobState;
	/** Whether the latest revision says what the customer agreed to. */
	readonly isAgreed: boolean;
	readonly latestRevision: number;
	readonly quote: JobContent["quote"];
}

export const isClosed = (state: JobState): boolean =>
	state === "handed-over" || state === "cancelled";

const closed = (state: JobState): Refusal => ({
	code: "job-closed",
	field: "state",
	value: state,
});

/**
 * Why somebody at the workshop cannot move a job: "no-such-move", "not-agreed" where the latest
 * revision has to be agreed to first, "wait-needs-reason", and those of the date a wait should end on.
 */
export function moveRefusals(
	job: JobStanding,
	move: {
		to: JobState;
		waitingFor?: WaitingFor | undefined;
		expectedOn?: string | undefined;
	},
	today: string,
): readonly Refusal[] {
	const { to, waitingFor, expectedOn } = move;
	if (!mayMove(job.state, to))
		return [
			{
				code: "no-such-move",
				field: "to",
				value: to,
				facts: { from: job.state },
			},
		];
	if (NEEDS_AGREEMENT.includes(to) && !job.isAgreed)
		return [
			{
				code: "not-agreed",
				field: "to",
				value: to,
				facts: { revision: job.latestRevision },
			},
		];
	if (to !== "waiting") return [];
	return [
		...(waitingFor !== undefined && WAITING_FOR.includes(waitingFor)
			? []
			: [{ code: "wait-needs-reason", field: "waitingFor", value: null }]),
		...notBefore("expectedOn", expectedOn ?? "", today),
	];
}

/** Why a job cannot take a revision: "job-closed", "quote-missing" once there was one, those of the quote. */
export function revisionRefusals(
	{ state }: Pick<JobStanding, "state">,
	{ quote }: Pick<JobContent, "quote">,
	today: string,
): readonly Refusal[] {
	if (isClosed(state)) return [closed(state)];
	if (quote !== null) return quoteRefusals(quote, today);
	return state === "asked"
		? []
		: [{ code: "quote-missing", field: "quote", value: null }];
}

/** Where a job stands after a revision was written. `wasAgreed`: to these very words, before. */
export function stateAfterRevision(
	state: JobState,
	{ quote }: Pick<JobContent, "quote">,
	wasAgreed: boolean,
): JobState {
	if (quote === null) return state;
	if (wasAgreed) return state === "quoted" ? "agreed" : state;
	return state === "asked" || state === "agreed" ? "quoted" : state;
}

/**
 * Why a customer cannot agree: "job-closed", "quote-replaced" where it is not the latest or not what
 * was seen, "no-quote", "quote-expired".
 */
export function agreeRefusal(
	{ state, quote, latestRevision }: JobStanding,
	isAsSeen: boolean,
	today: string,
): Refusal | null {
	if (isClosed(state)) return closed(state);
	if (!isAsSeen)
		return {
			code: "quote-replaced",
			field: "jobRevision",
			value: latestRevision,
		};
	if (quote === null || state === "asked")
		return { code: "no-quote", field: "quote", value: null };
	if (quote.validUntil < today)
		return {
			code: "quote-expired",
			field: "validUntil",
			value: quote.validUntil,
		};
	return null;
}
