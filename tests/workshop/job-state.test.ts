import { describe, expect, test } from "vitest";
import {
	isJobState,
	JOB_STATES,
	type JobState,
	MOVES,
	mayMove,
	movesFrom,
	NEEDS_AGREEMENT,
	OPEN_STATES,
} from "@/lib/workshop/job-state";

/**
 * Which state a bench may put a job into from which, one row a state, columns in the order of
 * JOB_STATES. b: by hand at the bench; q: only by writing a quote; a: only by the customer's yes.
 * Common practice, no source.
 */
const TABLE: Readonly<Record<JobState, string>> = {
	//              as qu ag on wa ch ha ca
	asked: /*     */ ".  q  .  .  .  .  .  b",
	quoted: /*    */ ".  .  a  .  .  .  .  b",
	agreed: /*    */ ".  q  .  b  .  .  .  b",
	"on-the-bench": ".  .  b  .  b  b  .  b",
	waiting: /*   */ ".  .  .  b  .  .  .  b",
	checked: /*   */ ".  .  .  b  .  .  b  b",
	"handed-over": ".  .  .  .  .  .  .  .",
	cancelled: /* */ "b  .  .  .  .  .  .  .",
};
const THROUGH = { b: "bench", q: "quote", a: "agreement" } as const;

describe("every pair of states", () => {
	for (const from of JOB_STATES)
		test.each(JOB_STATES.map((to, i) => [from, to, i] as const))(
			"%s to %s",
			(_, to, i) => {
				const sign = TABLE[from].split(/\s+/)[i];
				for (const [letter, through] of Object.entries(THROUGH))
					expect(mayMove(from, to, through), through).toBe(sign === letter);
				expect(movesFrom(from).includes(to)).toBe(sign === "b");
			},
		);
});

test("no move is named twice, none stays where it is", () => {
	const names = MOVES.map(({ from, to }) => `${from} ${to}`);
	expect(new Set(names).size).toBe(names.length);
	expect(MOVES.filter(({ from, to }) => from === to)).toEqual([]);
});

test("every state can be reached from the first, and every open one can be cancelled", () => {
	const reached = new Set<JobState>(["asked"]);
	for (let grown = -1; grown !== reached.size; ) {
		grown = reached.size;
		for (const { from, to } of MOVES) if (reached.has(from)) reached.add(to);
	}
	expect([...reached].sort()).toEqual([...JOB_STATES].sort());
	for (const state of OPEN_STATES)
		expect(mayMove(state, "cancelled"), state).toBe(true);
});

test("no way to the bench leads past the customer's yes", () => {
	for (const { from, to } of MOVES.filter(
		({ from: before, to: after }) =>
			NEEDS_AGREEMENT.includes(after) && !NEEDS_AGREEMENT.includes(before),
	))
		expect(["agreed", "waiting"], `${from} to ${to}`).toContain(from);
});

test("text that is no state is told apart", () => {
	expect(isJobState("waiting")).toBe(true);
	expect(isJobState("Waiting")).toBe(false);
});
