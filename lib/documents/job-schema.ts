import { z } from "zod";
import { estimateSchema, open } from "@/lib/forms/api-shapes";
import { JOB_STATES } from "@/lib/workshop/job-state";
import { MAY_VARY } from "@/lib/workshop/may-vary";
import { exportedSchema, frozenBuild, wood } from "./build-schema";

/** Raised when a member changes its meaning or goes; new members do not raise it. */
export const JOB_FORMAT_VERSION = 1;

/** Where the app publishes the schema. */
export const JOB_SCHEMA_PATH = "/api/v1/job.schema.json";

const isoDate = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
const minor = z.int().min(0).describe("In whole minor units of the currency");
const currency = z.string().length(3).describe("ISO 4217");
const minorPerUnit = z.int().min(1);

const target = (unit: string) =>
	open({
		value: z.number(),
		basis: z
			.enum([
				"measured",
				"published",
				"derived",
				"common-practice",
				"assumed",
				"wish",
			])
			.describe("What the value rests on"),
	}).describe(unit);

const bound = z.number().nullable();
const billet = open({
	wood,
	use: z.enum(["shaft", "butt", "decoration"]),
	densityKgM3: estimateSchema.describe("As the build was worked out with"),
	window: open({
		lowKgM3: bound.describe("Null: no bound within what was looked at"),
		highKgM3: bound,
	})
		.nullable()
		.describe(
			"Densities at 12 % moisture with which metal still brings the cue to its weight and balance; null for decoration",
		),
});

const build = open({
	...frozenBuild,
	targets: open({
		length: target("mm"),
		mass: target("g"),
		butt: target("mm"),
		tip: target("mm"),
		balance: target("mm from the butt end"),
	}),
	billets: z.array(billet).describe("Woods to pick"),
	hand: z.enum(["right", "left"]).nullable().describe("The playing hand"),
	gripCircleReadingsMm: z.array(z.number()),
});

const price = open({
	currency,
	minorPerUnit,
	basis: z.string().describe("Whose price list: invented or the workshop's"),
	lines: z.array(
		open({
			part: z.string(),
			choice: z.string().nullable(),
			count: z.int().min(1),
			amountMinor: minor,
		}),
	),
	totalMinor: minor,
});

const quote = open({
	priceMinor: minor,
	currency,
	minorPerUnit,
	validUntil: isoDate.describe("The last day on which it can be agreed to"),
	mayVary: z.array(
		open({
			code: z.enum(MAY_VARY),
			within: z
				.number()
				.nullable()
				.describe("Either way, in the unit of the code"),
		}),
	),
	note: z.string(),
});

const content = open({
	schemaVersion: z.literal(1),
	build,
	extras: open({
		case: z.string().nullable(),
		tip: z.string().nullable(),
		gripNotes: z.string(),
	}).describe("What goes with the cue, in the workshop's own names"),
	price: price
		.nullable()
		.describe("By the price list; null where it lacks a chosen part"),
	quote: quote.nullable().describe("Null until the workshop has quoted"),
	settingVersions: z
		.record(z.string(), z.int().min(0))
		.describe("Which version of each kind of setting it was worked out with"),
});

const exportSchema = open({
	$schema: z.string().describe("Address of this schema"),
	format: z.literal("cue-job"),
	formatVersion: z.literal(JOB_FORMAT_VERSION),
	number: z.int().min(1),
	revision: z
		.int()
		.min(1)
		.describe("What the bench builds by: agreed to last, if anything was"),
	address: z.string().describe("The job's own page"),
	state: z.enum(JOB_STATES),
	dueOn: isoDate.nullable(),
	writtenAt: z.string().describe("ISO 8601, universal time"),
	agreedAt: z
		.string()
		.nullable()
		.describe("ISO 8601, universal time; null where nobody agreed to it"),
	isInvented: z.boolean().describe("Demo data: no such person"),
	contentSha256: z
		.string()
		.regex(/^[0-9a-f]{64}$/)
		.describe(
			"SHA-256, hexadecimal, of `job` as JSON without spaces, the members of every object in the order of their names",
		),
	job: content,
});

/** The JSON Schema of an exported job. */
export const jobJsonSchema = (): object =>
	exportedSchema(exportSchema, {
		$id: `urn:cue-fitting-advisor:job:${JOB_FORMAT_VERSION}`,
		title: "A workshop's job",
	});
