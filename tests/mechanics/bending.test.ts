import { describe, expect, it } from "vitest";
import { bendingOf } from "@/lib/mechanics/bending";
import { must } from "@/lib/numerics/outcome";
import { band90 } from "@/lib/reference/estimate";
import { cue } from "../support/designs";

describe("bending figures of a design", () => {
	const figures = must(bendingOf({ design: cue(), gripFromButtMm: 130 }));

	it("stand in their order: clamped below pinned below free; three free ones rising", () => {
		const { freeHz, heldHz } = figures.planes.x;
		expect(freeHz).toHaveLength(3);
		expect(freeHz[1]?.value).toBeGreaterThan(2 * (freeHz[0]?.value ?? 0));
		expect(heldHz.clamped.value).toBeLessThan(heldHz.pinned.value);
		expect(heldHz.pinned.value).toBeLessThan((freeHz[0]?.value ?? 0) + 1e-9);
	});

	it("carry bands of the woods: about ±20 % on frequency at 90 %", () => {
		const first = figures.planes.x.freeHz[0];
		if (!first) throw new Error("no mode");
		const { low, high } = band90(first);
		expect((high - low) / first.value).toBeGreaterThan(0.3);
		expect((high - low) / first.value).toBeLessThan(0.5);
		expect(first.sources.length).toBeGreaterThan(0);
	});

	it("a weighed billet narrows them", () => {
		const weighed = must(
			bendingOf({
				design: {
					...cue(),
					densities: {
						"white-ash": { kgM3: 672, sd: 5 },
						"gaboon-ebony": { kgM3: 955, sd: 5 },
					},
				},
				gripFromButtMm: 130,
			}),
		);
		expect(weighed.planes.x.droopMm.sd).toBeLessThan(
			figures.planes.x.droopMm.sd,
		);
	});

	it("a four-point splice has hardly a side, a round butt none", () => {
		expect(figures.sideRatio).toBeGreaterThanOrEqual(1);
		expect(figures.sideRatio).toBeLessThan(1.01);
		expect(
			must(bendingOf({ design: cue({ splice: "plain" }), gripFromButtMm: 130 }))
				.sideRatio,
		).toBe(1);
	});

	it("a longer cue droops more and rings lower", () => {
		const longer = must(
			bendingOf({ design: cue({ lengthMm: 1560 }), gripFromButtMm: 130 }),
		).planes.x;
		expect(longer.droopMm.value).toBeGreaterThan(
			figures.planes.x.droopMm.value,
		);
		expect(longer.freeHz[0]?.value).toBeLessThan(
			figures.planes.x.freeHz[0]?.value ?? 0,
		);
	});

	it("refuses a grip off the handle, naming field, value and bounds", () => {
		for (const gripFromButtMm of [0, 900, Number.NaN]) {
			const refused = bendingOf({ design: cue(), gripFromButtMm });
			expect(refused).toMatchObject({
				ok: false,
				refusals: [
					{ code: "out-of-range", field: "gripFromButtMm", min: 10, max: 730 },
				],
			});
		}
	});
});
