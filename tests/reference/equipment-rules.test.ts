import { describe, expect, it } from "vitest";
import { checkRules } from "@/lib/build/rules";
import { GAMES } from "@/lib/reference/rules";
import { gramsToOunces, inchesToMm, ouncesToGrams } from "@/lib/units/quantity";
import { cue58 } from "../support/designs";

/**
 * World Professional Billiards and Snooker Association, rules of snooker, section 1; World
 * Pool-Billiard Association, equipment specifications; World Eightball Pool Federation; Union
 * Mondiale de Billard. Numbers as printed there.
 */
describe("published equipment rules", () => {
	it("snooker: cue at least 914 mm, which is 3 ft rounded down", () => {
		expect(GAMES.snooker.cueMinLengthMm?.value).toBe(914);
		expect(Math.floor(inchesToMm(36))).toBe(914);
	});

	it("pool: at least 40 in, at most 25 oz, tip at most 14 mm, metal ferrule at most 1 in", () => {
		const pool = GAMES["american-pool"];
		expect(pool.cueMinLengthMm?.value).toBeCloseTo(inchesToMm(40), 9);
		expect(pool.metalFerruleMaxLengthMm?.value).toBe(inchesToMm(1));
		expect(pool.tipMaxDiameterMm?.value).toBe(14);
		// Printed 708.75 g; 25 oz is 708.738 g.
		expect(pool.cueMaxMassG?.value).toBe(708.75);
		expect(gramsToOunces(pool.cueMaxMassG?.value ?? 0)).toBeCloseTo(25, 2);
	});

	it("balls: diameters and masses", () => {
		expect(GAMES.snooker.cueBall.diameterMm.value).toBe(52.5);
		expect(GAMES["american-pool"].cueBall.diameterMm.value).toBe(
			inchesToMm(2.25),
		);
		const { massG } = GAMES["american-pool"].cueBall;
		expect(Math.abs(massG.value - ouncesToGrams(5.75))).toBeLessThan(0.5);
		expect(GAMES["english-eight-ball"].cueBall.diameterMm.value).toBeCloseTo(
			inchesToMm(1.875),
			1,
		);
		expect(GAMES.carom.cueBall.massG.value).toBe(210);
	});

	it("says that the snooker ball's mass is the trade's, not the rule's", () => {
		expect(GAMES.snooker.cueBall.massG.standing).toBe("common-practice");
	});
});

describe("checkRules", () => {
	it("names the broken rule, its bound and its source", () => {
		const short = cue58({ lengthMm: 913, layout: "one-piece" });
		const finding = checkRules(short, 450, "snooker").find(
			(one) => one.rule === "cue-length",
		);
		expect(finding).toEqual({
			rule: "cue-length",
			ok: false,
			field: "lengthMm",
			value: 913,
			bound: { min: 914 },
			source: "wpbsa-rules",
		});
	});

	it("takes the bounds themselves as allowed", () => {
		const bound = cue58({ lengthMm: 1016, tipDiameterMm: 14 });
		const checks = checkRules(bound, 708.75, "american-pool");
		expect(checks.map((one) => one.rule)).toEqual([
			"cue-length",
			"cue-weight",
			"tip-width",
			"metal-ferrule-length",
		]);
		expect(checks.every((one) => one.ok)).toBe(true);
		const over = checkRules(bound, 708.76, "american-pool");
		expect(over.find((one) => one.rule === "cue-weight")?.ok).toBe(false);
	});

	it("finds a cue that swells forward against the tapered form", () => {
		const design = cue58();
		expect(
			checkRules(design, 500, "snooker").find(
				(one) => one.rule === "tapered-form",
			)?.ok,
		).toBe(true);
		const swollen = {
			...design,
			taper: design.taper.map((point, i) =>
				i === 1 ? { ...point, diameterMm: 30 } : point,
			),
		};
		expect(
			checkRules(swollen, 500, "snooker").find(
				(one) => one.rule === "tapered-form",
			)?.ok,
		).toBe(false);
	});

	it("has no cue rule for carom or English eight-ball", () => {
		expect(checkRules(cue58(), 500, "carom")).toEqual([]);
		expect(checkRules(cue58(), 500, "english-eight-ball")).toEqual([]);
	});
});
