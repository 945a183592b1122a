/**
 * 2000 CDC growth charts, stature for age (Kuczmarski et al. 2002, Vital Health Stat 11(246)).
 * cdc-stature-for-age.csv beside this file is the published table, percentile columns included; the
 * project's own table holds L, M and S only. Residual seen: 2.2e-7 cm.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { staturePercentiles } from "@/lib/player/growth";
import {
	lmsAt,
	normalCdf,
	statureAtZ,
	zScore,
} from "@/lib/player/stature-for-age";

const [head, ...lines] = readFileSync(
	new URL("./cdc-stature-for-age.csv", import.meta.url),
	"utf8",
)
	.trim()
	.split(/\r?\n/)
	.map((line) => line.split(","));
const columns = head as string[];
const column = (line: string[], name: string) =>
	Number(line[columns.indexOf(name)]);

/** Standard normal quantiles, from memory of printed tables; checked below against normalCdf. */
const QUANTILES: Readonly<Record<string, number>> = {
	P3: -1.880793608151251,
	P5: -1.6448536269514722,
	P10: -1.2815515655446004,
	P25: -0.6744897501960817,
	P50: 0,
	P75: 0.6744897501960817,
	P90: 1.2815515655446004,
	P95: 1.6448536269514722,
	P97: 1.880793608151251,
};

test("all rows and percentile columns, to 1e-5 cm", () => {
	expect(lines).toHaveLength(436);
	let worst = 0;
	for (const line of lines) {
		const sex = column(line, "Sex") === 1 ? "male" : "female";
		const lms = lmsAt(sex, column(line, "Agemos"));
		for (const [name, z] of Object.entries(QUANTILES)) {
			const printed = column(line, name);
			worst = Math.max(worst, Math.abs(statureAtZ(lms, z) / 10 - printed));
			expect(zScore(lms, 10 * printed)).toBeCloseTo(z, 5);
		}
	}
	expect(worst).toBeLessThan(1e-5);
});

test("normal distribution at the quantiles above, at the series' seam, and far out", () => {
	for (const [name, z] of Object.entries(QUANTILES))
		expect(normalCdf(z)).toBeCloseTo(Number(name.slice(1)) / 100, 12);
	expect(normalCdf(3 - 1e-12)).toBeCloseTo(normalCdf(3 + 1e-12), 13);
	// 1 − Φ(5) = 2.866515718791939e-7, printed tables, from memory.
	expect(normalCdf(-5) / 2.866515718791939e-7).toBeCloseTo(1, 10);
});

describe("exact whole ages by linear interpolation of L, M and S", () => {
	// Computed elsewhere from the same table, cm, two decimals.
	test.each([
		["male", 8, 118.58, 127.88, 137.55],
		["male", 12, 137.1, 149.05, 161.58],
		["male", 16, 160.65, 173.51, 185.37],
		["female", 10, 127.27, 137.99, 149.35],
		["female", 14, 149.56, 160.39, 171.24],
		["female", 20, 152.65, 163.34, 173.95],
	] as const)("%s %i y", (sex, years, p5, p50, p95) => {
		const lms = lmsAt(sex, 12 * years);
		expect(statureAtZ(lms, QUANTILES.P5 as number) / 10).toBeCloseTo(p5, 2);
		expect(statureAtZ(lms, 0) / 10).toBeCloseTo(p50, 2);
		expect(statureAtZ(lms, QUANTILES.P95 as number) / 10).toBeCloseTo(p95, 2);
	});
});

test("percentile of a stature; both sexes' where sex is not given", () => {
	const boy = must(
		staturePercentiles({ ageYears: 12, statureMm: 1490.5, sex: "male" }),
	);
	expect(boy[0]?.percentile).toBeCloseTo(50, 0);
	const either = must(staturePercentiles({ ageYears: 12, statureMm: 1490.5 }));
	expect(either.map((p) => p.sex)).toEqual(["female", "male"]);
});
