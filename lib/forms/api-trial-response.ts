import { z } from "zod";
import { TRIAL_FIELDS, type TrialField } from "@/lib/trial/assumptions";
import { bandSchema, cautionSchema, open } from "./api-shapes";

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
