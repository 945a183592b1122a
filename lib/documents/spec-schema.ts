import { z } from "zod";
import { adviceResponseSchema } from "@/lib/forms/api-responses";
import { bandSchema, cautionSchema, open } from "@/lib/forms/api-shapes";
import { fittingInputSchema } from "@/lib/forms/fitting-input";
import { exportedSchema, frozenBuild } from "./build-schema";

/** Raised when a member changes its meaning or goes; new members do not raise it. */
export const SPEC_FORMAT_VERSION = 1;

/** Where the app publishes the schema. */
export const SPEC_SCHEMA_PATH = "/api/v1/spec.schema.json";

const advised = adviceResponseSchema.shape.length;
const evidence = advised.shape.evidence.element.extend({
	facts: cautionSchema.shape.facts,
});
const figure = (unit: string) =>
	advised
		.extend({ evidence: z.array(evidence).describe("Heaviest first") })
		.describe(unit);

const content = open({
	schemaVersion: z.literal(1),
	...frozenBuild,
	input: fittingInputSchema.describe("What was measured and wished"),
	figures: open({
		length: figure("mm"),
		mass: figure("g"),
		butt: figure("mm"),
		tip: figure("mm"),
		balance: figure("mm from the butt end"),
	}),
	buttRangeMm: bandSchema,
	search: adviceResponseSchema.shape.search
		.nullable()
		.optional()
		.describe(
			"What the search said of this cue and its rivals when it was saved; missing from what was saved before there was one. Described in outline only",
		),
	cautions: z.array(cautionSchema).describe("For the player and the coach"),
});

const exportSchema = open({
	$schema: z.string().describe("Address of this schema"),
	format: z.literal("cue-spec"),
	formatVersion: z.literal(SPEC_FORMAT_VERSION),
	number: z.int().min(1),
	revision: z.int().min(1),
	fittingNumber: z.int().min(1),
	address: z.string().describe("The job's own page"),
	savedAt: z.string().describe("ISO 8601, universal time"),
	isInvented: z.boolean().describe("Demo data: no such person"),
	contentSha256: z
		.string()
		.regex(/^[0-9a-f]{64}$/)
		.describe(
			"SHA-256, hexadecimal, of `spec` as JSON without spaces, the members of every object in the order of their names",
		),
	spec: content,
});

/** The JSON Schema of an exported spec. */
export const specJsonSchema = (): object =>
	exportedSchema(exportSchema, {
		$id: `urn:cue-fitting-advisor:spec:${SPEC_FORMAT_VERSION}`,
		title: "A saved specification of a cue",
	});
