import { createHash } from "node:crypto";
import Ajv2020 from "ajv/dist/2020";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { type SpecContent, specFrom } from "@/lib/advice/spec";
import { specJson } from "@/lib/documents/spec-json";
import { specJsonSchema } from "@/lib/documents/spec-schema";
import { contentSha256 } from "@/lib/records/canonical";
import { anyInput } from "../support/inputs";
import { closed, told, validator } from "./support/json-schema";
import { richSpec, searchedSpec, specWith, usualSpec } from "./support/specs";

const exported = (content: SpecContent) =>
	JSON.parse(
		specJson({
			origin: "https://cues.example.org",
			address: "https://cues.example.org/specs/12/3",
			number: 12,
			revision: 3,
			fittingNumber: 7,
			savedAt: new Date(Date.UTC(2026, 4, 3, 9, 30)),
			isInvented: true,
			contentSha256: contentSha256(content),
			content,
		}),
	);

type Schema = Record<string, unknown>;
const schema = () => JSON.parse(JSON.stringify(specJsonSchema())) as Schema;

const OPEN = validator(schema());
const CLOSED = validator(closed(schema()));

const EXAMPLES = [
	["usual", usualSpec],
	["rich", richSpec],
	["searched", searchedSpec],
	["one piece", () => specWith({ layout: "one-piece", splice: "plain" })],
	[
		"machine-spliced, with the workshop's own billets",
		() =>
			specWith({
				splice: "machine-four-point",
				layout: "centre",
				densities: { "white-ash": { kgM3: 690, sd: 5 } },
			}),
	],
] as const;

describe("the published schema", () => {
	test("is itself JSON Schema, draft 2020-12", () => {
		const ajv = new Ajv2020({ strict: true });
		expect(schema().$schema).toBe(
			"https://json-schema.org/draft/2020-12/schema",
		);
		expect(ajv.validateSchema(schema())).toBe(true);
	});

	test.each(EXAMPLES)("accepts a real export: %s", (_, make) => {
		const validate = OPEN;
		validate(exported(make()));
		expect(told(validate)).toEqual([]);
	});

	test.each(EXAMPLES)("describes every member of one: %s", (_, make) => {
		const validate = CLOSED;
		validate(exported(make()));
		expect(told(validate)).toEqual([]);
	});

	test("accepts and describes whatever can be frozen", () => {
		const validate = CLOSED;
		let made = 0;
		fc.assert(
			fc.property(anyInput, (input) => {
				const advice = advise(input);
				const spec = advice.ok ? specFrom(advice.value, null) : advice;
				if (!spec.ok) return;
				made++;
				validate(exported(spec.value));
				expect(told(validate)).toEqual([]);
			}),
			{ numRuns: 40, seed: 6 },
		);
		expect(made).toBeGreaterThan(10);
	});

	test("accepts what was saved before there was a search", () => {
		const spec = exported(usualSpec());
		delete spec.spec.search;
		CLOSED(spec);
		expect(told(CLOSED)).toEqual([]);
	});

	test("stays open: a later member, or a measure beyond today's bounds, is no error", () => {
		const validate = OPEN;
		const spec = exported(usualSpec());
		spec.later = 1;
		spec.spec.design.later = 1;
		spec.spec.input.player.statureMm = 2600;
		spec.spec.request.later = 1;
		validate(spec);
		expect(told(validate)).toEqual([]);
	});

	test.each([
		["a missing figure", (spec) => delete spec.spec.figures.mass],
		["a number as text", (spec) => (spec.spec.design.lengthMm = "1473")],
		["an unknown wood", (spec) => (spec.spec.design.buttWood = "chalk")],
		[
			"an unknown kind of base",
			(spec) => (spec.spec.design.splice.base.kind = "x"),
		],
		["a digest of another length", (spec) => (spec.contentSha256 = "00")],
		["another format", (spec) => (spec.format = "other")],
		["a revision of nought", (spec) => (spec.revision = 0)],
		["a spread below nought", (spec) => (spec.spec.naturalMassG.sd = -1)],
	] as [string, (spec: ReturnType<typeof exported>) => unknown][])(
		"refuses %s",
		(_, spoil) => {
			const spec = exported(usualSpec());
			const validate = OPEN;
			expect(validate(spec)).toBe(true);
			spoil(spec);
			expect(validate(spec)).toBe(false);
		},
	);
});

describe("the export", () => {
	test("holds the content as it was saved, number by number", () => {
		const content = richSpec();
		expect(exported(content).spec).toEqual(content);
	});
	test("names its schema, its job and its time", () => {
		expect(exported(usualSpec())).toMatchObject({
			$schema: "https://cues.example.org/api/v1/spec.schema.json",
			address: "https://cues.example.org/specs/12/3",
			number: 12,
			revision: 3,
			savedAt: "2026-05-03T09:30:00.000Z",
			isInvented: true,
		});
	});
	test("whoever reads it can check the digest without this project", () => {
		const { spec, contentSha256: digest } = exported(usualSpec());
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
				.update(JSON.stringify(inOrder(spec)))
				.digest("hex"),
		).toBe(digest);
	});
});
