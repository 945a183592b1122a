import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CueRequest } from "@/lib/cue/design";
import { weighCue } from "@/lib/cue/mass";
import { diameterAtMm } from "@/lib/cue/taper";
import { designFrom } from "@/lib/cue/template";
import type { Refusal } from "@/lib/numerics/outcome";
import { anyRequest, cue58, SNOOKER_58 } from "../support/designs";

const refusalsOf = (change: Partial<CueRequest>): readonly Refusal[] => {
	const outcome = designFrom({ ...SNOOKER_58, ...change });
	return outcome.ok ? [] : outcome.refusals;
};

describe("designFrom", () => {
	it("builds every request inside its limits, and weighs it sensibly", () => {
		fc.assert(
			fc.property(anyRequest, (request) => {
				const outcome = designFrom(request);
				expect(outcome.ok).toBe(true);
				if (!outcome.ok) return;
				const { massG, balanceFromButtMm } = weighCue(outcome.value);
				expect(massG.value).toBeGreaterThan(80);
				expect(massG.value).toBeLessThan(1100);
				expect(balanceFromButtMm.value).toBeGreaterThan(0.2 * request.lengthMm);
				expect(balanceFromButtMm.value).toBeLessThan(0.55 * request.lengthMm);
			}),
			{ numRuns: 100 },
		);
	});

	it("weighs and balances like a common snooker cue", () => {
		// Common practice, no source: balance 15–19 in from the butt end, unweighted well under 19 oz.
		const { massG, balanceFromButtMm } = weighCue(cue58());
		expect(balanceFromButtMm.value / 25.4).toBeGreaterThan(15);
		expect(balanceFromButtMm.value / 25.4).toBeLessThan(19);
		expect(massG.value).toBeGreaterThan(300);
		expect(massG.value).toBeLessThan(450);
	});

	it.each([
		[{ lengthMm: 699.9 }, "lengthMm", 700, 1700],
		[{ lengthMm: 1700.1 }, "lengthMm", 700, 1700],
		[{ lengthMm: Number.NaN }, "lengthMm", 700, 1700],
		[{ buttDiameterMm: 21.9 }, "buttDiameterMm", 22, 34],
		[{ buttDiameterMm: 34.1 }, "buttDiameterMm", 22, 34],
		[{ tipDiameterMm: 6.9 }, "tipDiameterMm", 7, 14],
		[
			{ tipDiameterMm: 14, buttDiameterMm: 21.99 + 0.005 },
			"buttDiameterMm",
			22,
			34,
		],
		[
			{ densities: { "white-ash": { kgM3: 200, sd: 5 } } },
			"densities.white-ash.kgM3",
			300,
			1500,
		],
		[{ fittings: { domeRadiusMm: 30 } }, "fittings.domeRadiusMm", 7, 20],
		[
			{ tipDiameterMm: 14, fittings: { domeRadiusMm: 7.2 } },
			"fittings.domeRadiusMm",
			7.5,
			20,
		],
		[{ fittings: { ferruleWallMm: 0.1 } }, "fittings.ferruleWallMm", 0.4, 1.5],
		[{ fittings: { endPieceMm: 20 } }, "fittings.endPieceMm", 50, 400],
	] as const)("refuses %j with field and bounds", (change, field, min, max) => {
		const refusals = refusalsOf(change as Partial<CueRequest>);
		expect(refusals).toHaveLength(1);
		expect(refusals[0]).toMatchObject({ field, min, max });
		expect(refusals[0]).toHaveProperty("value");
	});

	it("refuses woods in parts they are not used for", () => {
		expect(refusalsOf({ shaftWood: "gaboon-ebony" })).toEqual([
			{
				code: "wood-not-for-part",
				field: "shaftWood",
				value: "gaboon-ebony",
				facts: { part: "shaft" },
			},
		]);
	});

	it("refuses a joint in a one-piece cue and two joints that meet", () => {
		expect(
			refusalsOf({ layout: "one-piece", fittings: { jointFromButtMm: 400 } })[0]
				?.code,
		).toBe("no-joint-in-layout");
		const close = refusalsOf({
			fittings: { jointFromButtMm: 400, endPieceMm: 380 },
		});
		expect(close[0]).toMatchObject({
			code: "joints-too-close",
			field: "fittings.endPieceMm",
			value: 380,
		});
		const { max = 0 } = close[0] ?? {};
		expect(
			refusalsOf({ fittings: { jointFromButtMm: 400, endPieceMm: max } }),
		).toEqual([]);
	});

	it("names field, value and bound in every refusal of a wild request", () => {
		const wild = fc.record({
			lengthMm: fc.double(),
			buttDiameterMm: fc.double(),
			tipDiameterMm: fc.double(),
		});
		fc.assert(
			fc.property(wild, (change) => {
				for (const refusal of refusalsOf(change)) {
					expect(refusal.field).toMatch(/^[a-zA-Z.0-9-]+$/);
					expect(refusal).toHaveProperty("value");
					expect(refusal.min).toBeTypeOf("number");
					expect(refusal.max).toBeTypeOf("number");
				}
			}),
		);
	});
});

describe("free stations", () => {
	const freeTaper = [
		{ stationMm: 305, diameterMm: 11.4 },
		{ stationMm: 610, diameterMm: 14.9 },
		{ stationMm: 1030, diameterMm: 22.3 },
	];

	it("run the taper through the diameters asked for", () => {
		const design = cue58({ freeTaper });
		for (const { stationMm, diameterMm } of freeTaper)
			expect(diameterAtMm(design, stationMm)).toBeCloseTo(diameterMm, 9);
	});

	it("are refused where they do not rise", () => {
		const falling = refusalsOf({
			freeTaper: [
				{ stationMm: 300, diameterMm: 14 },
				{ stationMm: 600, diameterMm: 13 },
			],
		});
		expect(falling[0]).toMatchObject({
			field: "freeTaper.1.diameterMm",
			value: 13,
			min: 14,
			max: 29,
		});
		const unordered = refusalsOf({
			freeTaper: [
				{ stationMm: 600, diameterMm: 14 },
				{ stationMm: 300, diameterMm: 15 },
			],
		});
		expect(unordered[0]?.field).toBe("freeTaper.1.stationMm");
	});
});
