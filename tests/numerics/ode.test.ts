import { describe, expect, it } from "vitest";
import { emptyBand, STRIDE } from "@/lib/numerics/banded";
import { velocityFromRest } from "@/lib/numerics/ode";

/** One mass on a spring under sin(pt): v(t) = p (cos pt − cos ωt)/(m(ω² − p²)). */
const oscillator = (omega: number) => {
	const mass = emptyBand(1);
	const stiffness = emptyBand(1);
	mass.values[0] = 2;
	stiffness.values[0] = 2 * omega * omega;
	return { mass, stiffness };
};

const pulse = (steps: number): Float64Array =>
	Float64Array.from({ length: steps + 1 }, (_, i) =>
		i === 0 ? 0 : Math.sin((Math.PI * i) / steps),
	);

const run = (omega: number, steps: number): number =>
	velocityFromRest({
		...oscillator(omega),
		shape: Float64Array.of(1),
		amplitudes: pulse(steps),
		stepS: 1 / steps,
	})[0] as number;

describe("stepping from rest", () => {
	const exact = (omega: number): number =>
		(Math.PI * (-1 - Math.cos(omega))) / (2 * (omega ** 2 - Math.PI ** 2));

	it("approaches the closed form at second order", () => {
		for (const omega of [0.7, 2, 5]) {
			const coarse = Math.abs(run(omega, 40) - exact(omega));
			const fine = Math.abs(run(omega, 80) - exact(omega));
			expect(fine).toBeLessThan(2e-3);
			expect(coarse / fine).toBeGreaterThan(3.8);
			expect(coarse / fine).toBeLessThan(4.2);
		}
	});

	it("stays bounded however stiff the spring", () => {
		expect(Math.abs(run(1e6, 12))).toBeLessThan(1e-3);
	});

	it("without a spring gives back the trapezoidal impulse over the mass", () => {
		const steps = 12;
		const { mass, stiffness } = oscillator(0);
		const v = velocityFromRest({
			mass,
			stiffness,
			shape: Float64Array.of(3),
			amplitudes: pulse(steps),
			stepS: 0.5,
		});
		let impulse = 0;
		for (const amplitude of pulse(steps)) impulse += 0.5 * 3 * amplitude;
		expect(v[0]).toBeCloseTo(impulse / 2, 9);
		expect(mass.values[STRIDE - 1]).toBe(0);
	});

	it("refuses a start under force and a step of nothing", () => {
		const common = {
			...oscillator(1),
			shape: Float64Array.of(1),
		};
		expect(() =>
			velocityFromRest({
				...common,
				amplitudes: Float64Array.of(1, 0),
				stepS: 1,
			}),
		).toThrow(/start at 0, got 1/);
		expect(() =>
			velocityFromRest({ ...common, amplitudes: pulse(2), stepS: 0 }),
		).toThrow(/stepS.*0/);
	});
});
