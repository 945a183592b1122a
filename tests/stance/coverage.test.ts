/**
 * How often a 90 % band holds the truth, on people drawn by chance (seeded). Bodies: the survey's
 * whole-sample lines, which are not the ones the model uses. Stances: drawn from the assumptions, so
 * this proves the arithmetic of the band and not the assumptions.
 */
import { expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { band90, type Estimate } from "@/lib/reference/estimate";
import { SPAN_MODEL_SD_MM } from "@/lib/stance/assumptions";
import { figureFrom } from "@/lib/stance/figure";
import { type StyleValues, solveLinkage } from "@/lib/stance/linkage";
import { reachFrom } from "@/lib/stance/reach";
import { standAt } from "@/lib/stance/stand";

/** Uniform from a 32-bit mixing counter; normal by Box and Muller. */
function chance(seed: number) {
	let state = seed >>> 0;
	const uniform = () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
	const normal = () =>
		Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
	return { uniform, normal };
}

const holds = (e: Estimate, truth: number) => {
	const { low, high } = band90(e);
	return truth >= low && truth <= high ? 1 : 0;
};

/** Whole-sample lines: span on stature; then lengths on stature and span (a, b, c, sd). */
const LINES = {
	male: {
		stature: [1756.2, 68.6],
		span: [29.441, 1.01623, 48.06],
		shoulderToElbowMm: [-21.065, 0.08319, 0.13156, 8.38],
		elbowToGripMm: [-2.512, 0.02081, 0.17363, 8.49],
		handLengthMm: [19.224, 0.01073, 0.08555, 6.1],
		shoulderBreadthMm: [150.868, 0.01852, 0.12804, 15.02],
	},
	female: {
		stature: [1628.5, 64.2],
		span: [-63.592, 1.05859, 47.61],
		shoulderToElbowMm: [-16.56, 0.08677, 0.12622, 7.84],
		elbowToGripMm: [-0.939, -0.00426, 0.1961, 8.21],
		handLengthMm: [22.338, -0.00038, 0.09599, 6.17],
		shoulderBreadthMm: [111.042, 0.02427, 0.12936, 13.78],
	},
} as const;
const NAMES = [
	"shoulderToElbowMm",
	"elbowToGripMm",
	"handLengthMm",
	"shoulderBreadthMm",
] as const;

test.each([
	["stature", false, true],
	["stature and span", true, true],
	["stature, sex not said", false, false],
	["stature and span, sex not said", true, false],
] as const)(
	"body lengths from %s: between 86 and 94 in a hundred",
	(_name, withSpan, withSex) => {
		const { uniform, normal } = chance(4711);
		const people = 1500;
		const inside = {
			shoulderToElbowMm: 0,
			elbowToGripMm: 0,
			handLengthMm: 0,
			shoulderBreadthMm: 0,
		};
		for (let n = 0; n < people; n++) {
			const sex = uniform() < 0.5 ? "male" : "female";
			const line = LINES[sex];
			const statureMm = line.stature[0] + line.stature[1] * normal();
			const armSpanMm =
				line.span[0] + line.span[1] * statureMm + line.span[2] * normal();
			const body = must(
				bodyFrom({
					ageYears: 30,
					// As a tape would read them.
					statureMm: statureMm + 6 * normal(),
					...(withSpan ? { armSpanMm: armSpanMm + 10 * normal() } : {}),
					...(withSex ? { sex } : {}),
				}),
			);
			for (const name of NAMES) {
				const [a, b, c, sd] = line[name];
				inside[name] += holds(
					body[name],
					a + b * statureMm + c * armSpanMm + sd * normal(),
				);
			}
		}
		for (const name of NAMES) {
			expect(inside[name] / people).toBeGreaterThan(0.86);
			expect(inside[name] / people).toBeLessThan(0.945);
		}
	},
);

test.each([
	[1780, 30],
	[1620, 30],
	[1350, 10],
])("span at %i mm: between 85 and 95 in a hundred", (statureMm, ageYears) => {
	const { normal } = chance(42);
	const body = must(bodyFrom({ statureMm, ageYears }));
	const answers = { gameId: "snooker" } as const;
	const stand = must(standAt({ body, answers }));
	const predicted = must(reachFrom({ body, answers })).predictedSpanMm;
	const root = choleskyOf(body.covarianceMm2);
	const people = 1500;
	let inside = 0;
	let counted = 0;
	for (let n = 0; n < people; n++) {
		const draw = root.map(() => normal());
		const lengths = stand.lengths.map(
			(v, i) =>
				v +
				(root[i] as number[]).reduce(
					(sum, c, j) => sum + c * (draw[j] as number),
					0,
				),
		);
		const style = Object.fromEntries(
			Object.entries(stand.style).map(([name, s]) => [
				name,
				s.value + s.sd * normal(),
			]),
		) as unknown as StyleValues;
		const l = solveLinkage(figureFrom(lengths), style, stand.at);
		if (l.armLiftRatio > 1 || l.bridgeReachRatio > 1) continue;
		counted++;
		inside += holds(predicted, l.spanMm + SPAN_MODEL_SD_MM * normal());
	}
	expect(counted / people).toBeGreaterThan(0.97);
	expect(inside / counted).toBeGreaterThan(0.85);
	expect(inside / counted).toBeLessThan(0.95);
});

/** Lower root of a covariance by Cholesky; a tiny ridge keeps lengths known exactly. */
function choleskyOf(matrix: readonly (readonly number[])[]): number[][] {
	const root = matrix.map((row) => row.map(() => 0));
	for (const [i, row] of matrix.entries())
		for (let j = 0; j <= i; j++) {
			let sum = (row[j] as number) + (i === j ? 1e-9 : 0);
			for (let k = 0; k < j; k++)
				sum -= (root[i]?.[k] as number) * (root[j]?.[k] as number);
			(root[i] as number[])[j] =
				i === j ? Math.sqrt(sum) : sum / (root[j]?.[j] as number);
		}
	return root;
}
