import { describe, expect, test } from "vitest";
import type { CueRequest } from "@/lib/cue/design";
import { jobDifferences } from "@/lib/workshop/job-difference";
import { askedContent, quoteUntil } from "./support/jobs";

const whats = (change: Partial<CueRequest>, massG?: number) =>
	jobDifferences(askedContent(), askedContent(change, massG)).told.map(
		({ what }) => what,
	);

describe("what changed between two revisions", () => {
	test("nothing, where nothing did", () => {
		expect(jobDifferences(askedContent(), askedContent())).toEqual({
			told: [],
			largestDiameterChangeMm: null,
			isMore: false,
		});
	});

	test("a changed wood is named, with what follows from it", () => {
		const told = whats({ buttWood: "black-walnut" });
		expect(told).toContain("butt-wood");
		expect(told).toContain("added-weight");
		expect(told).not.toContain("length");
		expect(told).not.toContain("splice");
	});

	test("length, thickness and weight with both values", () => {
		const { told, largestDiameterChangeMm } = jobDifferences(
			askedContent(),
			askedContent({ lengthMm: 1498.6, buttDiameterMm: 29.5 }, 552),
		);
		expect(told).toEqual(
			expect.arrayContaining([
				{
					what: "length",
					before: { kind: "figure", id: "length", value: 1473.2 },
					after: { kind: "figure", id: "length", value: 1498.6 },
				},
				{
					what: "mass",
					before: { kind: "figure", id: "mass", value: 540 },
					after: { kind: "figure", id: "mass", value: 552 },
				},
			]),
		);
		// At the butt end itself, where both cues have a station.
		expect(largestDiameterChangeMm).toBeGreaterThanOrEqual(0.5);
	});

	test("another price, another day, another word", () => {
		const before = { ...askedContent(), quote: quoteUntil("2027-01-31") };
		const after = {
			...askedContent(),
			quote: quoteUntil("2027-02-28", {
				priceMinor: 51_000,
				note: "With case.",
			}),
		};
		expect(jobDifferences(before, after).told).toEqual([
			{
				what: "price",
				before: {
					kind: "money",
					minor: 48_000,
					currency: "GBP",
					minorPerUnit: 100,
				},
				after: {
					kind: "money",
					minor: 51_000,
					currency: "GBP",
					minorPerUnit: 100,
				},
			},
			{
				what: "valid-until",
				before: { kind: "date", isoDate: "2027-01-31" },
				after: { kind: "date", isoDate: "2027-02-28" },
			},
			{
				what: "quote-note",
				before: { kind: "none" },
				after: { kind: "text", text: "With case." },
			},
		]);
	});

	test("what no line names is still told as more", () => {
		const before = askedContent();
		const after = {
			...before,
			build: {
				...before.build,
				design: { ...before.build.design, buttEndRadiusMm: 5 },
			},
		};
		expect(jobDifferences(before, after)).toEqual({
			told: [],
			largestDiameterChangeMm: null,
			isMore: true,
		});
	});

	test("the same members in another order, as a database or a form gives them, are no change", () => {
		const turned = (value: unknown): unknown =>
			Array.isArray(value)
				? value.map(turned)
				: typeof value === "object" && value !== null
					? Object.fromEntries(
							Object.entries(value)
								.reverse()
								.map(([name, member]) => [name, turned(member)]),
						)
					: value;
		const content = { ...askedContent(), quote: quoteUntil("2026-06-01") };
		const other = turned(content) as typeof content;
		expect(JSON.stringify(other)).not.toBe(JSON.stringify(content));
		expect(jobDifferences(content, other)).toEqual({
			told: [],
			largestDiameterChangeMm: null,
			isMore: false,
		});
	});

	test("the settings it was worked out with are no change of the cue", () => {
		const before = askedContent();
		expect(
			jobDifferences(before, { ...before, settingVersions: { prices: 4 } })
				.isMore,
		).toBe(false);
	});
});
