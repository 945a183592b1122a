import { describe, expect, test } from "vitest";
import { beliefsFrom, type SessionTally } from "@/lib/trial/preference";
import { wishUpdates } from "@/lib/trial/wish-update";
import { RACK } from "./support/rack";

const tried = (
	light: readonly [number, number],
	heavy: readonly [number, number],
): SessionTally => ({
	tallies: [
		{ cueId: "light", hits: light[0], shots: light[1] },
		{ cueId: "heavy", hits: heavy[0], shots: heavy[1] },
	],
});
const updates = (
	sessions: readonly SessionTally[],
	target: Parameters<typeof beliefsFrom>[1] = {},
) => wishUpdates({ rack: RACK, sessions, before: beliefsFrom(RACK, target) });

describe("what a trial says of the wishes", () => {
	test("nothing before the first shot", () => {
		expect(updates([])).toEqual([]);
		expect(updates([tried([0, 0], [0, 0])])).toEqual([]);
	});
	test("only the figure in which the tried cues differ", () => {
		const found = updates([tried([32, 40], [22, 40])]);
		expect(found.map(({ field }) => field)).toEqual(["massG"]);
		expect(found[0]).toMatchObject({
			because: { sessions: 1, shots: 80, triedLow: 465, triedHigh: 565 },
		});
		expect(found[0]?.value).toBeLessThan(515);
	});
	test("its share of doubt removed is that of its spread, and its value lies between its extremes", () => {
		for (const { value, sd, because } of updates([tried([28, 40], [22, 40])])) {
			expect(because.shareOfDoubtRemoved).toBeCloseTo(
				1 - (sd / because.before.sd) ** 2,
				12,
			);
			expect(value).toBeGreaterThanOrEqual(because.valueLow);
			expect(value).toBeLessThanOrEqual(because.valueHigh);
		}
	});
	test("stays near firm advice and moves far from a loose one", () => {
		const session = [tried([34, 40], [20, 40])];
		const firm = updates(session, { massG: { value: 520, sd: 15 } })[0];
		const loose = updates(session, { massG: { value: 520, sd: 60 } })[0];
		expect(520 - (loose?.value ?? 0)).toBeGreaterThan(
			2 * (520 - (firm?.value ?? 520)),
		);
		expect(loose?.because.before.from).toBe("advice");
	});
	test("a handful of shots says too little to offer", () => {
		expect(
			updates([tried([1, 1], [0, 1])], { massG: { value: 520, sd: 15 } }),
		).toEqual([]);
	});
	test("the assumed fall-off is part of the spread", () => {
		const [update] = updates([tried([36, 40], [18, 40])]);
		const { valueLow = 0, valueHigh = 0 } = update?.because ?? {};
		expect(valueHigh).toBeGreaterThan(valueLow + 1);
		expect(update?.sd).toBeGreaterThan((valueHigh - valueLow) / 2 / 2);
	});
});
