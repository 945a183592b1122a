import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { monotoneCubic } from "@/lib/numerics/interpolation";

const risingData = fc
	.array(
		fc.record({
			step: fc.double({ min: 0.1, max: 10, noNaN: true }),
			rise: fc.double({ min: 0, max: 10, noNaN: true }),
		}),
		{ minLength: 1, maxLength: 8 },
	)
	.map((steps) => {
		const xs = [0];
		const ys = [0];
		for (const { step, rise } of steps) {
			xs.push((xs.at(-1) ?? 0) + step);
			ys.push((ys.at(-1) ?? 0) + rise);
		}
		return { xs, ys };
	});

describe("monotoneCubic", () => {
	it("goes through its points", () => {
		fc.assert(
			fc.property(risingData, ({ xs, ys }) => {
				const curve = monotoneCubic(xs, ys);
				xs.forEach((x, i) => {
					expect(curve.at(x)).toBeCloseTo(ys[i] ?? Number.NaN, 9);
				});
			}),
		);
	});

	it("never falls where the data rise or stay", () => {
		fc.assert(
			fc.property(risingData, ({ xs, ys }) => {
				const curve = monotoneCubic(xs, ys);
				let last = curve.at(curve.from);
				for (let i = 1; i <= 200; i++) {
					const next = curve.at(Math.min(curve.to, (curve.to * i) / 200));
					expect(next).toBeGreaterThanOrEqual(last - 1e-9);
					last = next;
				}
			}),
		);
	});

	it("reproduces a straight line and its slope exactly", () => {
		const curve = monotoneCubic([0, 1, 4, 9], [2, 5, 14, 29]);
		for (const x of [0, 0.3, 2.5, 7, 9]) {
			expect(curve.at(x)).toBeCloseTo(2 + 3 * x, 12);
			expect(curve.slopeAt(x)).toBeCloseTo(3, 12);
		}
	});

	it("scales and shifts with its data", () => {
		fc.assert(
			fc.property(
				risingData,
				fc.double({ min: 0.1, max: 20, noNaN: true }),
				({ xs, ys }, factor) => {
					const plain = monotoneCubic(xs, ys);
					const scaled = monotoneCubic(
						xs,
						ys.map((y) => 3 + factor * y),
					);
					for (const share of [0.1, 0.37, 0.8])
						expect(scaled.at(share * plain.to)).toBeCloseTo(
							3 + factor * plain.at(share * plain.to),
							8,
						);
				},
			),
		);
	});

	it("has the slope its own differences show", () => {
		const curve = monotoneCubic([0, 1, 2, 4], [0, 0.2, 2, 2.5]);
		for (const x of [0.4, 1.3, 3.1]) {
			const step = 1e-6;
			const difference = (curve.at(x + step) - curve.at(x - step)) / (2 * step);
			expect(curve.slopeAt(x)).toBeCloseTo(difference, 7);
		}
	});

	it("throws outside its interval and on unusable points", () => {
		const curve = monotoneCubic([0, 1], [0, 1]);
		expect(() => curve.at(1.01)).toThrow(/outside/);
		expect(() => curve.at(Number.NaN)).toThrow(/outside/);
		expect(() => monotoneCubic([0, 0], [1, 2])).toThrow(/strictly/);
		expect(() => monotoneCubic([0], [1])).toThrow(/two or more/);
		expect(() => monotoneCubic([0, 1], [1, Number.NaN])).toThrow(/finite/);
	});
});
