import { z } from "zod";
import {
	MOST_SHOTS,
	SHOTS_EACH,
	type TrialField,
} from "@/lib/trial/assumptions";
import { CUES_IN_TRIAL, LETTERS } from "@/lib/trial/order";
import { BOUNDS, type QuantityBound } from "./bounds";
import type { TextFieldName } from "./fitting";

const quantity = ({ min, max }: QuantityBound) => z.number().min(min).max(max);
const idSchema = z.string().min(1).max(64);

/** Bounds of the known figures of a cue to try; any cue that is played, not only one that is built here. */
export const TRIAL_BOUNDS = {
	lengthMm: BOUNDS.cueLengthMm,
	massG: BOUNDS.cueMassG,
	buttDiameterMm: BOUNDS.presentButtDiameterMm,
	tipDiameterMm: BOUNDS.tipDiameterMm,
	balanceFromButtMm: BOUNDS.balanceFromButtMm,
} as const;

const figures = {
	lengthMm: quantity(TRIAL_BOUNDS.lengthMm),
	massG: quantity(TRIAL_BOUNDS.massG),
	buttDiameterMm: quantity(TRIAL_BOUNDS.buttDiameterMm),
	tipDiameterMm: quantity(TRIAL_BOUNDS.tipDiameterMm),
	balanceFromButtMm: quantity(TRIAL_BOUNDS.balanceFromButtMm),
};
const nameSchema = z.string().trim().min(1).max(60);

/** What is recorded of a cue of the rack. */
export const rackCueFieldsSchema = z.strictObject({
	name: nameSchema,
	...figures,
	notes: z.string().trim().max(1000),
});
export type RackCueFields = z.infer<typeof rackCueFieldsSchema>;

/** A cue as the computation takes it. */
export const rackCueSchema = z.strictObject({
	id: idSchema,
	name: nameSchema,
	...figures,
	isAvailable: z.boolean().optional(),
});

const LINES = ["left", "on", "right"] as const;
const POSITIONS = ["good", "near", "lost"] as const;
const outcome = {
	isPotted: z.boolean(),
	line: z.enum(LINES).optional(),
	position: z.enum(POSITIONS).optional(),
};

/** A shot as the computation takes it. */
export const shotSchema = z.strictObject({
	cueId: idSchema,
	...outcome,
	round: z.number().int().min(0).max(MOST_SHOTS).optional(),
	pair: z.number().int().min(0).max(MOST_SHOTS).optional(),
});

export const sessionSchema = z.strictObject({
	shots: z.array(shotSchema).max(MOST_SHOTS),
	isPaired: z.boolean().default(true),
	plannedShots: z.number().int().min(1).max(MOST_SHOTS).optional(),
});

const beliefSchema = (bound: QuantityBound) =>
	z.strictObject({
		value: quantity(bound),
		sd: z
			.number()
			.positive()
			.max(bound.max - bound.min),
	});

/** What the advice holds best, where it says anything. */
export const targetSchema = z.strictObject({
	lengthMm: beliefSchema(TRIAL_BOUNDS.lengthMm).optional(),
	massG: beliefSchema(TRIAL_BOUNDS.massG).optional(),
	buttDiameterMm: beliefSchema(TRIAL_BOUNDS.buttDiameterMm).optional(),
	tipDiameterMm: beliefSchema(TRIAL_BOUNDS.tipDiameterMm).optional(),
	balanceFromButtMm: beliefSchema(TRIAL_BOUNDS.balanceFromButtMm).optional(),
});

const letterSchema = z.enum(LETTERS);

/** A trial's plan as stored with it: cues as they were, their letters, the order. */
export const trialPlanSchema = z.strictObject({
	cues: z
		.array(
			z.strictObject({
				letter: letterSchema,
				cueId: idSchema,
				name: nameSchema,
				...figures,
			}),
		)
		.min(CUES_IN_TRIAL.min)
		.max(CUES_IN_TRIAL.max),
	rounds: z.array(z.array(letterSchema)).min(1),
	shotsPerTurn: z.number().int().min(1),
	/** The same set-ups are shot with each cue. */
	isPaired: z.boolean(),
	/** The player knows the cues by letter only until the trial has ended. */
	isHidden: z.boolean(),
});
export type TrialPlan = z.infer<typeof trialPlanSchema>;

/** Shots with a cue before it is changed. */
export const SHOTS_PER_TURN = { min: 1, max: 20 } as const;

/** What starting a trial asks. */
export const startTrialSchema = z.strictObject({
	playerId: idSchema,
	cueIds: z
		.array(idSchema)
		.min(CUES_IN_TRIAL.min)
		.max(CUES_IN_TRIAL.max)
		.refine((ids) => new Set(ids).size === ids.length, "the same cue twice"),
	shotsEach: z.number().int().min(1).max(SHOTS_EACH.most),
	shotsPerTurn: z
		.number()
		.int()
		.min(SHOTS_PER_TURN.min)
		.max(SHOTS_PER_TURN.max),
	isPaired: z.boolean(),
	isHidden: z.boolean(),
});
export type StartTrial = z.infer<typeof startTrialSchema>;

const keySchema = z.uuid();

/** What a device does to the shots of a trial, in order; each may be sent again without harm. */
export const shotChangeSchema = z.discriminatedUnion("kind", [
	z.strictObject({
		kind: z.literal("put"),
		requestKey: keySchema,
		shotNumber: z.number().int().min(0).max(MOST_SHOTS),
		...outcome,
	}),
	z.strictObject({ kind: z.literal("take-back"), requestKey: keySchema }),
]);
export type ShotChange = z.infer<typeof shotChangeSchema>;
export const shotChangesSchema = z.array(shotChangeSchema).max(2 * MOST_SHOTS);

/** The wish of a fitting that a figure of a trial can set; a balance cannot be wished for there. */
export const WISH_OF: Readonly<Record<TrialField, TextFieldName | null>> = {
	lengthMm: "wishLength",
	massG: "wishMass",
	buttDiameterMm: "wishButt",
	tipDiameterMm: "wishTip",
	balanceFromButtMm: null,
};

/** The answer as it would be typed: whole millimetres and grams, diameters to 0.1 mm. */
export function wishAnswer(field: TrialField, value: number): string {
	if (field === "massG") return `${Math.round(value)} g`;
	const isDiameter = field === "buttDiameterMm" || field === "tipDiameterMm";
	return `${isDiameter ? Math.round(value * 10) / 10 : Math.round(value)} mm`;
}
