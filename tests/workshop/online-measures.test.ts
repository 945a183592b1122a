import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { must } from "@/lib/numerics/outcome";
import { suggestionsFrom } from "@/lib/workshop/online-measures";
import { INVENTED_OFFER } from "./support/online";

const from = (measures: Parameters<typeof suggestionsFrom>[0]) =>
	Object.fromEntries(
		must(suggestionsFrom(measures, "snooker", INVENTED_OFFER)).map(
			({ field, figure }) => [field, figure],
		),
	);

describe("measures at home", () => {
	test("say nothing where nothing was measured", () => {
		expect(from({})).toEqual({});
	});

	test("speak only to what they bear on", () => {
		expect(Object.keys(from({ statureMm: 1750 }))).toEqual(["lengthMm"]);
		expect(Object.keys(from({ handLengthMm: 185 }))).toEqual([
			"buttDiameterMm",
		]);
		expect(Object.keys(from({ presentTipMm: 9.5, presentMassG: 520 }))).toEqual(
			["tipDiameterMm", "massG"],
		);
	});

	test("come to what a fitting with the same answers advises", () => {
		const advice = must(
			advise({
				player: { statureMm: 1690, handLengthMm: 178 },
				stance: { gameId: "snooker" },
				presentCue: { lengthMm: 1448, tipDiameterMm: 10 },
				wishes: {},
				workshop: INVENTED_OFFER.workshop,
			}),
		);
		expect(
			from({
				statureMm: 1690,
				handLengthMm: 178,
				presentLengthMm: 1448,
				presentTipMm: 10,
			}),
		).toEqual({
			lengthMm: advice.length,
			buttDiameterMm: advice.butt.figure,
			tipDiameterMm: advice.tip,
		});
	});

	test("of a shorter person point to a shorter cue, of a larger hand to a thicker butt", () => {
		expect(from({ statureMm: 1500 }).lengthMm?.value).toBeLessThan(
			from({ statureMm: 1900 }).lengthMm?.value ?? 0,
		);
		expect(from({ handLengthMm: 165 }).buttDiameterMm?.exact).toBeLessThan(
			from({ handLengthMm: 205 }).buttDiameterMm?.exact ?? 0,
		);
	});
});
