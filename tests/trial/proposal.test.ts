import { describe, expect, test } from "vitest";
import { seededChance } from "@/lib/trial/chance";
import { choleskyFactor } from "@/lib/trial/dense";
import { logistic } from "@/lib/trial/logistic";
import { normalCdf, normalDensity } from "@/lib/trial/normal";
import {
	beliefsFrom,
	preferenceFrom,
	type SessionTally,
} from "@/lib/trial/preference";
import { gainOfChoice, proposePairs } from "@/lib/trial/proposal";
import { RACK, rackCue } from "./support/rack";

const propose = (rack = RACK, sessions: readonly SessionTally[] = []) => {
	const preference = preferenceFrom({
		rack,
		sessions,
		before: beliefsFrom(rack, {}),
	});
	return { preference, pairs: proposePairs({ rack, sessions, preference }) };
};
const sessionOf = (
	one: string,
	other: string,
	hits: readonly [number, number],
	shots = 40,
): SessionTally => ({
	tallies: [
		{ cueId: one, hits: hits[0], shots },
		{ cueId: other, hits: hits[1], shots },
	],
});

describe("the gain of a choice", () => {
	test("two options: σ [φ(z) − z Φ(−z)] with z the lead over σ (closed form)", () => {
		for (const [lead, spread] of [
			[0, 1],
			[0.4, 1.3],
			[2, 0.7],
		] as const) {
			const z = lead / spread;
			expect(gainOfChoice([lead, 0], [0, spread])).toBeCloseTo(
				spread * (normalDensity(z) - z * normalCdf(-z)),
				12,
			);
		}
	});
	test("several options: a fine sum over Z, residual below 1e-6", () => {
		const chance = seededChance(3);
		for (let run = 0; run < 40; run++) {
			const size = 2 + Math.floor(chance() * 7);
			const means = Array.from({ length: size }, () => chance() * 2 - 1);
			const moves = Array.from({ length: size }, () => chance() * 4 - 2);
			let sum = 0;
			const step = 0.001;
			for (let z = -8; z <= 8; z += step)
				sum +=
					step *
					normalDensity(z) *
					Math.max(...means.map((mean, i) => mean + (moves[i] ?? 0) * z));
			expect(
				Math.abs(gainOfChoice(means, moves) - (sum - Math.max(...means))),
			).toBeLessThan(1e-6);
		}
	});
	test("nothing that moves all alike helps to choose", () => {
		expect(gainOfChoice([0.3, 0.1, 0], [0.7, 0.7, 0.7])).toBe(0);
		expect(gainOfChoice([1], [2])).toBe(0);
	});
});

describe("the pair that teaches most", () => {
	test("on a fresh rack differs, and identical cues come last", () => {
		const rack = [...RACK, rackCue("twin")];
		const { pairs } = propose(rack);
		expect(pairs).toHaveLength(15);
		expect(pairs[0]?.cueIds).toEqual(["light", "heavy"]);
		expect(pairs.at(-1)?.cueIds).toEqual(["middle", "twin"]);
		expect(pairs.at(-1)?.differsBy).toEqual({});
		expect(pairs[0]?.differsBy).toEqual({ massG: -100 });
	});
	test("once weight is settled another figure comes first", () => {
		const { pairs } = propose(RACK, [
			sessionOf("light", "heavy", [66, 50], 80),
			sessionOf("light", "middle", [64, 60], 80),
		]);
		const [best] = pairs;
		expect(Object.keys(best?.differsBy ?? {})).not.toEqual(["massG"]);
		const again = pairs.find(({ cueIds }) => cueIds.join() === "light,heavy");
		expect(again?.expectedGain).toBeLessThan(best?.expectedGain ?? 0);
		expect(again?.shotsSoFar).toEqual([160, 80]);
	});
	test("gains fall from first to last", () => {
		const gains = propose().pairs.map(({ expectedGain }) => expectedGain);
		expect([...gains].sort((a, b) => b - a)).toEqual(gains);
	});

	/** ½ log₂ of how much the volume of the rack's covariance shrinks, by its full matrices. */
	test("its information is the fall in entropy of the whole rack", () => {
		const sessions = [sessionOf("middle", "long", [25, 22])];
		const { preference, pairs } = propose(RACK, sessions);
		const logDeterminant = (matrix: readonly Float64Array[]) =>
			choleskyFactor(matrix).reduce(
				(sum, row, i) => sum + 2 * Math.log(row[i] ?? Number.NaN),
				0,
			);
		for (const { cueIds, informationBits, comparedAt } of pairs) {
			const [i, j] = cueIds.map((id) =>
				RACK.findIndex((cue) => cue.id === id),
			) as [number, number];
			const noise = [i, j].reduce((sum, k) => {
				const share = logistic(preference.session + (preference.means[k] ?? 0));
				return sum + 1 / (comparedAt * share * (1 - share));
			}, 0);
			const seen = preference.covariance.map(
				(row) => (row[i] ?? 0) - (row[j] ?? 0),
			);
			const between = (seen[i] ?? 0) - (seen[j] ?? 0);
			const after = preference.covariance.map((row, k) =>
				row.map(
					(value, m) =>
						value - ((seen[k] ?? 0) * (seen[m] ?? 0)) / (between + noise),
				),
			);
			expect(informationBits).toBeCloseTo(
				(logDeterminant(preference.covariance) - logDeterminant(after)) /
					(2 * Math.LN2),
				9,
			);
		}
	});
});

describe("how many shots", () => {
	test("half of the variance is gone after them, unless the session limits it", () => {
		for (const { doubtBefore, doubtAfter, limitedBy, shotsEach } of propose()
			.pairs) {
			const left = (doubtAfter / doubtBefore) ** 2;
			expect(shotsEach % 10).toBe(0);
			if (limitedBy === "most") expect(left).toBeGreaterThan(0.5);
			else expect(left).toBeLessThanOrEqual(0.5);
		}
	});
	test("more are asked for as less doubt is left, up to what a session holds", () => {
		const asked = [0, 40, 160, 2000].map((shots) => {
			const sessions =
				shots === 0
					? []
					: [sessionOf("light", "heavy", [shots * 0.6, shots * 0.6], shots)];
			return propose(RACK, sessions).pairs.find(
				({ cueIds }) => cueIds.join() === "light,heavy",
			);
		});
		const counts = asked.map((pair) => pair?.shotsEach ?? 0);
		expect([...counts].sort((a, b) => a - b)).toEqual(counts);
		expect(asked.at(-1)).toMatchObject({ shotsEach: 60, limitedBy: "most" });
	});
	test("the promise is kept: after those shots the variance is about half", () => {
		const rack = [
			rackCue("light", { massG: 485 }),
			rackCue("heavy", { massG: 545 }),
		];
		const { preference, pairs } = propose(rack);
		const [pair] = pairs;
		if (pair === undefined) throw new Error("no pair");
		const shots = pair.shotsEach;
		const share = logistic(preference.session + (preference.means[0] ?? 0));
		const after = propose(rack, [
			sessionOf("light", "heavy", [share * shots, share * shots], shots),
		]);
		expect(after.pairs[0]?.doubtBefore).toBeGreaterThan(0.9 * pair.doubtAfter);
		expect(after.pairs[0]?.doubtBefore).toBeLessThan(1.1 * pair.doubtAfter);
	});
});
