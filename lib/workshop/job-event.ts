import type { WoodId } from "@/lib/reference/woods";
import type { CheckDecision } from "./check";
import type { WaitingFor } from "./job-state";

/** What can happen to a job. Kept for good, so a kind is never renamed. */
export const JOB_EVENTS = [
	"opened",
	"moved",
	"quoted",
	"changed",
	"agreed",
	"due-set",
	"noted",
	"customer-changed",
	"link-made",
	"links-revoked",
	"checked",
	"decided",
	"evidence-taken",
	"evidence-withdrawn",
	"evidence-restored",
	"player-erased",
] as const;
export type JobEventKind = (typeof JOB_EVENTS)[number];

/** Numbers and dates of an event, by kind. */
export interface JobEventFacts {
	/** moved to waiting */
	readonly waitingFor?: WaitingFor;
	/** moved to waiting: ISO date when the wait should be over */
	readonly expectedOn?: string;
	/** quoted, changed, agreed */
	readonly revision?: number;
	/** due-set: ISO date, null where taken away */
	readonly dueOn?: string | null;
	/** agreed */
	readonly via?: "page" | "bench";
	/** checked, decided, evidence-taken */
	readonly checkId?: string;
	/** checked, decided */
	readonly stage?: string;
	/** decided */
	readonly decision?: CheckDecision;
	/** evidence-taken, evidence-withdrawn, evidence-restored */
	readonly woods?: readonly WoodId[];
}

export const isJobEventKind = (text: string): text is JobEventKind =>
	(JOB_EVENTS as readonly string[]).includes(text);
