import { expect, test } from "vitest";
import { sheetHead } from "@/lib/present/sheet-head";
import { METRIC } from "../support/readers";

const SPEC = {
	number: 4,
	revision: 1,
	latestRevision: 1,
	fittingNumber: 3,
	playerName: "Invented Player",
	savedAt: new Date("2026-05-03T10:00:00Z"),
	modelVersion: "2026.1",
};

test("the workshop stands first where it has set a name or an address", () => {
	const plain = sheetHead(SPEC, METRIC).lines;
	const { lines } = sheetHead(
		{
			...SPEC,
			workshop: {
				name: "Invented Bench",
				lines: ["1 Yard", "Town"],
				contact: "mail@bench.example",
			},
		},
		METRIC,
	);
	expect(lines).toEqual([
		"Invented Bench · 1 Yard · Town · mail@bench.example",
		...plain,
	]);
	expect(
		sheetHead(
			{ ...SPEC, workshop: { name: "", lines: [], contact: "" } },
			METRIC,
		).lines,
	).toEqual(plain);
});
