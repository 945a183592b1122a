import { describe, expect, it } from "vitest";
import { sheetStations, splicePointStationsMm } from "@/lib/build/stations";
import { diameterAtMm } from "@/lib/cue/taper";
import { cue58 } from "../support/designs";

describe("sheetStations", () => {
	it("counts from the butt end and notes ferrule, joint, points and butt", () => {
		const design = cue58();
		const stations = sheetStations(design);
		const noted = stations.filter((one) => one.note !== null);
		expect(noted.map((one) => one.note)).toEqual([
			"ferrule",
			"splice-points",
			"joint",
			"butt",
		]);
		expect(noted.map((one) => one.stationMm)[0]).toBe(14);
		expect(noted[1]?.fromButtMm).toBeCloseTo(699.675, 3);
		expect(noted[2]?.fromButtMm).toBeCloseTo(441.9, 9);
		expect(noted[3]?.fromButtMm).toBe(0);
		for (const one of stations) {
			expect(one.stationMm + one.fromButtMm).toBeCloseTo(design.lengthMm, 9);
			expect(one.diameterMm).toBe(diameterAtMm(design, one.stationMm));
		}
		expect(
			stations.filter((one) => one.note === null).map((one) => one.fromButtMm),
		).toEqual([
			1400, 1300, 1200, 1100, 1000, 900, 800, 700, 600, 500, 400, 300, 200, 100,
		]);
	});

	it("does not list one place twice", () => {
		const design = cue58({
			layout: "centre",
			fittings: { jointFromButtMm: 700 },
		});
		const at700 = sheetStations(design, { everyMm: 50 }).filter(
			(one) => Math.abs(one.fromButtMm - 700) < 0.2,
		);
		expect(at700).toHaveLength(1);
		expect(at700[0]?.note).toBe("joint");
	});

	it("asks for closer turning towards the tip", () => {
		const tolerances = sheetStations(cue58()).map((one) => one.toleranceMm);
		expect(tolerances[0]).toBe(0.05);
		expect([...tolerances].sort((a, b) => a - b)).toEqual(tolerances);
		expect([...new Set(tolerances)]).toEqual([0.05, 0.1, 0.2]);
	});

	it("throws on a step nobody would mark", () => {
		expect(() => sheetStations(cue58(), { everyMm: 0 })).toThrow(/10–500/);
		expect(() => sheetStations(cue58(), { everyMm: Number.NaN })).toThrow(
			/10–500/,
		);
	});
});

describe("splicePointStationsMm", () => {
	it("finds a machine splice's points and none for a plain butt", () => {
		const machine = cue58({ splice: "machine-four-point" });
		expect(splicePointStationsMm(machine)[0]).toBeCloseTo(
			0.58 * machine.lengthMm,
			9,
		);
		expect(splicePointStationsMm(cue58({ splice: "plain" }))).toEqual([]);
	});
});
