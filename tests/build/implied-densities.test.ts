import { describe, expect, it } from "vitest";
import { planAddedWeight } from "@/lib/build/added-weight";
import { billetDensity } from "@/lib/build/billet";
import { impliedDensities } from "@/lib/build/implied-densities";
import { weighCue } from "@/lib/cue/mass";
import { must } from "@/lib/numerics/outcome";
import { normals, seeded } from "../cue/support/random";
import { cue58 } from "../support/designs";

/** What a real cue of these densities would read, before any error of reading. */
const readingsOf = (shaft: number, butt: number) => {
	const mass = weighCue(
		cue58({
			densities: {
				"white-ash": { kgM3: shaft, sd: 0 },
				"gaboon-ebony": { kgM3: butt, sd: 0 },
			},
		}),
	);
	return {
		massG: { value: mass.massG.value },
		balanceFromButtMm: { value: mass.balanceFromButtMm.value },
	};
};

describe("impliedDensities", () => {
	it.each([
		[672, 955],
		[610, 1040],
		[740, 880],
		[700, 1090],
	])(
		"finds ash %i and ebony %i within two of its own spreads",
		(shaft, butt) => {
			const implied = must(
				impliedDensities({ design: cue58(), ...readingsOf(shaft, butt) }),
			);
			const of = (wood: string) => {
				const one = implied.woods.find((each) => each.wood === wood);
				if (!one) throw new Error(`no ${wood}`);
				return one.impliedKgM3;
			};
			const ash = of("white-ash");
			const ebony = of("gaboon-ebony");
			expect(Math.abs(ash.value - shaft)).toBeLessThan(2 * ash.sd);
			expect(Math.abs(ebony.value - butt)).toBeLessThan(2 * ebony.sd);
			expect(ash.sd).toBeLessThan(25);
			expect(ebony.sd).toBeLessThan(30);
			expect(implied.correlation).toBeLessThan(0);
		},
	);

	it("gives a design that weighs and balances as read", () => {
		const readings = readingsOf(705, 1030);
		const implied = must(impliedDensities({ design: cue58(), ...readings }));
		expect(Math.abs(implied.massG - readings.massG.value)).toBeLessThan(1);
		expect(
			Math.abs(implied.balanceFromButtMm - readings.balanceFromButtMm.value),
		).toBeLessThan(1);
		const again = weighCue(cue58({ densities: implied.densities }));
		expect(again.massG.value).toBeCloseTo(implied.massG, 9);
		expect(again.massG.standing).toBe("measured");
	});

	it("covers the truth in nine of ten seeded cues", () => {
		const normal = normals(seeded(11));
		let inside = 0;
		const count = 200;
		for (let i = 0; i < count; i++) {
			const shaft = 672 + 67.2 * normal();
			const butt = 955 + 95.5 * normal();
			const exact = readingsOf(shaft, butt);
			const outcome = impliedDensities({
				design: cue58(),
				massG: {
					value: exact.massG.value * (1 + 0.005 * normal()) + 0.5 * normal(),
				},
				balanceFromButtMm: {
					value: exact.balanceFromButtMm.value + 2.5 * normal(),
				},
			});
			if (!outcome.ok) continue;
			const ebony = outcome.value.woods.find(
				(one) => one.wood === "gaboon-ebony",
			)?.impliedKgM3;
			if (ebony && Math.abs(ebony.value - butt) < 1.645 * ebony.sd) inside++;
		}
		// Binomial with p 0.9 and n 200: SD 0.021.
		expect(inside / count).toBeGreaterThan(0.82);
		expect(inside / count).toBeLessThan(0.97);
	});

	it("takes added metal of a known place into account", () => {
		const plan = must(planAddedWeight({ design: cue58(), wantedMassG: 500 }));
		const mass = weighCue(plan.finished);
		const implied = must(
			impliedDensities({
				design: plan.finished,
				massG: { value: mass.massG.value },
				balanceFromButtMm: { value: mass.balanceFromButtMm.value },
			}),
		);
		for (const { beforeKgM3, impliedKgM3 } of implied.woods)
			expect(impliedKgM3.value).toBeCloseTo(beforeKgM3.value, 6);
	});

	it("refuses a cue that such woods do not make", () => {
		const outcome = impliedDensities({
			design: cue58(),
			massG: { value: 560 },
			balanceFromButtMm: { value: 445 },
		});
		expect(outcome.ok).toBe(false);
		if (outcome.ok) return;
		expect(outcome.refusals[0]).toMatchObject({
			code: "not-this-build",
			field: "massG",
			value: 560,
		});
		expect(outcome.refusals[0]?.facts?.expectedMassG).toBeCloseTo(368.4, 1);
	});

	it("knows one density where shaft and butt are one wood", () => {
		const design = cue58({ buttWood: "white-ash" });
		const mass = weighCue(design);
		const implied = must(
			impliedDensities({
				design,
				massG: { value: mass.massG.value + 10 },
				balanceFromButtMm: { value: mass.balanceFromButtMm.value },
			}),
		);
		expect(implied.woods).toHaveLength(1);
		expect(implied.correlation).toBeNull();
		expect(implied.woods[0]?.impliedKgM3.value).toBeGreaterThan(672);
	});
});

describe("billetDensity", () => {
	const billet = {
		massG: 1200,
		lengthMm: 1500,
		widthMm: 34,
		thicknessMm: 34,
		moisturePct: { value: 12, sd: 0.5 },
	};

	it("is mass over volume at 12 %", () => {
		const { kgM3, sd } = must(billetDensity(billet));
		expect(kgM3).toBeCloseTo(1.2 / (1.5 * 0.034 * 0.034), 9);
		expect(sd / kgM3).toBeGreaterThan(0.005);
		expect(sd / kgM3).toBeLessThan(0.02);
	});

	it("counts the same stick lighter at 12 % where it was weighed wet", () => {
		const wet = must(
			billetDensity({ ...billet, moisturePct: { value: 18, sd: 0.5 } }),
		);
		expect(wet.kgM3).toBeCloseTo(
			(must(billetDensity(billet)).kgM3 * 1.12) / 1.18,
			9,
		);
		expect(wet.sd).toBeGreaterThan(must(billetDensity(billet)).sd);
	});

	it("refuses a weight in the wrong unit", () => {
		const outcome = billetDensity({ ...billet, massG: 42 });
		expect(outcome.ok).toBe(false);
		if (outcome.ok) return;
		expect(outcome.refusals[0]).toMatchObject({
			field: "densityKgM3",
			min: 300,
			max: 1500,
		});
	});

	it("feeds a design", () => {
		const density = must(billetDensity(billet));
		const mass = weighCue(cue58({ densities: { "white-ash": density } }));
		expect(
			mass.materials.find((one) => one.material === "white-ash")?.densityKgM3
				.value,
		).toBe(density.kgM3);
	});
});
