import { describe, expect, test } from "vitest";
import { Z90 } from "@/lib/reference/estimate";
import {
	CUE_SD_LOG_ODDS,
	FALL_OFF,
	SESSION_SD_LOG_ODDS,
} from "@/lib/trial/assumptions";
import { type Chance, seededChance } from "@/lib/trial/chance";
import { logistic } from "@/lib/trial/logistic";
import {
	beliefsFrom,
	preferenceFrom,
	type RackCue,
	type SessionTally,
} from "@/lib/trial/preference";
import { RACK, rackCue } from "./support/rack";

const BEFORE = beliefsFrom(RACK, {});

const session = (
	tallies: Readonly<Record<string, readonly [hits: number, shots: number]>>,
): SessionTally => ({
	tallies: Object.entries(tallies).map(([cueId, [hits, shots]]) => ({
		cueId,
		hits,
		shots,
	})),
});

describe("before any shot", () => {
	test("the best figures are the average of the rack, or what the advice holds", () => {
		const before = beliefsFrom(RACK, { massG: { value: 500, sd: 25 } });
		expect(before.massG).toEqual({ value: 500, sd: 25, from: "advice" });
		expect(before.lengthMm).toEqual({
			value: 1472,
			sd: FALL_OFF.lengthMm,
			from: "rack",
		});
		const { best } = preferenceFrom({ rack: RACK, sessions: [], before });
		expect(best.massG.value).toBeCloseTo(500, 9);
		expect(best.massG.sd).toBeCloseTo(25, 9);
	});
	test("a cue nearer to them is expected to pot more", () => {
		const before = beliefsFrom(RACK, { massG: { value: 460, sd: 10 } });
		const { means } = preferenceFrom({ rack: RACK, sessions: [], before });
		const [light = 0, middle = 0, heavy = 0] = means;
		expect(light).toBeGreaterThan(middle);
		expect(middle).toBeGreaterThan(heavy);
		// ½ (Δ/w)² by hand, for a difference of 105 and 5 g from the believed best.
		expect(light - heavy).toBeCloseTo(
			0.5 * ((105 / FALL_OFF.massG) ** 2 - (5 / FALL_OFF.massG) ** 2),
			9,
		);
	});
});

describe("what shots teach", () => {
	test("pots with the lighter cue make a lighter cue look best, and no other figure moves", () => {
		const { best } = preferenceFrom({
			rack: RACK,
			sessions: [session({ light: [34, 40], heavy: [20, 40] })],
			before: BEFORE,
		});
		expect(best.massG.value).toBeLessThan(BEFORE.massG.value - 10);
		expect(best.massG.sd).toBeLessThan(BEFORE.massG.sd);
		for (const field of [
			"lengthMm",
			"buttDiameterMm",
			"tipDiameterMm",
		] as const)
			expect(Math.abs(best[field].value - BEFORE[field].value)).toBeLessThan(
				0.01 * BEFORE[field].sd,
			);
	});
	test("equal pots narrow the doubt and leave the middle", () => {
		const { best } = preferenceFrom({
			rack: RACK,
			sessions: [session({ light: [25, 40], heavy: [25, 40] })],
			before: BEFORE,
		});
		expect(best.massG.value).toBeCloseTo(515, 6);
		expect(best.massG.sd).toBeLessThan(0.8 * BEFORE.massG.sd);
	});
	test("a cue differing in two figures shares what is learned between them", () => {
		const rack = [
			rackCue("small", { massG: 485, lengthMm: 1430 }),
			rackCue("large", { massG: 545, lengthMm: 1490 }),
		];
		const { best } = preferenceFrom({
			rack,
			sessions: [session({ small: [18, 40], large: [32, 40] })],
			before: beliefsFrom(rack, {}),
		});
		expect(best.massG.value).toBeGreaterThan(516);
		expect(best.lengthMm.value).toBeGreaterThan(1461);
	});
	test("a hard day is no reason: the same differences at another level teach the same", () => {
		const at = (offset: number) =>
			preferenceFrom({
				rack: RACK,
				sessions: [
					session({
						light: [200 * logistic(0.4 + offset), 200],
						heavy: [200 * logistic(offset), 200],
					}),
				],
				before: BEFORE,
			}).best.massG.value;
		expect(Math.abs(at(0.7) - at(-0.7))).toBeLessThan(2);
	});
	test("identical cues teach nothing about any figure", () => {
		const rack = [rackCue("one"), rackCue("two")];
		const before = beliefsFrom(rack, {});
		const { best, means } = preferenceFrom({
			rack,
			sessions: [session({ one: [30, 40], two: [15, 40] })],
			before,
		});
		expect(best.massG.value).toBeCloseTo(before.massG.value, 9);
		expect(best.massG.sd).toBeCloseTo(before.massG.sd, 9);
		expect(means[0]).toBeGreaterThan(means[1] ?? 0);
	});
	test("the order of the rack changes nothing", () => {
		const sessions = [session({ light: [12, 20], long: [15, 20] })];
		const one = preferenceFrom({ rack: RACK, sessions, before: BEFORE });
		const other = preferenceFrom({
			rack: [...RACK].reverse(),
			sessions,
			before: BEFORE,
		});
		for (const [i, mean] of one.means.entries())
			expect(other.means[RACK.length - 1 - i]).toBeCloseTo(mean, 9);
		expect(other.best.massG.value).toBeCloseTo(one.best.massG.value, 8);
	});
	test("a cue that is not in the rack is refused", () => {
		expect(() =>
			preferenceFrom({
				rack: RACK,
				sessions: [session({ stray: [1, 2] })],
				before: BEFORE,
			}),
		).toThrow(/no cue stray/);
	});
});

