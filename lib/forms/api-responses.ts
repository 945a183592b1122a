import { z } from "zod";
import { TRIAL_FIELDS, type TrialField } from "@/lib/trial/assumptions";

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

const shareSchema = bandSchema.extend({
	value: z.number().describe("A share, or a difference of two"),
});
const scoreComparisonSchema = shareSchema.extend({
	luckChance: z.number().min(0).max(1),
});
const partsSchema = open({
	first: shareSchema,
	second: shareSchema,
	difference: shareSchema,
	luckChance: z.number().min(0).max(1),
});
const trialFieldSchema = z.enum(TRIAL_FIELDS);
const figuresOf = <Schema extends z.ZodType>(schema: Schema) =>
	open(
		Object.fromEntries(TRIAL_FIELDS.map((field) => [field, schema])) as Record<
			TrialField,
			Schema
		>,
	);
const beliefSchema = open({
	value: z.number(),
	sd: z.number().min(0),
	from: z.enum(["advice", "rack"]),
});

const trialAnalysisSchema = open({
	cues: z.array(
		open({
			cueId: z.string(),
			shots: z.number().int().min(0),
			pots: z.number().int().min(0),
			share: shareSchema.describe("Potted; Jeffreys' prior, 90 % interval"),
			line: open({
				onLine: shareSchema,
				leanLuckChance: z.number(),
			}).nullable(),
			position: shareSchema.nullable(),
		}),
	),
	comparisons: z.array(
		open({
			cueIds: z.array(z.string()).length(2),
			basis: z.enum(["pairs", "separate-shots"]),
			comparedShots: z.number().int().min(1),
			difference: shareSchema.extend({
				sd: z.number().min(0),
				chanceFirstHigher: z.number().min(0).max(1),
			}),
			luckChance: z
				.number()
				.min(0)
				.max(1)
				.describe(
					"How often equally good cues would differ this much or more (exact)",
				),
			luckChanceOfAll: z.number().min(0).max(1),
			verdict: z.enum(["apart", "leaning", "same", "open"]),
			moreForWidth: z.number().int().min(0),
			moreForPower: z.number().int().min(0).nullable(),
			withoutDrift: shareSchema,
			line: scoreComparisonSchema.nullable(),
			position: scoreComparisonSchema.nullable(),
		}),
	),
	session: open({
		warmUp: partsSchema.nullable(),
		drift: open({
			atStart: z.number(),
			atEnd: z.number(),
			luckChance: z.number().min(0).max(1),
		}).nullable(),
		order: partsSchema.nullable(),
	}),
	cautions: z.array(cautionSchema),
});

export const trialResponseSchema = open({
	analyses: z.array(trialAnalysisSchema).describe("One for each session"),
	preference: open({
		before: figuresOf(beliefSchema),
		best: figuresOf(open({ value: z.number(), sd: z.number().min(0) })),
	}),
	scores: z.array(
		open({
			cueId: z.string(),
			belowBest: z.number().min(0).describe("Log-odds below the best cue"),
			sd: z.number().min(0),
		}),
	),
	proposals: z
		.array(
			open({
				cueIds: z.array(z.string()).length(2),
				shotsEach: z.number().int().min(1),
				limitedBy: z.enum(["fewest", "most"]).nullable(),
				doubtBefore: z.number(),
				doubtAfter: z.number(),
				informationBits: z.number().min(0),
				expectedGain: z
					.number()
					.min(0)
					.describe("In the share of pots with the cue then thought best"),
			}),
		)
		.describe("The pair that teaches most first"),
	wishUpdates: z
		.array(
			open({
				field: trialFieldSchema,
				value: z.number(),
				sd: z.number().min(0),
				because: open({
					before: beliefSchema,
					sessions: z.number().int(),
					shots: z.number().int(),
					triedLow: z.number(),
					triedHigh: z.number(),
					shareOfDoubtRemoved: z.number(),
				}),
			}),
		)
		.describe("Offered, never applied"),
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
