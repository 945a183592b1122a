import { z } from "zod";
import { bodySchema, gripSchema, reachSchema } from "./api-fit-response";
import {
	bandSchema,
	cautionSchema,
	estimateSchema,
	open,
	refusalSchema,
} from "./api-shapes";

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
	implied: open({
		woods: z.array(
			open({
				wood: z.string(),
				beforeKgM3: estimateSchema,
				impliedKgM3: estimateSchema,
			}),
		),
		densities: z.record(z.string(), open({ kgM3: z.number(), sd: z.number() })),
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
	search: open({
		counts: open({
			candidates: z.number().int(),
			buildable: z.number().int(),
			acceptable: z.number().int(),
			nonDominated: z.number().int(),
			isEverythingFixed: z.boolean(),
		}),
		criteria: z.array(
			open({ id: z.string(), unit: z.string(), weight: z.number() }),
		),
		options: z.array(
			open({
				request: open({ shaftWood: z.string(), buttWood: z.string() }),
				wantedMassG: z.number().nullable(),
				overall: z.number(),
				overallBand: bandSchema,
				snappingCost: z.number(),
				price: open({ totalMinor: z.number(), currency: z.string() }),
			}),
		),
		compared: z.array(
			open({
				first: z.number().int(),
				second: z.number().int(),
				tooClose: z.boolean(),
			}),
		),
		arguments: z.array(open({ choice: z.string() })),
		cautions: z.array(cautionSchema),
	}),
});

const keptSchema = open({
	was: z.number(),
	becomes: z.number(),
	feltSteps: z.number(),
	isKept: z.boolean(),
});
export const presentCueResponseSchema = open({
	fit: open({
		inertiaAboutBalanceKgM2: estimateSchema,
		inertiaAboutGripKgM2: estimateSchema.nullable(),
		addedMassG: estimateSchema,
		cautions: z.array(cautionSchema),
	}),
	likeMine: open({
		variants: z.array(
			open({
				taper: z.string(),
				stiffness: keptSchema,
				pairs: z.array(
					open({
						keeps: z.array(z.string()),
						isMet: z.boolean(),
						mass: keptSchema,
						balance: keptSchema,
						inertia: keptSchema,
					}),
				),
			}),
		),
		cannotKeep: z.array(z.string()),
	}).nullable(),
});
