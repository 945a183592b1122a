import { describe, expect, test } from "vitest";
import { benchSteps, waitingDays } from "@/lib/workshop/bench-steps";
import { askedContent } from "./support/jobs";

const stepsOf = (...wish: Parameters<typeof askedContent>) =>
	benchSteps(askedContent(...wish).build);
const ids = (...wish: Parameters<typeof askedContent>) =>
	stepsOf(...wish).map(({ id }) => id);

describe("the order of the work", () => {
	test("a plain cue in one piece is neither spliced nor jointed; its tenon is glued", () => {
		const plain = ids({ splice: "plain", layout: "one-piece" });
		expect(plain).toContain("glue-tenon");
		for (const id of ["plane-first-pair", "joint", "cut-machine-points"])
			expect(plain).not.toContain(id);
	});

	test("four points by hand are two pairs, the second across the first", () => {
		const steps = stepsOf();
		expect(steps.map(({ id }) => id).slice(2, 6)).toEqual([
			"plane-first-pair",
			"glue-first-pair",
			"plane-next-pair",
			"glue-next-pair",
		]);
		expect(steps.find(({ id }) => id === "glue-next-pair")?.times).toBe(1);
	});

	test("machine-cut points are pressed in from the end", () => {
		const steps = ids({ splice: "machine-four-point", layout: "one-piece" });
		expect(steps).toContain("glue-machine-points");
		expect(steps).not.toContain("plane-first-pair");
	});

	test("nothing is bored for a cue that asks for no metal", () => {
		const { build } = askedContent();
		const none = benchSteps({
			...build,
			addedWeight: {
				...build.addedWeight,
				slugLengthMm: 0,
				jointSlug: null,
			},
		}).map(({ id }) => id);
		for (const id of ["bore", "glue-slug", "glue-joint-slug"])
			expect(none).not.toContain(id);
	});

	test("it ends with the check, weighing before boring, and size before the ferrule", () => {
		const steps = ids();
		expect(steps.at(-1)).toBe("check");
		expect(steps.indexOf("weigh")).toBeLessThan(steps.indexOf("bore"));
		expect(steps.indexOf("turn-to-size")).toBeLessThan(
			steps.indexOf("ferrule"),
		);
	});
});

test("the waiting adds up, as often as a step is done", () => {
	expect(
		waitingDays([
			{ id: "oil", times: 3, waitHours: [24, 36] },
			{ id: "tip", times: 1, waitHours: [12, 24] },
			{ id: "check", times: 1, waitHours: null },
		]),
	).toEqual([3.5, 5.5]);
});
