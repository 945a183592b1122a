import { expect, test } from "vitest";
import { CHOICES } from "@/lib/forms/choices";
import { measuredRows } from "@/lib/present/measured-view";
import { METRIC } from "@/tests/support/readers";

test("read, could not be measured, and not asked are three things", () => {
	const rows = measuredRows(
		{
			stature: "178 cm",
			gripReadings: ["28 mm", "", "28.5 mm"],
			notMeasured: ["armSpan"],
			armSpanNote: "left shoulder does not lift",
		},
		METRIC,
	);
	expect(rows).toHaveLength(CHOICES.measure.length);
	const row = (measure: string) => rows.find((r) => r.measure === measure);
	expect(row("Height")).toMatchObject({ reading: "178 cm", state: "read" });
	expect(row("Grip circle")?.reading).toBe("28 mm, 28.5 mm");
	expect(row("Arm span")).toEqual({
		measure: "Arm span",
		reading: "could not be measured",
		note: "left shoulder does not lift",
		state: "refused",
	});
	expect(row("Hand length")).toMatchObject({ reading: "not asked", note: "" });
});

test("a reading outweighs an old flag", () => {
	expect(
		measuredRows({ stature: "178 cm", notMeasured: ["stature"] }, METRIC)[0],
	).toMatchObject({ state: "read" });
});
