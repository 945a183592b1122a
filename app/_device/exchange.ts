import { type Answer, differingFields } from "@/lib/forms/answer-changes";
import type {
	AnswerConflict,
	Device,
	SyncRequest,
} from "@/lib/forms/device-sync";
import type { KeptChange, KeptFitting, QueuedSave } from "./records";

/** What a device says of one fitting: how it began here, what waits, the spec asked for. */
export function requestOf(p: {
	device: Device;
	sentAt: Date;
	fitting: KeptFitting;
	changes: readonly KeptChange[];
	save: QueuedSave | null;
}): SyncRequest {
	const { id, start } = p.fitting;
	return {
		version: 1,
		device: p.device,
		sentAt: p.sentAt.toISOString(),
		fittingId: id,
		...(start === null ? {} : { start }),
		changes: p.changes.map(({ fittingId: _, ...change }) => change),
		...(p.save === null ? {} : { save: askedIn(p.save) }),
	};
}

const askedIn = ({ requestKey, reason, answers, seen }: QueuedSave) => ({
	requestKey,
	reason,
	answers,
	seen,
});

/** Whether two requests ask for the same spec: pressed twice it is one. */
export const asksTheSame = (
	a: Pick<QueuedSave, "reason" | "seen" | "answers">,
	b: Pick<QueuedSave, "reason" | "seen" | "answers">,
): boolean =>
	a.reason === b.reason &&
	JSON.stringify(a.seen) === JSON.stringify(b.seen) &&
	differingFields(a.answers, b.answers).length === 0;

/** The conflicts nobody on this device has chosen in yet. */
export const unsettled = (
	conflicts: readonly AnswerConflict[],
	changes: Iterable<KeptChange>,
): AnswerConflict[] => {
	const settled = new Set([...changes].flatMap(({ settles = [] }) => settles));
	return conflicts.filter(({ id }) => !settled.has(id));
};

/**
 * The later of what is known of a fitting and what came in: answers may overtake each other on the
 * way, and a page may be older than what lies on the device.
 */
export function laterOf(known: KeptFitting, came: KeptFitting): KeptFitting {
	const openedAt = latest(known.openedAt, came.openedAt) ?? came.openedAt;
	const asOf = latest(known.asOf, came.asOf);
	const isBegun = known.start === null || came.start === null;
	const later = came.revision < known.revision ? known : came;
	return { ...later, openedAt, asOf, start: isBegun ? null : later.start };
}

const latest = (a: string | null, b: string | null): string | null =>
	[a, b]
		.filter((one) => one !== null)
		.sort()
		.at(-1) ?? null;

/** Stored and sent lists are plain ones. */
export const copied = (answer: Answer): string | string[] | null =>
	answer === null || typeof answer === "string" ? answer : [...answer];
