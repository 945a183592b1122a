import { z } from "zod";

/**
 * What the API returns, for the OpenAPI document. The handlers return the models' own results; the
 * tests hold every result to these schemas. Objects are open: later versions may add members.
 */
const open = <Shape extends z.ZodRawShape>(shape: Shape) =>
	z.looseObject(shape);

export const estimateSchema = open({
	value: z.number(),
	sd: z
		.number()
		.min(0)
		.describe("One standard deviation, in the unit of the owner's name"),
	standing: z.enum([
		"measured",
		"published",
		"derived",
		"common-practice",
		"assumed",
	]),
	sources: z.array(z.string()),
});
export const bandSchema = open({ low: z.number(), high: z.number() });
export const cautionSchema = open({
	code: z.string(),
	facts: z.record(z.string(), z.union([z.number(), z.string()])).optional(),
});
export const refusalSchema = open({
	code: z.string(),
	field: z.string(),
	value: z.union([z.number(), z.string(), z.null()]),
	min: z.number().optional(),
	max: z.number().optional(),
	facts: z.record(z.string(), z.union([z.number(), z.string()])).optional(),
});

const ruleSchema = open({
	rule: z.string(),
	ok: z.boolean(),
	field: z.string(),
	value: z.number(),
	bound: open({ min: z.number().optional(), max: z.number().optional() }),
	source: z.string(),
});
const stationSchema = open({
	stationMm: z.number(),
	fromButtMm: z.number(),
	diameterMm: z.number(),
	toleranceMm: z.number(),
	note: z.string().nullable(),
});
const massSchema = open({
	massG: estimateSchema,
	balanceFromButtMm: estimateSchema,
	inertiaAboutBalanceKgM2: estimateSchema,
	inertiaAboutAxisKgM2: estimateSchema,
	parts: z.array(
		open({
			part: z.string(),
			material: z.string(),
			massG: estimateSchema,
			centroidStationMm: z.number(),
		}),
	),
});
const designSchema = open({ lengthMm: z.number() });
const planSchema = open({
	naturalMassG: estimateSchema,
	naturalBalanceFromButtMm: estimateSchema,
	wantedMassG: z.number(),
	addedMassG: estimateSchema,
	metal: z.string(),
	boreDiameterMm: z.number(),
	boreDepthMm: z.number(),
	slugLengthMm: z.number(),
	slugFromButtMm: z.number(),
	metalMassG: z.number(),
	drilledOutMassG: z.number(),
	balanceAfterFromButtMm: estimateSchema,
	finished: designSchema,
	cautions: z.array(cautionSchema),
});

const planeSchema = open({
	freeHz: z.array(estimateSchema),
	stillMm: z.array(z.number()),
	heldHz: open({ pinned: estimateSchema, clamped: estimateSchema }),
	droopMm: estimateSchema,
	giveMmPerN: estimateSchema,
});
const yearSchema = open({
	seasons: z.array(
		open({
			name: z.string(),
			moisturePct: estimateSchema,
			massG: estimateSchema,
			balanceFromButtMm: estimateSchema,
			buttRadialMm: z.number(),
			buttTangentialMm: z.number(),
			tipRadialMm: z.number(),
			tipTangentialMm: z.number(),
		}),
	),
	massSwingG: z.number(),
	buttSwingMm: z.number(),
	cautions: z.array(cautionSchema),
});
const faceSchema = open({
	arrows: z.array(open({ stationMm: z.number(), pointsTo: z.string() })),
	meanSpacingMm: z.number().nullable(),
});

export const cueResponseSchema = open({
	design: designSchema,
	mass: massSchema,
	inertiaAboutGripKgM2: estimateSchema,
	plan: planSchema.nullable(),
	stations: z.array(stationSchema),
	rules: z.array(ruleSchema),
	bending: open({
		planes: open({ x: planeSchema, y: planeSchema }),
		sideRatio: z.number(),
	}),
	endMassG: estimateSchema,
	year: yearSchema.nullable(),
	grain: open({
		front: faceSchema,
		back: faceSchema,
		nearTip: z.array(open({ stationMm: z.number() })),
	}).nullable(),
});

