import { z } from "zod";
import { cueRequestSchema } from "@/lib/forms/api-requests";
import {
	adviceResponseSchema,
	cueResponseSchema,
} from "@/lib/forms/api-responses";
import {
	bandSchema,
	cautionSchema,
	estimateSchema,
} from "@/lib/forms/api-shapes";
import { CHOICES, fittingInputSchema } from "@/lib/forms/fitting-input";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { WOODS, type WoodId } from "@/lib/reference/woods";

/** Raised when a member changes its meaning or goes; new members do not raise it. */
export const SPEC_FORMAT_VERSION = 1;

/** Where the app publishes the schema. */
export const SPEC_SCHEMA_PATH = "/api/v1/spec.schema.json";

const open = <Shape extends z.ZodRawShape>(shape: Shape) =>
	z.looseObject(shape);
const wood = z.enum(Object.keys(WOODS) as [WoodId, ...WoodId[]]);
const metal = z.enum(Object.keys(METALS) as [MetalId, ...MetalId[]]);
const stationMm = z.number().describe("From the tip's crown");

const joint = open({
	stationMm,
	metal,
	pinDiameterMm: z.number(),
	pinReachMm: z.number().describe("Into each of the two pieces"),
	collarMm: z.number().describe("Length of each collar"),
}).nullable();

const base = z
	.discriminatedUnion("kind", [
		open({ kind: z.literal("through") }),
		open({
			kind: z.literal("tenon"),
			joinStationMm: stationMm,
			tenonDiameterMm: z.number(),
			tenonLengthMm: z.number(),
		}),
		open({
			kind: z.literal("prongs"),
			pointStationMm: stationMm,
			endStationMm: stationMm,
			pointHalfWidthMm: z.number(),
		}),
	])
	.describe("What the wood is before any flat is planed");

const cut = open({
	part: z.string(),
	wood,
	faceAngleDeg: z
		.number()
		.describe("Where the flat faces, round the axis; 0 is the front"),
	buttOffsetMm: z
		.number()
		.describe("Distance of the flat from the axis at the butt end"),
	angleDeg: z.number().describe("The flat against the axis"),
});

const body = {
	fromStationMm: stationMm,
	toStationMm: stationMm,
	diameterMm: z.number(),
};

const design = open({
	lengthMm: z.number(),
	taper: z
		.array(open({ stationMm, diameterMm: z.number() }))
		.describe("The diameter follows a monotone cubic through these points"),
	tip: open({ heightMm: z.number(), domeRadiusMm: z.number() }),
	ferrule: open({ metal, lengthMm: z.number(), wallMm: z.number() }),
	shaftWood: wood,
	buttWood: wood,
	splice: open({
		id: z.enum(CHOICES.splice),
		base,
		cuts: z.array(cut).describe("In glue order; later wood replaces earlier"),
	}),
	layout: z.enum(CHOICES.layout),
	joint,
	endJoint: joint.describe("The thread of a screw-in piece at the butt end"),
	addedWeight: z.array(
		open({ ...body, metal, annulusInnerMm: z.number().optional() }),
	),
	plugs: z.array(open({ ...body, wood })),
	buttEndRadiusMm: z.number(),
	densities: z
		.partialRecord(wood, open({ kgM3: z.number(), sd: z.number() }))
		.describe("The workshop's own billets, instead of the tables"),
});

const addedWeight = open({
	naturalMassG: estimateSchema,
	naturalBalanceFromButtMm: estimateSchema,
	wantedMassG: z.number(),
	addedMassG: estimateSchema.describe(
		"Metal and plug in, minus wood drilled out",
	),
	metal,
	boreDiameterMm: z.number().describe("0 where nothing is bored"),
	boreDepthMm: z.number(),
	slugLengthMm: z.number(),
	slugFromButtMm: z.number().describe("To the slug's rear face"),
	jointSlug: open({
		fromStationMm: stationMm,
		diameterMm: z.number(),
		slugLengthMm: z.number(),
	}).nullable(),
	metalMassG: z.number(),
	drilledOutMassG: z.number(),
	plugMassG: z.number(),
	balanceAfterFromButtMm: estimateSchema,
	inertiaAfterAboutBalanceKgM2: estimateSchema,
});

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
	modelVersion: z.string(),
	gameId: z.enum(CHOICES.game),
	input: fittingInputSchema.describe("What was measured and wished"),
	request: cueRequestSchema.describe("The cue as asked for, before weight"),
	figures: open({
		length: figure("mm"),
		mass: figure("g"),
		butt: figure("mm"),
		tip: figure("mm"),
		balance: figure("mm from the butt end"),
	}),
	buttRangeMm: bandSchema,
	stations: cueResponseSchema.shape.stations,
	naturalMassG: estimateSchema,
	naturalBalanceFromButtMm: estimateSchema,
	addedWeight,
	parts: z.array(
		open({ part: z.string(), material: z.string(), massG: estimateSchema }),
	),
	design: design.describe("The finished cue, metal and all"),
	rules: cueResponseSchema.shape.rules,
	search: adviceResponseSchema.shape.search
		.nullable()
		.optional()
		.describe(
			"What the search said of this cue and its rivals when it was saved; missing from what was saved before there was one. Described in outline only",
		),
	cautions: z.array(cautionSchema).describe("For the player and the coach"),
	workshopCautions: z.array(cautionSchema).describe("For the bench"),
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

/**
 * The JSON Schema, draft 2020-12, of an exported spec. Objects are open: a later version may add
 * members. The bounds and closed shapes of today's forms are left out, since a spec saved under other
 * forms is as valid.
 */
export function specJsonSchema(): object {
	const schema = z.toJSONSchema(exportSchema, {
		target: "draft-2020-12",
		io: "output",
		override: ({ jsonSchema, path }) => {
			if (jsonSchema.additionalProperties === false)
				delete jsonSchema.additionalProperties;
			if (path.includes("input") || path.includes("request")) {
				delete jsonSchema.minimum;
				delete jsonSchema.maximum;
				delete jsonSchema.maxItems;
			}
		},
	});
	return {
		...schema,
		$id: `urn:cue-fitting-advisor:spec:${SPEC_FORMAT_VERSION}`,
		title: "A saved specification of a cue",
		description:
			"Lengths in mm, masses in g, angles in degrees, as the names say. A station counts from the tip's crown towards the butt end.",
	};
}