/**
 * The normal approximation against the posterior itself on a grid: two cues that differ in weight,
 * one session. Given the two log-odds the best weight is normal, so a grid over the log-odds is enough.
 */
test.each([
	[20, 0.1],
	[100, 0.05],
])(
	"with %i shots each the normal approximation is within %f standard deviations of the grid",
	(shots, tolerance) => {
		const rack = [
			rackCue("light", { massG: 475 }),
			rackCue("heavy", { massG: 555 }),
		];
		const before = beliefsFrom(rack, {});
		const tally = {
			light: [0.75 * shots, shots],
			heavy: [0.4 * shots, shots],
		} as const;
		const { best } = preferenceFrom({
			rack,
			sessions: [session(tally)],
			before,
		});

		const width = FALL_OFF.massG;
		const figure = 40 / width;
		// Log-odds: −½ξ² ∓ ξτ + u + e, with τ of unit prior variance in widths.
		const [sT, sU, sE] = [
			before.massG.sd / width,
			SESSION_SD_LOG_ODDS,
			CUE_SD_LOG_ODDS,
		];
		const own = (figure * sT) ** 2 + sU ** 2 + sE ** 2;
		const shared = sU ** 2 - (figure * sT) ** 2;
		const determinant = own ** 2 - shared ** 2;
		const centre = -0.5 * figure ** 2;
		const grid = Array.from({ length: 321 }, (_, i) => -4 + i * 0.025);
		let [total, first, second] = [0, 0, 0];
		for (const a of grid)
			for (const b of grid) {
				const [x, y] = [a - centre, b - centre];
				const density = Math.exp(
					(-0.5 * (own * x * x - 2 * shared * x * y + own * y * y)) /
						determinant +
						tally.light[0] * Math.log(logistic(a)) +
						(shots - tally.light[0]) * Math.log(1 - logistic(a)) +
						tally.heavy[0] * Math.log(logistic(b)) +
						(shots - tally.heavy[0]) * Math.log(1 - logistic(b)),
				);
				// E[τ | a, b] = cov(τ, ·) Σ⁻¹ (x, y), cov = (−ξ, ξ) sT².
				const mean = (figure * sT ** 2 * (y - x)) / (own - shared);
				total += density;
				first += density * mean;
				second += density * mean ** 2;
			}
		const given = sT ** 2 - (2 * figure ** 2 * sT ** 4) / (own - shared);
		const mean = first / total;
		const sd = Math.sqrt(given + second / total - mean ** 2);
		expect(Math.abs(best.massG.value - (515 + width * mean))).toBeLessThan(
			tolerance * width * sd,
		);
		expect(Math.abs(best.massG.sd / (width * sd) - 1)).toBeLessThan(tolerance);
	},
);

const normal = (chance: Chance): number =>
	Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

/** Players drawn from the model's own beliefs: the 90 % bands must hold nine in ten. */
test("coverage of the best weight and length by 400 seeded players, three sessions each", () => {
	const chance = seededChance(31);
	const plans = [
		["light", "heavy"],
		["middle", "long"],
		["light", "long"],
	] as const;
	const players = 400;
	const covered = { massG: 0, lengthMm: 0 };
	for (let i = 0; i < players; i++) {
		const truth = {
			massG: BEFORE.massG.value + BEFORE.massG.sd * normal(chance),
			lengthMm: BEFORE.lengthMm.value + BEFORE.lengthMm.sd * normal(chance),
		};
		const ownOf = new Map(
			RACK.map(({ id }) => [id, CUE_SD_LOG_ODDS * normal(chance)]),
		);
		const loss = (cue: RackCue) =>
			0.5 * ((cue.massG - truth.massG) / FALL_OFF.massG) ** 2 +
			0.5 * ((cue.lengthMm - truth.lengthMm) / FALL_OFF.lengthMm) ** 2;
		const sessions = plans.map((plan) => {
			// The session's level is about a player whose best cue is in the hand.
			const level = 0.5 + 0.8 * normal(chance);
			return session(
				Object.fromEntries(
					plan.map((id) => {
						const cue = RACK.find((one) => one.id === id) as RackCue;
						const share = logistic(level + (ownOf.get(id) ?? 0) - loss(cue));
						let hits = 0;
						for (let shot = 0; shot < 30; shot++) if (chance() < share) hits++;
						return [id, [hits, 30] as const];
					}),
				),
			);
		});
		const { best } = preferenceFrom({ rack: RACK, sessions, before: BEFORE });
		for (const field of ["massG", "lengthMm"] as const)
			if (Math.abs(best[field].value - truth[field]) <= Z90 * best[field].sd)
				covered[field]++;
	}
	const error = 3 * Math.sqrt((0.9 * 0.1) / players);
	for (const count of Object.values(covered))
		expect(Math.abs(count / players - 0.9)).toBeLessThan(error);
});
