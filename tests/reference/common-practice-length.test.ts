/**
 * Usual cue lengths against stature. Common practice, no source (from memory of the trade): adults
 * 57–58 in, tall players 59 in and over, juniors 36–54 in. This is what the stance's assumptions were
 * set by, so it shows the calibration's error rather than proves the model.
 * Seen for snooker: every preferred length inside its range; root mean square distance from the middle
 * of the ranges 0.6 in.
 */
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { CALIBRATION } from "@/lib/stance/assumptions";
import { reachFrom } from "@/lib/stance/reach";

const lengthIn = (
	p: { statureMm: number; ageYears?: number },
	gameId: GameId = "snooker",
) =>
	must(reachFrom({ body: must(bodyFrom(p)), answers: { gameId } })).lengthMm
		.value / 25.4;

describe("snooker, from 1.95 m to 1.10 m", () => {
	test.each(CALIBRATION)("$statureMm mm: $usualIn in", (row) => {
		const preferred = lengthIn(row);
		expect(preferred).toBeGreaterThanOrEqual(row.usualIn[0]);
		expect(preferred).toBeLessThanOrEqual(row.usualIn[1]);
	});

	test("the calibration's error, root mean square from the middle of the ranges", () => {
		const errors = CALIBRATION.map(
			(row) => lengthIn(row) - (row.usualIn[0] + row.usualIn[1]) / 2,
		);
		const rms = Math.sqrt(
			errors.reduce((sum, e) => sum + e * e, 0) / errors.length,
		);
		expect(rms).toBeLessThan(0.8);
	});

	test("named anchors: 1.75 m 57–58 in, 1.95 m at least 58.5 in, 1.25 m at most 48 in", () => {
		expect(lengthIn({ statureMm: 1750 })).toBeGreaterThan(57);
		expect(lengthIn({ statureMm: 1750 })).toBeLessThan(58);
		expect(lengthIn({ statureMm: 1950 })).toBeGreaterThan(58.5);
		expect(lengthIn({ statureMm: 1250 })).toBeLessThan(48);
	});
});

test.each(Object.keys(GAMES) as GameId[])(
	"%s: an adult of 1.75 m is within an inch of the game's usual lengths",
	(gameId) => {
		const [low, high] = GAMES[gameId].usual.lengthMm;
		const preferred =
			25.4 * lengthIn({ statureMm: 1750, ageYears: 30 }, gameId);
		expect(preferred).toBeGreaterThan(low - 25.4);
		expect(preferred).toBeLessThan(high + 25.4);
	},
);

test("the usual adult cue lies in the window of every adult from 1.60 to 1.90 m", () => {
	for (let statureMm = 1600; statureMm <= 1900; statureMm += 25) {
		const { lengthWindowMm } = must(
			reachFrom({
				body: must(bodyFrom({ statureMm, ageYears: 30 })),
				answers: { gameId: "snooker" },
			}),
		);
		expect(lengthWindowMm.low).toBeLessThan(57.5 * 25.4);
		expect(lengthWindowMm.high).toBeGreaterThan(57.5 * 25.4);
	}
});
