import { z } from "zod";
import { bandSchema, cautionSchema, estimateSchema, open } from "./api-shapes";

export const bodySchema = open({
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
export const gripSchema = open({
	circleMm: estimateSchema,
	readingCount: z.number().int().min(0),
	spreadMm: z.number().nullable(),
	cautions: z.array(cautionSchema),
});
export const reachSchema = open({
	bridgeToGripMm: estimateSchema,
	bridgeLengthMm: estimateSchema,
	gripFromButtMm: estimateSchema,
	lengthMm: estimateSchema,
	lengthWindowMm: bandSchema,
	cautions: z.array(cautionSchema),
});

const bandedSchema = estimateSchema.extend({
	band: bandSchema.describe("Where nine in ten lie"),
});
const pointSchema = open({
	x: z.number(),
	y: z.number(),
	z: z.number(),
}).describe(
	"mm from the floor under the bridge hand: x along the shot, y to its left, z up",
);
const poseSchema = open({
	joints: z.record(z.string(), pointSchema),
	legs: z.record(z.string(), pointSchema).nullable(),
	spanMm: z.number(),
	stepMm: z.number(),
	clothHeightMm: z.number(),
	chinAboveCueMm: z.number(),
	anglesDeg: z.record(z.string(), z.number()),
	shortfalls: z.array(
		open({
			code: z.string(),
			value: z.number(),
			bound: z.number(),
			unit: z.enum(["mm", "deg", "ratio"]),
		}),
	),
	residualMm: z.number(),
	converged: z.boolean(),
	standing: estimateSchema.shape.standing,
	sources: z.array(z.string()),
});
const holdSchema = open({
	angleDeg: z.number(),
	zone: z.enum(["no-limit-printed", "time-limited", "past-limit"]),
	longestS: z.number().nullable(),
});
const growthSchema = open({
	ageYears: z.number(),
	percentiles: z.array(
		open({
			sex: z.enum(["female", "male"]),
			z: z.number(),
			percentile: z.number(),
		}),
	),
	plan: open({
		cueLengthMm: z.number(),
		steps: z.array(
			open({
				months: z.number(),
				onDate: z.string(),
				statureMm: estimateSchema,
				lengthMm: estimateSchema,
				circleMm: estimateSchema.nullable(),
				lackMm: bandSchema,
				fitting: z.enum(["as-it-is", "end-piece", "extension", "new-cue"]),
			}),
		),
		remeasureMonths: z.number().nullable(),
		remeasureOn: z.string().nullable(),
		addPieceMonths: open({
			soonest: z.number().nullable(),
			likely: z.number().nullable(),
		}).nullable(),
		cautions: z.array(cautionSchema),
	}),
});

export const fitResponseSchema = open({
	body: bodySchema.extend({
		statureMm: bandedSchema,
		armSpanMm: bandedSchema,
		shoulderToElbowMm: bandedSchema,
		elbowToGripMm: bandedSchema,
		shoulderBreadthMm: bandedSchema,
		shoulderHeightMm: bandedSchema,
		eyeHeightMm: bandedSchema,
		chinHeightMm: bandedSchema,
		hipHeightMm: bandedSchema,
		handLengthMm: bandedSchema,
	}),
	grip: gripSchema.extend({ circleMm: bandedSchema }),
	reach: reachSchema.extend({
		bridgeToGripMm: bandedSchema,
		bridgeLengthMm: bandedSchema,
		gripFromButtMm: bandedSchema,
		lengthMm: bandedSchema,
		predictedSpanMm: bandedSchema,
	}),
	pose: poseSchema,
	closure: open({
		lengthMm: z.number(),
		tipDiameterMm: z.number(),
		buttDiameterMm: z.number(),
		places: z.array(
			open({
				place: z.enum(["back", "usual", "forward"]),
				fromButtMm: z.number(),
				diameterMm: z.number(),
				closureMm: bandedSchema.describe(
					"Arc between the pads: + gap, − overlap",
				),
			}),
		),
		cautions: z.array(cautionSchema),
	}),
	posture: open({
		trunk: holdSchema,
		head: holdSchema,
		neckDeg: z.number(),
		neckZone: holdSchema.shape.zone,
		sideBendDeg: z.number(),
		shortestHoldS: z.number().nullable(),
		cautions: z.array(cautionSchema),
	}).describe("ISO 11226 holding times, for adults; no statement on harm"),
	growth: growthSchema.nullable(),
});
