/**
 * The pose against a general-purpose optimiser: ml-levenberg-marquardt (npm) minimises the same
 * conditions, written out afresh below with rotation matrices from ml-matrix, over trunk inclination,
 * place of the shoulder line and span. Residuals seen: span within 8e-10 mm, trunk within 2e-11 deg,
 * the optimiser taking 10 to 80 times as long.
 */
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import type { StanceAnswers } from "@/lib/stance/answers";
import { standAt } from "@/lib/stance/stand";
import { conditions, optimise } from "../support/pose-optimiser";

const CASES: [string, object, Partial<StanceAnswers>][] = [
	["1.75 m, snooker", { statureMm: 1750 }, {}],
	[
		"1.95 m man, side-on, straight arm",
		{ statureMm: 1950, sex: "male" },
		{ stance: "side-on", bridgeArm: "straight" },
	],
	[
		"1.60 m woman, square, bent arm, glasses",
		{ statureMm: 1600, sex: "female" },
		{ stance: "square", bridgeArm: "bent", glasses: true },
	],
	["1.30 m child", { statureMm: 1300, ageYears: 9 }, {}],
	["carom, upright", { statureMm: 1700 }, { gameId: "carom" }],
	["seated", { statureMm: 1800 }, { seated: true }],
	["fitted to a measured span", { statureMm: 1780 }, { bridgeToGripMm: 1190 }],
];

describe("same pose", () => {
	test.each(CASES)("%s", (_name, measures, answers) => {
		const stand = must(
			standAt({
				body: must(bodyFrom(measures)),
				answers: { gameId: "snooker", ...answers },
			}),
		);
		const l = stand.linkage;
		const { girdle } = l.points;
		const solved = [l.theta, girdle.x, girdle.y, girdle.z, l.spanMm];
		for (const c of conditions(stand, solved))
			expect(Math.abs(c)).toBeLessThan(1e-9);

		const q = optimise(stand);
		expect(Math.abs((q[4] as number) - l.spanMm)).toBeLessThan(1e-7);
		expect(Math.abs((q[0] as number) - l.theta)).toBeLessThan(1e-9);
		for (const [i, v] of [girdle.x, girdle.y, girdle.z].entries())
			expect(Math.abs((q[i + 1] as number) - v)).toBeLessThan(1e-7);
	});
});
