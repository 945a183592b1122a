/** Where a job stands. */
export const JOB_STATES = [
	"asked",
	"quoted",
	"agreed",
	"on-the-bench",
	"waiting",
	"checked",
	"handed-over",
	"cancelled",
] as const;
export type JobState = (typeof JOB_STATES)[number];

/** States a bench still has something to do in, in the order of the work. */
export const OPEN_STATES: readonly JobState[] = JOB_STATES.filter(
	(state) => state !== "handed-over" && state !== "cancelled",
);

export const WAITING_FOR = ["drying", "parts"] as const;
export type WaitingFor = (typeof WAITING_FOR)[number];

/**
 * What carries a move out: `bench` somebody at the workshop by hand; `quote` the writing of a quote or
 * of a change, which the customer must agree to; `agreement` the customer's yes.
 */
export type MoveThrough = "bench" | "quote" | "agreement";

export interface Move {
	readonly from: JobState;
	readonly to: JobState;
	readonly through: MoveThrough;
}

const bench = (from: JobState, ...to: readonly JobState[]): Move[] =>
	to.map((one) => ({ from, to: one, through: "bench" }));

/** Every move there is. A change agreed to on the bench leaves the job where it is. */
export const MOVES: readonly Move[] = [
	{ from: "asked", to: "quoted", through: "quote" },
	{ from: "agreed", to: "quoted", through: "quote" },
	{ from: "quoted", to: "agreed", through: "agreement" },
	...bench("asked", "cancelled"),
	...bench("quoted", "cancelled"),
	...bench("agreed", "on-the-bench", "cancelled"),
	...bench("on-the-bench", "waiting", "checked", "agreed", "cancelled"),
	...bench("waiting", "on-the-bench", "cancelled"),
	...bench("checked", "handed-over", "on-the-bench", "cancelled"),
	...bench("cancelled", "asked"),
];

export const mayMove = (
	from: JobState,
	to: JobState,
	through: MoveThrough = "bench",
): boolean =>
	MOVES.some(
		(move) => move.from === from && move.to === to && move.through === through,
	);

/** Where somebody at the workshop can move a job to. */
export const movesFrom = (from: JobState): readonly JobState[] =>
	MOVES.filter((move) => move.from === from && move.through === "bench").map(
		({ to }) => to,
	);

/** States that are only reached with the latest revision agreed to: nothing agreed changes silently. */
export const NEEDS_AGREEMENT: readonly JobState[] = [
	"on-the-bench",
	"checked",
	"handed-over",
];

export const isJobState = (text: string): text is JobState =>
	(JOB_STATES as readonly string[]).includes(text);
