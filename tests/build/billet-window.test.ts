import { describe, expect, test } from "vitest";
import { planAddedWeight } from "@/lib/build/added-weight";
import { type BilletPick, billetPicks } from "@/lib/build/billet-window";
import { FINISHED_TOLERANCE } from "@/lib/build/tolerance";
import { weighCue } from "@/lib/cue/mass";
import { cue } from "../support/designs";

const design = cue();
const natural = weighCue(design);

const picks = (massG: number, balanceFromButtMm: number) =>
	billetPicks({ design, wanted: { massG, balanceFromButtMm }, metal: "brass" });
const windowOf = (found: readonly BilletPick[], use: BilletPick["use"]) => {
	const window = found.find((one) => one.use === use)?.window;
	if (!window) throw new Error(`no window for the ${use}`);
	return window;
};

/** Whether the full search for a placement comes within tolerance of weight and balance. */
function isPlanned(
	wood: "white-ash" | "gaboon-ebony",
	kgM3: number,
	wanted: { massG: number; balanceFromButtMm: number },
): boolean {
	const { massG: slackG, balanceMm: slackMm } = FINISHED_TOLERANCE;
	return [-slackG, 0, slackG].some((offG) => {
		const plan = planAddedWeight({
			design: { ...design, densities: { [wood]: { kgM3, sd: 0 } } },
			wantedMassG: wanted.massG + offG,
			wantedBalanceFromButtMm: wanted.balanceFromButtMm,
		});
		if (plan.ok) return true;
		return plan.refusals.some(
			({ code, min = Number.NaN, max = Number.NaN }) =>
				code === "balance-out-of-reach" &&
				min - slackMm <= wanted.balanceFromButtMm &&
				max + slackMm >= wanted.balanceFromButtMm,
		);
	});
}

describe("the densities a weight and balance can be had with", () => {
	test("the shaft's lower bound is where the full plan stops reaching the balance", () => {
		// Far enough forward for so much metal that a light shaft does not reach it.
		const wanted = { massG: 545, balanceFromButtMm: 381 };
		const { lowKgM3 } = windowOf(
			picks(wanted.massG, wanted.balanceFromButtMm),
			"shaft",
		);
		if (lowKgM3 === null) throw new Error("a light shaft is refused");
		expect(lowKgM3).toBeLessThan(672);
		expect(isPlanned("white-ash", lowKgM3, wanted)).toBe(true);
		expect(isPlanned("white-ash", lowKgM3 - 40, wanted)).toBe(false);
	});

	test("the upper bound is where the wood alone is as heavy as allowed: linear in its density", () => {
		const massG = natural.massG.value + 2;
		const { highKgM3 } = windowOf(
			picks(massG, natural.balanceFromButtMm.value),
			"butt",
		);
		const ebonyG = natural.parts
			.filter(({ material }) => material === "gaboon-ebony")
			.reduce((sum, part) => sum + part.massG.value, 0);
		const closedForm = 955 * (1 + (2 + FINISHED_TOLERANCE.massG) / ebonyG);
		// Found by bisection to 5 kg/m³, from below; the balance does not bind before.
		expect(highKgM3).toBeLessThanOrEqual(closedForm);
		expect(highKgM3).toBeGreaterThan(closedForm - 5);
	});

	test("a metal plan already in the design changes nothing", () => {
		const plan = planAddedWeight({ design, wantedMassG: 520 });
		if (!plan.ok) throw new Error("the usual cue has a plan");
		const wanted = { massG: 520, balanceFromButtMm: 400 };
		expect(
			billetPicks({ design: plan.value.finished, wanted, metal: "brass" }),
		).toEqual(billetPicks({ design, wanted, metal: "brass" }));
	});

	test("decoration is picked by eye, after shaft and butt", () => {
		const rich = cue({
			splicing: { frontWedge: { wood: "snakewood" } },
		});
		const found = billetPicks({
			design: rich,
			wanted: { massG: 540, balanceFromButtMm: 390 },
			metal: "brass",
		});
		expect(found.map(({ wood, use }) => [wood, use])).toEqual([
			["white-ash", "shaft"],
			["gaboon-ebony", "butt"],
			["snakewood", "decoration"],
		]);
		expect(found[2]?.window).toBeNull();
	});

	test("the workshop's own billets are what the rest is held at", () => {
		const weighed = cue({
			densities: { "white-ash": { kgM3: 735, sd: 8 } },
		});
		const [shaft] = billetPicks({
			design: weighed,
			wanted: { massG: 540, balanceFromButtMm: 390 },
			metal: "brass",
		});
		expect(shaft?.densityKgM3).toMatchObject({
			value: 735,
			sd: 8,
			standing: "measured",
		});
	});
});
