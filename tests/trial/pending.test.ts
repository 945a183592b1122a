import { describe, expect, test } from "vitest";
import { type LoggedShot, withChanges } from "@/app/trials/_parts/pending";
import type { ShotChange, TrialPlan } from "@/lib/forms/trial";
import { rackCue } from "./support/rack";

const cue = (letter: "A" | "B") => {
	const { id, ...figures } = rackCue(letter);
	return { ...figures, letter, cueId: id };
};
const PLAN: TrialPlan = {
	cues: [cue("A"), cue("B")],
	rounds: [
		["A", "B"],
		["B", "A"],
	],
	shotsPerTurn: 1,
	isPaired: true,
	isHidden: false,
};
const put = (
	key: string,
	shotNumber: number,
	change: Partial<Extract<ShotChange, { kind: "put" }>> = {},
): ShotChange => ({
	kind: "put",
	requestKey: key,
	shotNumber,
	isPotted: true,
	...change,
});
const back = (key: string): ShotChange => ({
	kind: "take-back",
	requestKey: key,
});
const keys = (shots: readonly LoggedShot[]) =>
	shots.map(({ requestKey }) => requestKey);

/** The same rules as lib/records/trials/mutations.ts, so that the page never shows what the server would refuse. */
describe("what is shown before the server answers", () => {
	test("shots in order, each with the cue of its place", () => {
		const shots = withChanges(
			[],
			[put("a", 0), put("b", 1), put("c", 2)],
			PLAN,
		);
		expect(shots.map(({ letter }) => letter)).toEqual(["A", "B", "B"]);
	});
	test("the same shot sent again only brings its notes", () => {
		const shots = withChanges(
			[],
			[put("a", 0), put("a", 0, { line: "left" }), put("a", 0, { line: "on" })],
			PLAN,
		);
		expect(shots).toMatchObject([{ requestKey: "a", line: "on" }]);
	});
	test("a mark pressed again is left out", () => {
		const [first] = withChanges(
			withChanges([], [put("a", 0, { line: "left" })], PLAN),
			[put("a", 0, { line: undefined })],
			PLAN,
		);
		expect(first?.line).toBeUndefined();
	});
	test("the last is taken back and its place is free; others are not", () => {
		expect(
			keys(
				withChanges(
					[],
					[put("a", 0), put("b", 1), back("a"), back("b"), put("c", 1)],
					PLAN,
				),
			),
		).toEqual(["a", "c"]);
	});
	test("a shot taken back does not come back when it is sent again", () => {
		expect(
			keys(withChanges([], [put("a", 0), back("a"), put("a", 0)], PLAN)),
		).toEqual([]);
	});
	test("nothing out of turn or past the plan is shown", () => {
		const all = [0, 1, 2, 3].map((i) => put(`s${i}`, i));
		expect(
			keys(withChanges([], [put("gap", 2), ...all, put("past", 4)], PLAN)),
		).toEqual(["s0", "s1", "s2", "s3"]);
	});
	test("changes stand on what the server acknowledged, which is left as it was", () => {
		const acknowledged = withChanges([], [put("a", 0)], PLAN);
		const before = JSON.stringify(acknowledged);
		expect(keys(withChanges(acknowledged, [put("b", 1)], PLAN))).toEqual([
			"a",
			"b",
		]);
		expect(JSON.stringify(acknowledged)).toBe(before);
	});
});
