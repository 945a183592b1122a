import { describe, expect, test } from "vitest";
import { readAnswers } from "@/lib/forms/answers";
import type { TakenWish } from "@/lib/forms/taken-wishes";

const TAKEN: TakenWish = {
	field: "wishMass",
	after: "489 g",
	sd: 18,
	sessions: 2,
	shots: 60,
};
const spreadOf = (
	wishMass: string | undefined,
	taken: readonly TakenWish[],
	system: "metric" | "trade" = "metric",
) => readAnswers({ wishMass }, system, taken).input.wishSpread;

describe("wishes that trials gave", () => {
	test("go with their spread while the answer reads as it was put in", () => {
		for (const system of ["metric", "trade"] as const)
			expect(spreadOf("489 g", [TAKEN], system)).toEqual({
				massG: { value: 489, sd: 18, sessions: 2, shots: 60 },
			});
	});
	test("typed over, emptied or put back, they go without", () => {
		expect(spreadOf("490 g", [TAKEN])).toBeUndefined();
		expect(spreadOf("", [TAKEN])).toBeUndefined();
		expect(spreadOf(undefined, [TAKEN])).toBeUndefined();
		expect(spreadOf("489 g", [])).toBeUndefined();
	});
	test("of two that read the same, the later one's spread", () => {
		expect(spreadOf("489 g", [{ ...TAKEN, sd: 11 }, TAKEN])?.massG?.sd).toBe(
			11,
		);
		expect(
			spreadOf("489 g", [{ ...TAKEN, after: "495 g" }, TAKEN])?.massG?.sd,
		).toBe(18);
	});
	test("each wish has its own", () => {
		const { input } = readAnswers(
			{ wishMass: "489 g", wishTip: "9.7 mm", wishLength: "1470 mm" },
			"metric",
			[TAKEN, { ...TAKEN, field: "wishTip", after: "9.7 mm", sd: 0.4 }],
		);
		expect(Object.keys(input.wishSpread ?? {}).sort()).toEqual([
			"massG",
			"tipDiameterMm",
		]);
	});
	test("an answer that cannot be read has none", () => {
		const { input, problems } = readAnswers({ wishMass: "9 kg" }, "metric", [
			{ ...TAKEN, after: "9 kg" },
		]);
		expect(problems).toHaveLength(1);
		expect(input.wishSpread).toBeUndefined();
	});
});
