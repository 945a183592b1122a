import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { specFrom } from "@/lib/advice/spec";
import { stationsCsv } from "@/lib/documents/stations-csv";
import { sheetView } from "@/lib/present/sheet-view";
import { buildFromSpec } from "@/lib/workshop/job-content";
import { METRIC } from "@/tests/support/readers";
import { anyInput } from "../support/inputs";
import { richSpec, usualSpec } from "./support/specs";

const read = (text: string): Record<string, string>[] =>
	parse(text, { columns: true, record_delimiter: "\r\n" });

describe("stations as CSV, through a general-purpose reader", () => {
	test.each([
		["usual", usualSpec],
		["rich", richSpec],
	])("%s: every station in the sheet's order, in both units", (_, make) => {
		const content = make();
		const rows = read(stationsCsv(buildFromSpec(content)));
		expect(rows).toHaveLength(content.stations.length);
		const view = sheetView(buildFromSpec(content), METRIC);
		for (const [i, row] of rows.entries()) {
			const station = content.stations[i];
			if (station === undefined) throw new Error(`no station ${i}`);
			for (const [label, value] of [
				["From the butt end", station.fromButtMm],
				["From the tip", station.stationMm],
				["Diameter", station.diameterMm],
				["Tolerance either side", station.toleranceMm],
			] as const) {
				// The file holds 0.01 mm and 0.0001 in; an inch is 25.4 mm by definition.
				expect(Math.abs(Number(row[`${label} (mm)`]) - value)).toBeLessThan(
					0.00501,
				);
				expect(
					Math.abs(Number(row[`${label} (in)`]) * 25.4 - value),
				).toBeLessThan(0.0000501 * 25.4);
			}
			expect(row.Here).toBe(view.stations[i]?.note);
			expect(`${row["Diameter (mm)"]}\u00a0mm`).toBe(
				view.stations[i]?.diameter.main,
			);
		}
	});
	test("plain ASCII with CRLF, so that any program in any country reads the same", () => {
		const text = stationsCsv(buildFromSpec(usualSpec()));
		expect(text).toMatch(/^[\x20-\x7e\r\n]+$/);
		expect(text.endsWith("\r\n")).toBe(true);
		expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
	});
	test("any fitting that freezes has stations with plain numbers in every field", () => {
		let made = 0;
		fc.assert(
			fc.property(anyInput, (input) => {
				const advice = advise(input);
				const spec = advice.ok ? specFrom(advice.value, null) : advice;
				if (!spec.ok) return;
				made++;
				for (const { Here, ...row } of read(
					stationsCsv(buildFromSpec(spec.value)),
				))
					for (const field of Object.values(row))
						expect(field).toMatch(/^\d+\.\d+$/);
			}),
			{ numRuns: 40, seed: 6 },
		);
		expect(made).toBeGreaterThan(10);
	});
});
