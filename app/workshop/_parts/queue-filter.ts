import { DUE_FILTERS, type DueFilter } from "@/lib/workshop/due-filter";
import { isJobState, type JobState } from "@/lib/workshop/job-state";

/** What the queue shows, as its address says it. */
export interface QueueFilter {
	readonly state: JobState | "open";
	readonly due: DueFilter | null;
	readonly search: string;
}

export type SearchParams = Readonly<
	Record<string, string | string[] | undefined>
>;

const one = (value: string | string[] | undefined): string =>
	(Array.isArray(value) ? value[0] : value) ?? "";

/** An address may hold anything: what is not known here is as good as absent. */
export function readFilter(params: SearchParams): QueueFilter {
	const state = one(params.state);
	const due = one(params.due);
	return {
		state: isJobState(state) ? state : "open",
		due: DUE_FILTERS.find((known) => known === due) ?? null,
		search: one(params.q).slice(0, 120),
	};
}

export const afterIn = (params: SearchParams): string | undefined =>
	one(params.after) || undefined;

/** The same as a question to the records. */
export const asked = ({ state, due, search }: QueueFilter) => ({
	...(state === "open" ? {} : { states: [state] }),
	...(due === null ? {} : { due }),
	search,
});

/** The filter as an address has it; what is usual is left out. */
export const queryOf = ({
	state,
	due,
	search,
}: QueueFilter): Record<string, string> => ({
	...(state === "open" ? {} : { state }),
	...(due === null ? {} : { due }),
	...(search === "" ? {} : { q: search }),
});

export const queueHref = (filter: QueueFilter) => ({
	pathname: "/workshop",
	query: queryOf(filter),
});

export const jobHref = (number: number, filter: QueueFilter) => ({
	pathname: `/workshop/${number}`,
	query: queryOf(filter),
});
