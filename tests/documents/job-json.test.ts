import { createHash } from "node:crypto";
import Ajv2020 from "ajv/dist/2020";
import { describe, expect, test } from "vitest";
import { jobJson } from "@/lib/documents/job-json";
import { jobJsonSchema } from "@/lib/documents/job-schema";
import { contentSha256 } from "@/lib/records/canonical";
import { type JobContent, withPicks } from "@/lib/workshop/job-content";
import { askedContent, quoteUntil } from "../workshop/support/jobs";
import { closed, told, validator } from "./support/json-schema";

const exported = (content: JobContent, agreedAt: Date | null = null) =>
	JSON.parse(
		jobJson({
			origin: "https://cues.example.org",
			address: "https://cues.example.org/workshop/12",
			number: 12,
			revision: 3,
			state: "agreed",
			dueOn: "2026-06-01",
			writtenAt: new Date(Date.UTC(2026, 4, 3, 9, 30)),
			agreedAt,
			isInvented: true,
			contentSha256: contentSha256(content),
			content,
		}),
	);

const EXAMPLES: readonly (readonly [string, () => JobContent])[] = [
	["just asked for", () => askedContent()],
	["with its billets", () => withPicks(askedContent())],
	[
		"quoted",
		() => ({
			...askedContent({ layout: "one-piece", splice: "plain" }),
			quote: quoteUntil("2026-06-01"),
		}),
	],
	[
		"not in the price list, with extras",
		() => ({
			...askedContent({ buttWood: "cocobolo" }),
			price: null,
			extras: { case: "Invented case", tip: "Soft", gripNotes: "bare wood" },
			settingVersions: { prices: 2 },
		}),
	],
];

describe("the published schema of a job, by a general-purpose validator", () => {
	test("is itself JSON Schema, draft 2020-12", () => {
		expect(
			new Ajv2020({ strict: true }).validateSchema(
				JSON.parse(JSON.stringify(jobJsonSchema())),
			),
		).toBe(true);
	});

	test.each(EXAMPLES)("accepts and describes every member: %s", (_, make) => {
		const spoken = closed(JSON.parse(JSON.stringify(jobJsonSchema())));
		for (const validate of [validator(jobJsonSchema()), validator(spoken)]) {
			validate(exported(make(), new Date(0)));
			expect(told(validate)).toEqual([]);
		}
	});

	test.each([
		["a state that is none", (job) => (job.state = "burnt")],
		["a missing target", (job) => delete job.job.build.targets.mass],
		["a number as text", (job) => (job.job.build.design.lengthMm = "1473")],
		["half a penny", (job) => (job.job.quote.priceMinor = 0.5)],
		["a day that is no date", (job) => (job.dueOn = "in June")],
		["an unknown wood to pick", (job) => (job.job.build.billets[0].wood = "x")],
		["another format", (job) => (job.format = "cue-spec")],
	] as [string, (job: ReturnType<typeof exported>) => unknown][])(
		"refuses %s",
		(_, spoil) => {
			const validate = validator(jobJsonSchema());
			const job = exported({
				...withPicks(askedContent()),
				quote: quoteUntil("2026-06-01"),
			});
			expect(validate(job)).toBe(true);
			spoil(job);
			expect(validate(job)).toBe(false);
		},
	);
});

test("whoever reads a job can check its digest without this project", () => {
	const { job, contentSha256: digest } = exported(withPicks(askedContent()));
	const inOrder = (value: unknown): unknown =>
		Array.isArray(value)
			? value.map(inOrder)
			: typeof value === "object" && value !== null
				? Object.fromEntries(
						Object.entries(value)
							.sort(([a], [b]) => (a < b ? -1 : 1))
							.map(([name, member]) => [name, inOrder(member)]),
					)
				: value;
	expect(
		createHash("sha256")
			.update(JSON.stringify(inOrder(job)))
			.digest("hex"),
	).toBe(digest);
});
