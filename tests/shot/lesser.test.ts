import { describe, expect, it } from "vitest";
import { lesserOf } from "@/lib/shot/lesser";

describe("the lesser of two normal quantities", () => {
	it("is plainly the lesser when both are exact", () => {
		expect(lesserOf({ value: 2, sd: 0 }, { value: 3, sd: 0 })).toEqual({
			value: 2,
			sd: 0,
		});
	});

	it("is one of them when they stand far apart", () => {
		const low = { value: 0.2, sd: 0.01 };
		const lesser = lesserOf({ value: 0.9, sd: 0.05 }, low);
		expect(lesser.value).toBeCloseTo(low.value, 7);
		expect(lesser.sd).toBeCloseTo(low.sd, 6);
	});

	it("agrees with integration over the joint density", () => {
		const a = { value: 0.5, sd: 0.025 };
		const b = { value: 0.52, sd: 0.04 };
		let weight = 0;
		let sum = 0;
		let squares = 0;
		for (let i = -6; i <= 6; i += 0.02)
			for (let j = -6; j <= 6; j += 0.02) {
				const density = Math.exp(-0.5 * (i * i + j * j));
				const value = Math.min(a.value + a.sd * i, b.value + b.sd * j);
				weight += density;
				sum += density * value;
				squares += density * value * value;
			}
		const mean = sum / weight;
		const lesser = lesserOf(a, b);
		expect(lesser.value).toBeCloseTo(mean, 5);
		expect(lesser.sd).toBeCloseTo(Math.sqrt(squares / weight - mean ** 2), 5);
	});
});
