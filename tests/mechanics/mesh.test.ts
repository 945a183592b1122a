import { describe, expect, it } from "vitest";
import { endsWith, meshInto } from "@/lib/mechanics/mesh";

const mesh = (endsMm: readonly number[], fineness: number): number[] => {
	const into = new Float64Array(400);
	const nodes = meshInto({ endsMm, fineness, into });
	return Array.from(into.subarray(0, nodes));
};

describe("mesh", () => {
	const breaks = [0, 4, 14, 1000, 1002, 1460];

	it("keeps every break and rises", () => {
		for (const fineness of [0.5, 1, 3, 10]) {
			const stations = mesh(breaks, fineness);
			for (const end of breaks)
				expect(
					stations.some((station) => Math.abs(1000 * station - end) < 1e-9),
				).toBe(true);
			for (let i = 1; i < stations.length; i++)
				expect(stations[i]).toBeGreaterThan(stations[i - 1] as number);
		}
	});

	it("elements are short at the tip, longer at the butt, and no longer than asked", () => {
		const stations = mesh([0, 1460], 2);
		for (let i = 1; i < stations.length; i++) {
			const from = 1000 * (stations[i - 1] as number);
			const to = 1000 * (stations[i] as number);
			// Element length is a mean of the growing limit between its ends.
			expect(to - from).toBeLessThan((70 + 0.12 * to) / 2 + 1e-9);
		}
		expect((stations[1] as number) * 1000).toBeLessThan(45);
	});

	it("further ends are added once and must lie on the bar", () => {
		const profile = {
			lengthMm: 100,
			breaksMm: [0, 100],
			sectionAt: () => ({
				massPerLengthKgM: 1,
				stiffnessXNm2: 1,
				stiffnessYNm2: 1,
			}),
		};
		expect(endsWith(profile, [30, 0, 30])).toEqual([0, 30, 100]);
		expect(() => endsWith(profile, [101])).toThrow(/101 mm is off the bar/);
	});

	it("throws on a mesh too coarse to mean anything or too fine for its storage", () => {
		expect(() => mesh([0, 1], 0.1)).toThrow(/fineness.*0\.1/);
		expect(() =>
			meshInto({ endsMm: [0, 1460], fineness: 5, into: new Float64Array(4) }),
		).toThrow(/more than 4 nodes/);
	});
});
