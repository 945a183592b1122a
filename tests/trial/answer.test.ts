import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { answerTrial, type TrialSession } from "@/lib/trial/answer";
import type { Shot } from "@/lib/trial/shots";
import { RACK, rackCue } from "./support/rack";

const session = (one: string, other: string, count = 40): TrialSession => ({
	isPaired: true,
	shots: Array.from(
		{ length: count },
		(_, i): Shot => ({
			cueId: i % 2 === 0 ? one : other,
			isPotted: i % 2 === 0 ? i % 10 !== 0 : i % 3 !== 0,
			pair: Math.floor(i / 2),
			round: Math.floor(i / 2),
		}),
	),
});

describe("an answer", () => {
	test("without sessions is a proposal from the rack alone", () => {
		const answer = must(answerTrial({ rack: RACK, sessions: [] }));
		expect(answer.analyses).toEqual([]);
		expect(answer.wishUpdates).toEqual([]);
		expect(answer.proposals).toHaveLength(5);
		expect(answer.preference.residual).toBeLessThan(1e-8);
	});
	test("with sessions analyses each, scores the rack and offers wishes", () => {
		const answer = must(
			answerTrial({
				rack: RACK,
				sessions: [session("light", "heavy"), session("middle", "long")],
			}),
		);
		expect(
			answer.analyses.map(({ cues }) => cues.map(({ cueId }) => cueId)),
		).toEqual([
			["light", "heavy"],
			["middle", "long"],
		]);
		expect(Math.min(...answer.scores.map(({ belowBest }) => belowBest))).toBe(
			0,
		);
		expect(answer.scores.filter(({ sd }) => sd === 0)).toHaveLength(1);
		expect(answer.wishUpdates.map(({ field }) => field).sort()).toEqual([
			"lengthMm",
			"massG",
		]);
	});
	test("is the same whenever it is asked", () => {
		const question = { rack: RACK, sessions: [session("light", "thin")] };
		expect(answerTrial(question)).toEqual(answerTrial(question));
	});
});

describe("refusals name field, value and bound", () => {
	const refused = (question: Parameters<typeof answerTrial>[0]) => {
		const answer = answerTrial(question);
		if (answer.ok) throw new Error("was answered");
		return answer.refusals;
	};
	test("a rack of one", () => {
		expect(refused({ rack: [rackCue("only")], sessions: [] })).toEqual([
			{ code: "rack-too-small", field: "rack", value: 1, min: 2 },
		]);
	});
	test("the same id twice", () => {
		expect(
			refused({ rack: [rackCue("a"), rackCue("a")], sessions: [] }),
		).toMatchObject([{ code: "same-cue-twice", value: "a" }]);
	});
	test("a shot with a cue the rack does not have", () => {
		expect(
			refused({ rack: RACK, sessions: [session("light", "stray")] }),
		).toMatchObject([
			{ code: "unknown-cue", field: "sessions.0.shots", value: "stray" },
		]);
	});
	test("too many shots for the exact tests", () => {
		expect(
			refused({ rack: RACK, sessions: [session("light", "heavy", 1002)] }),
		).toMatchObject([{ code: "out-of-range", value: 1002, max: 1000 }]);
	});
});
