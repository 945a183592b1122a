import { z } from "zod";
import type { FittingInput } from "@/lib/advice/input";
import { BOUNDS, MAX_GRIP_READINGS, type QuantityBound } from "./bounds";
import { CHOICES } from "./choices";
import { workshopOfferSchema } from "./workshop-offer";

const quantity = ({ min, max }: QuantityBound) => z.number().min(min).max(max);

/**
 * The domain input in numbers, as the API takes it and as the typed form is turned into it.
 * Unknown keys are refused: a misspelt field would otherwise be silently estimated.
 */
export const playerSchema = z.strictObject({
	ageYears: quantity(BOUNDS.ageYears).optional(),
	sex: z.enum(CHOICES.sex).optional(),
	statureMm: quantity(BOUNDS.statureMm).optional(),
	armSpanMm: quantity(BOUNDS.armSpanMm).optional(),
	handLengthMm: quantity(BOUNDS.handLengthMm).optional(),
	shoulderToElbowMm: quantity(BOUNDS.shoulderToElbowMm).optional(),
	elbowToGripMm: quantity(BOUNDS.elbowToGripMm).optional(),
	shoulderBreadthMm: quantity(BOUNDS.shoulderBreadthMm).optional(),
	gripCircleReadingsMm: z
		.array(quantity(BOUNDS.gripCircleReadingMm))
		.max(MAX_GRIP_READINGS)
		.optional(),
});

export const stanceSchema = z.strictObject({
	gameId: z.enum(CHOICES.game).default("snooker"),
	stance: z.enum(CHOICES.stance).optional(),
	posture: z.enum(CHOICES.posture).optional(),
	bridgeArm: z.enum(CHOICES.bridgeArm).optional(),
	bridgeLengthMm: quantity(BOUNDS.bridgeLengthMm).optional(),
	gripFromButtMm: quantity(BOUNDS.gripFromButtMm).optional(),
	bridgeToGripMm: quantity(BOUNDS.bridgeToGripMm).optional(),
	cueInHandMm: quantity(BOUNDS.cueInHandMm).optional(),
	clothHeightMm: quantity(BOUNDS.clothHeightMm).optional(),
	seated: z.boolean().optional(),
	standingFrame: z.boolean().optional(),
	glasses: z.boolean().optional(),
	handed: z.enum(CHOICES.hand).optional(),
	trunkMaxDeg: quantity(BOUNDS.trunkMaxDeg).optional(),
	neckExtensionMaxDeg: quantity(BOUNDS.neckExtensionMaxDeg).optional(),
	bridgeElbowMaxDeg: quantity(BOUNDS.bridgeElbowMaxDeg).optional(),
});

export const presentCueSchema = z.strictObject({
	lengthMm: quantity(BOUNDS.cueLengthMm).optional(),
	massG: quantity(BOUNDS.cueMassG).optional(),
	buttDiameterMm: quantity(BOUNDS.presentButtDiameterMm).optional(),
	tipDiameterMm: quantity(BOUNDS.tipDiameterMm).optional(),
	diameterAt300Mm: quantity(BOUNDS.presentButtDiameterMm).optional(),
	diameterAt700Mm: quantity(BOUNDS.presentShaftDiameterMm).optional(),
	balanceFromButtMm: quantity(BOUNDS.balanceFromButtMm).optional(),
	likes: z.array(z.enum(CHOICES.liked)).optional(),
	dislikes: z.array(z.enum(CHOICES.complaint)).optional(),
});

export const wishesSchema = z.strictObject({
	lengthMm: quantity(BOUNDS.cueLengthMm).optional(),
	massG: quantity(BOUNDS.cueMassG).optional(),
	buttDiameterMm: quantity(BOUNDS.buttDiameterMm).optional(),
	tipDiameterMm: quantity(BOUNDS.tipDiameterMm).optional(),
	closure: z.enum(CHOICES.closure).optional(),
	buttWood: z.enum(CHOICES.buttWood).optional(),
	shaftWood: z.enum(CHOICES.shaftWood).optional(),
	splice: z.enum(CHOICES.splice).optional(),
	layout: z.enum(CHOICES.layout).optional(),
	taperShape: z.enum(CHOICES.taperShape).optional(),
	ferruleMetal: z.enum(CHOICES.ferruleMetal).optional(),
});

const wishSpreadOf = ({ min, max }: QuantityBound) =>
	z
		.strictObject({
			value: quantity({ min, max }),
			sd: z
				.number()
				.positive()
				.max(max - min),
			sessions: z.number().int().min(1),
			shots: z.number().int().min(1),
		})
		.optional();

/** Spread of the wishes that trials gave. */
export const wishSpreadSchema = z.strictObject({
	lengthMm: wishSpreadOf(BOUNDS.cueLengthMm),
	massG: wishSpreadOf(BOUNDS.cueMassG),
	buttDiameterMm: wishSpreadOf(BOUNDS.buttDiameterMm),
	tipDiameterMm: wishSpreadOf(BOUNDS.tipDiameterMm),
});

export const prioritiesSchema = z.strictObject({
	more: z.array(z.enum(CHOICES.criterion)).optional(),
	none: z.array(z.enum(CHOICES.criterion)).optional(),
	doctrine: z
		.strictObject({
			steadiness: z.enum(CHOICES.steadiness).optional(),
			stiffness: z.enum(CHOICES.stiffness).optional(),
			deflection: z.enum(CHOICES.deflection).optional(),
		})
		.optional(),
	longestPieceMm: quantity(BOUNDS.longestPieceMm).optional(),
	maxPriceMinor: quantity(BOUNDS.maxPriceMinor).int().optional(),
});

export const fittingInputSchema = z.strictObject({
	player: playerSchema.prefault({}),
	stance: stanceSchema.prefault({}),
	hand: z.enum(CHOICES.hand).optional(),
	level: z.enum(CHOICES.level).optional(),
	presentCue: presentCueSchema.prefault({}),
	wishes: wishesSchema.prefault({}),
	wishSpread: wishSpreadSchema.optional(),
	budget: z.enum(CHOICES.budget).optional(),
	priorities: prioritiesSchema.optional(),
	/** Tried and not possible, unlike what was not asked. No figure moves by it. */
	notMeasured: z.array(z.enum(CHOICES.measure)).optional(),
	measuredAlone: z.boolean().optional(),
	/** What the workshop makes, weighs and charges. */
	workshop: workshopOfferSchema.optional(),
}) satisfies z.ZodType<FittingInput, unknown>;
