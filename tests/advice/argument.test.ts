import { describe, expect, test } from "vitest";
import { mostGained } from "@/lib/advice/against";
import type { Argued } from "@/lib/advice/argument";
import { AT, CRITERION_COUNT } from "@/lib/advice/criteria";
import { desirability } from "@/lib/advice/desirability";
import type { FittingInput } from "@/lib/advice/input";
import { CITATIONS } from "@/lib/reference/citations";
import { inchesToMm } from "@/lib/units/quantity";
import { withStature } from "../support/inputs";
import { prepared, searched } from "./support";

const argued = (
	input: FittingInput,
	choice: Argued["choice"],
	options = {},
): Argued => {
	const found = searched(input, {
		optionCount: 1,
		...options,
	}).report.arguments.find((one) => one.choice === choice);
	if (!found) throw new Error(choice);
	return found;
};

describe("reasons and counter-arguments", () => {
	const { report } = searched(withStature(1750), { optionCount: 1 });
	const [option] = report.options;
	if (!option) throw new Error("no option");

	test("every figure and choice has one for the player and one for the bench", () => {
		expect(report.arguments.map(({ choice }) => choice)).toEqual([
			"length",
			"mass",
			"butt",
			"tip",
			"balance",
			"butt-wood",
			"splice",
			"layout",
			"taper",
		]);
		for (const { forPlayer, forBench } of report.arguments) {
			expect(forPlayer.code).not.toBe("");
			expect(forPlayer.sources.length).toBeGreaterThan(0);
			for (const source of forPlayer.sources)
				expect(source in CITATIONS).toBe(true);
			expect(Object.keys(forBench).length).toBeGreaterThan(0);
		}
	});
	test("speak of the cue that is recommended", () => {
		const value = (choice: Argued["choice"]) =>
			report.arguments.find((one) => one.choice === choice)?.value;
		expect(value("length")).toBe(option.request.lengthMm);
		expect(value("butt")).toBe(option.request.buttDiameterMm);
		expect(value("tip")).toBe(option.request.tipDiameterMm);
		expect(value("butt-wood")).toBe(option.request.buttWood);
		expect(value("mass")).toBeCloseTo(option.results.weight.value, 4);
	});
	test("a criterion against would indeed gain, and the cue as a whole not", () => {
		let seen = 0;
		for (const { against } of report.arguments) {
			if (against?.kind !== "criterion") continue;
			seen++;
			expect(against.to).toBeGreaterThan(against.from);
			expect(against.strength).toBeGreaterThan(0);
			expect(against.overallCost).toBeGreaterThan(-0.01);
		}
		expect(seen).toBeGreaterThan(2);
	});
});

test("evidence that pulls hard the other way is the argument against", () => {
	const stuck = argued(
		withStature(1750, {
			presentCue: { lengthMm: inchesToMm(61), likes: ["length"] },
		}),
		"length",
	);
	expect(stuck.forPlayer.code).toBe("present-liked");
	expect(stuck.against).toMatchObject({ kind: "evidence" });
	if (stuck.against?.kind !== "evidence") throw new Error("no evidence");
	expect(["usual-length", "reach"]).toContain(stuck.against.code);
	expect(stuck.against.value).toBeLessThan(inchesToMm(61));
});

test("a wish against body and trade has that against it", () => {
	const wished = argued(
		withStature(1750, { wishes: { lengthMm: inchesToMm(62) } }),
		"length",
	);
	expect(wished.forPlayer).toMatchObject({ code: "wish", basis: "wish" });
	expect(wished.against).toMatchObject({ kind: "evidence" });
});

test("a wished wood's reason is the wish", () => {
	expect(
		argued(
			withStature(1750, { wishes: { buttWood: "gaboon-ebony" } }),
			"butt-wood",
		),
	).toMatchObject({ forPlayer: { code: "wish" }, against: null });
});

test("a costlier splice chosen for looks has the price against it", () => {
	const splice = argued(withStature(1750), "splice", {
		weights: { finish: 6, price: 0.5 },
	});
	expect(splice.value).toBe("hand-four-point");
	expect(splice.forPlayer.code).toBe("better-finish");
	expect(splice.against).toMatchObject({ kind: "criterion" });
	if (splice.against?.kind !== "criterion") throw new Error("no criterion");
	expect(["price", "build", "stiffness"]).toContain(splice.against.criterion);
});

// Worked by hand: weights and desirabilities give w·(ln d′ − ln d)/Σw.
test("the criterion that gains most is weighed by its weight", () => {
	const { compiled, criteria } = prepared(withStature(1750));
	const ideal = criteria.map(({ shape }) =>
		shape.low && shape.high
			? (shape.low.ideal + shape.high.ideal) / 2
			: (shape.low?.ideal ?? shape.high?.ideal ?? 0),
	);
	expect(ideal).toHaveLength(CRITERION_COUNT);
	const halfway = (id: "tip" | "finish") => {
		const { low } = criteria[AT[id]]?.shape ?? {};
		if (!low) throw new Error(id);
		return (low.ideal + low.limit) / 2;
	};
	const from = ideal
		.with(AT.tip, halfway("tip"))
		.with(AT.finish, halfway("finish"));
	const gain = mostGained(compiled, from, ideal);
	expect(gain?.criterion).toBe("tip");
	const shape = criteria[AT.tip]?.shape;
	if (!shape) throw new Error("no tip");
	expect(gain?.from).toBeCloseTo(desirability(shape, halfway("tip")), 12);
	expect(gain?.strength).toBeCloseTo(
		((compiled.weights[AT.tip] ?? 0) * Math.log(2)) / compiled.weightSum,
		9,
	);
	expect(mostGained(compiled, ideal, from)).toBeNull();
});