export const shotResponseSchema = open({
	endMassG: estimateSchema,
	centreSpeedRatio: estimateSchema,
	bestMassG: estimateSchema,
	usableOffsetRatio: z.number(),
	offsets: z.array(
		open({
			offsetRatio: z.number(),
			isUsable: z.boolean(),
			ballSpeedMPerS: estimateSchema,
			modelGapFraction: z.number().nullable(),
			spinRatio: z.number(),
			spinRevPerS: estimateSchema,
			squirtDeg: estimateSchema,
			pivotLengthMm: estimateSchema.nullable(),
		}),
	),
	weights: z.array(
		open({
			cueMassG: z.number(),
			equalEffortFraction: estimateSchema,
			equalSpeedRatio: estimateSchema,
		}),
	),
});

const bodySchema = open({
	statureMm: estimateSchema,
	armSpanMm: estimateSchema,
	shoulderToElbowMm: estimateSchema,
	elbowToGripMm: estimateSchema,
	shoulderBreadthMm: estimateSchema,
	shoulderHeightMm: estimateSchema,
	handLengthMm: estimateSchema,
	isChildModel: z.boolean(),
	cautions: z.array(cautionSchema),
});
const gripSchema = open({
	circleMm: estimateSchema,
	readingCount: z.number().int().min(0),
	spreadMm: z.number().nullable(),
	cautions: z.array(cautionSchema),
});
const reachSchema = open({
	bridgeToGripMm: estimateSchema,
	bridgeLengthMm: estimateSchema,
	gripFromButtMm: estimateSchema,
	lengthMm: estimateSchema,
	lengthWindowMm: bandSchema,
	cautions: z.array(cautionSchema),
});

export const fitResponseSchema = open({
	body: bodySchema,
	grip: gripSchema,
	reach: reachSchema,
});

const figureSchema = open({
	value: z.number().describe("Snapped to what a bench works to"),
	exact: z.number(),
	sd: z.number(),
	band: bandSchema,
	step: z.number(),
	basis: z.enum([
		"wish",
		"measured",
		"published",
		"derived",
		"common-practice",
		"assumed",
	]),
	sureness: z.enum(["chosen", "firm", "fair", "rough"]),
	evidence: z.array(
		open({
			code: z.string(),
			value: z.number(),
			sd: z.number(),
			basis: z.string(),
			sources: z.array(z.string()),
			shareFraction: z.number().min(0).max(1),
		}),
	),
});

export const adviceResponseSchema = open({
	modelVersion: z.string(),
	gameId: z.string(),
	body: bodySchema,
	grip: gripSchema,
	reach: reachSchema,
	length: figureSchema.describe("mm"),
	mass: figureSchema.describe("g"),
	butt: open({
		figure: figureSchema.describe("mm"),
		rangeMm: bandSchema,
		wantedRangeMm: bandSchema,
		closure: z.string(),
		gripStationMm: z.number(),
		cautions: z.array(cautionSchema),
	}),
	tip: figureSchema.describe("mm"),
	balance: figureSchema.describe("mm from the butt end"),
	build: open({
		request: open({ shaftWood: z.string(), buttWood: z.string() }),
		design: designSchema,
		natural: massSchema,
		plan: z.union([
			open({ ok: z.literal(true), value: planSchema }),
			open({ ok: z.literal(false), refusals: z.array(refusalSchema) }),
		]),
	}),
	rules: z.array(ruleSchema),
	cautions: z.array(cautionSchema),
	isBuildable: z.boolean(),
});

export const problemDetailsSchema = open({
	type: z.string(),
	title: z.string(),
	status: z.number().int(),
	detail: z.string(),
	errors: z.array(
		open({
			pointer: z.string().optional(),
			field: z.string(),
			code: z.string(),
			value: z.unknown(),
			min: z.number().optional(),
			max: z.number().optional(),
		}),
	),
});
