import { describe, expect, test } from "vitest";
import { jobSheetHead, sheetHead } from "@/lib/present/sheet-head";
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

describe("a job's sheet", () => {
	const JOB = {
		number: 3,
		revision: 2,
		customerName: "Invented Customer",
		dueOn: "2026-06-01",
		writtenAt: new Date("2026-05-03T10:00:00Z"),
		agreed: { name: "I. Customer", at: new Date("2026-05-04T10:00:00Z") },
		standing: { may: "build" },
		modelVersion: "2026.1",
		workshop: { name: "", lines: [], contact: "" },
	} as const;

	test("says for whom, agreed by whom and when due", () => {
		const head = jobSheetHead(JOB, METRIC);
		expect(head.title).toBe("Job sheet, job 3/2");
		expect(head.lines).toEqual([
			"For Invented Customer",
			"Agreed to on 4 May 2026 by I. Customer, models 2026.1",
			"Due 1 June 2026",
		]);
		expect(head.replaced).toBeNull();
	});

	test.each([
		[{ may: "not", because: "not-agreed" }, /^NOT AGREED TO YET/],
		[{ may: "not", because: "cancelled" }, /^CANCELLED/],
		[{ may: "ask", laterRevision: 5 }, /revision 5, waits/],
	] as const)(
		"warns where nobody should simply build: %o",
		(standing, words) => {
			expect(jobSheetHead({ ...JOB, standing }, METRIC).replaced).toMatch(
				words,
			);
		},
	);
});
