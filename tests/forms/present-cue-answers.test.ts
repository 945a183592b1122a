import { describe, expect, test } from "vitest";
import { readAnswers } from "@/lib/forms/answers";
import {
	filledFrom,
	presentCueAnswers,
	withPresentCue,
} from "@/lib/forms/present-cue-answers";
import { asBuiltCue } from "@/lib/workshop/player-cue";
import { askedContent } from "../workshop/support/jobs";

const { build } = askedContent();
const at300 = build.stations.find(
	({ fromButtMm }) => Math.abs(fromButtMm - 300) < 0.1,
);
if (at300 === undefined) throw new Error("the sheet has 300 mm");
const cue = asBuiltCue({
	build,
	readings: {
		massG: 551.23,
		lengthMm: 1474.6,
		stations: [{ stationMm: at300.stationMm, diameterMm: 25.37 }],
	},
});

describe("a cue as built", () => {
	test("has what was read, and else what it was made to", () => {
		expect(cue).toMatchObject({
			origin: "as-built",
			massG: 551.23,
			lengthMm: 1474.6,
			diameterAt300Mm: 25.37,
			tipDiameterMm: 9.5,
			shaftWood: "white-ash",
			splice: "hand-four-point",
			measured: ["lengthMm", "massG", "diameterAt300Mm"],
		});
		const at700 = build.stations.find(
			({ fromButtMm }) => Math.abs(fromButtMm - 700) < 0.1,
		);
		expect(cue.diameterAt700Mm).toBeCloseTo(at700?.diameterMm ?? Number.NaN, 6);
	});

	test("is read back by a fitting as it was written, to what a bench reads", () => {
		const { input, problems } = readAnswers(presentCueAnswers(cue), "trade");
		expect(problems).toEqual([]);
		expect(input.presentCue).toMatchObject({
			massG: 551.2,
			lengthMm: 1474.6,
			tipDiameterMm: 9.5,
			diameterAt300Mm: 25.37,
		});
	});

	test("takes the place of the cue an earlier fitting was about, with its likes", () => {
		const earlier = {
			stature: "178 cm",
			presentMass: "18 oz",
			presentDislikes: ["too-light"],
		};
		expect(withPresentCue(earlier, cue)).toEqual({
			stature: "178 cm",
			...presentCueAnswers(cue),
		});
	});

	test("a changed answer no longer counts as filled in", () => {
		const answers = withPresentCue({}, cue);
		const all = filledFrom(answers, cue);
		expect(all).toHaveLength(7);
		expect(all.find(({ figure }) => figure === "massG")?.isMeasured).toBe(true);
		expect(
			all.find(({ figure }) => figure === "tipDiameterMm")?.isMeasured,
		).toBe(false);
		expect(
			filledFrom({ ...answers, presentMass: "19 oz" }, cue).map(
				({ field }) => field,
			),
		).not.toContain("presentMass");
	});
});
