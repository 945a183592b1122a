import { describe, expect, it } from "vitest";
import { disagreements } from "@/lib/shot/disagreements";
import { ouncesToGrams } from "@/lib/units/quantity";

const pool = {
	cueMassG: ouncesToGrams(19),
	ballMassG: ouncesToGrams(6),
	endMassG: ouncesToGrams(6) / 20,
	restitutionRatio: 0.73,
};
const gap = (id: string, p = pool): number | undefined =>
	disagreements(p).find((one) => one.id === id)?.gapFraction;

describe("where the published models part", () => {
	it("off-centre speed: 11 % at half the radius with a leather tip", () => {
		expect(gap("off-centre-speed")).toBeCloseTo(0.11, 2);
	});

	it("two readings of one offset: the impulse-line angle is the greater", () => {
		const reading = disagreements(pool).find((one) => one.kind === "reading");
		expect(reading?.first.value).toBeCloseTo(2.709, 3);
		expect(reading?.gapFraction).toBeGreaterThan(0.05);
		expect(reading?.gapFraction).toBeLessThan(0.1);
	});

	it("the printed 87 % is 2 % short of what e 0.73 leaves", () => {
		expect(gap("tip-loss")).toBeCloseTo(0.87 / 0.8879 - 1, 4);
	});

	it("end mass: 44 % between the two ways to drive the tip", () => {
		expect(gap("what-drives-the-tip")).toBeCloseTo(0.4416, 3);
	});

	it("leaves out what has no second answer", () => {
		expect(
			gap("off-centre-speed", { ...pool, restitutionRatio: 0.2 }),
		).toBeUndefined();
		expect(disagreements({ ...pool, restitutionRatio: 0.2 })).toHaveLength(3);
	});
});
