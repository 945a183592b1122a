import { z } from "zod";
import { cueRequestSchema } from "@/lib/forms/api-requests";
import { cueResponseSchema } from "@/lib/forms/api-responses";
import { cautionSchema, estimateSchema, open } from "@/lib/forms/api-shapes";
import { CHOICES } from "@/lib/forms/choices";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { WOODS, type WoodId } from "@/lib/reference/woods";

export const wood = z.enum(Object.keys(WOODS) as [WoodId, ...WoodId[]]);
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

/** What is frozen of a build, in a spec and in a job alike. */
export const frozenBuild = {
	modelVersion: z.string(),
	gameId: z.enum(CHOICES.game),
	request: cueRequestSchema.describe("The cue as asked for, before weight"),
	stations: cueResponseSchema.shape.stations,
	naturalMassG: estimateSchema,
	naturalBalanceFromButtMm: estimateSchema,
	addedWeight,
	parts: z.array(
		open({ part: z.string(), material: z.string(), massG: estimateSchema }),
	),
	design: design.describe("The finished cue, metal and all"),
	rules: cueResponseSchema.shape.rules,
	workshopCautions: z.array(cautionSchema).describe("For the bench"),
};

/**
 * The JSON Schema, draft 2020-12, of an exported file. Objects are open: a later version may add
 * members. The bounds and closed shapes of today's forms are left out, since what was saved under other
 * forms is as valid.
 */
export function exportedSchema(
	schema: z.ZodType,
	named: { $id: string; title: string },
): object {
	return {
		...z.toJSONSchema(schema, {
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
		}),
		...named,
		description:
			"Lengths in mm, masses in g, angles in degrees, as the names say. A station counts from the tip's crown towards the butt end.",
	};
}
