import { describe, expect, test } from "vitest";
import { asBuiltRows } from "@/lib/present/as-built-rows";
import { careGroups } from "@/lib/present/care-view";
import { METRIC, reading, TRADE } from "@/tests/support/readers";
import { askedContent } from "../workshop/support/jobs";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const titles = (...p: Parameters<typeof askedContent>) =>
	careGroups(askedContent(...p), METRIC).map(({ title }) => title);
const linesOf = (
	title: string,
	content: Parameters<typeof careGroups>[0],
	reader = METRIC,
) =>
	plain(
		careGroups(content, reader)
			.filter((group) => group.title === title)
			.flatMap(({ lines }) => lines)
			.join(" "),
	);

describe("how a cue is looked after", () => {
	test("speaks of the parts this cue has, and of no others", () => {
		expect(titles()).toEqual(
			expect.arrayContaining(["Tip", "Ferrule", "Joint", "Metal inside"]),
		);
		expect(titles({ layout: "one-piece" })).not.toContain("Joint");
		const content = askedContent();
		const light = {
			...content,
			build: {
				...content.build,
				addedWeight: { ...content.build.addedWeight, metalMassG: 0 },
			},
		};
		expect(careGroups(light, METRIC).map(({ title }) => title)).not.toContain(
			"Metal inside",
		);
	});

	test("names the leather that was chosen, in the reader's units", () => {
		const content = {
			...askedContent(),
			extras: { case: null, tip: "Invented medium", gripNotes: "" },
		};
		expect(linesOf("Tip", content)).toMatch(
			/^Invented medium, 9\.50? mm across/,
		);
		expect(linesOf("Tip", content, TRADE)).toMatch(/0\.374 in/);
		expect(linesOf("Tip", askedContent())).toMatch(/^Leather, /);
	});

	test("lead is told of only where there is lead", () => {
		const content = askedContent();
		expect(linesOf("Metal inside", content)).not.toMatch(/Lead must/);
		const lead = {
			...content,
			build: {
				...content.build,
				addedWeight: { ...content.build.addedWeight, metal: "lead" as const },
			},
		};
		expect(linesOf("Metal inside", lead)).toMatch(/Lead must stay closed in/);
	});

	test("a protected wood is told of before a border", () => {
		expect(titles({ buttWood: "cocobolo" })).toContain("Crossing borders");
		expect(titles({ buttWood: "european-walnut" })).not.toContain(
			"Crossing borders",
		);
	});

	test("promises nothing: a warranty is the workshop's to word", () => {
		for (const reader of [METRIC, reading("metric", "de")])
			for (const { lines } of careGroups(askedContent(), reader))
				expect(lines.join(" ")).not.toMatch(
					/warrant|guarantee|Gewährleistung|Garantie/i,
				);
	});
});

describe("the cue as it was handed over", () => {
	test("says of each figure whether it was read or is what it was made to", () => {
		const { build } = askedContent();
		const rows = asBuiltRows(
			{ build, readings: { massG: 538.4, tipDiameterMm: 9.45 } },
			METRIC,
		);
		expect(rows.map(({ source }) => source)).toEqual([
			"by the job sheet",
			"measured on the cue",
			"by the job sheet",
			"measured on the cue",
			"by the job sheet",
		]);
		expect(plain(rows[1]?.value ?? "")).toMatch(/^538 g · /);
		expect(plain(rows[3]?.value ?? "")).toMatch(/^9\.45 mm · /);
	});
});
