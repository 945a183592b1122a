import { z } from "zod";
import type { WorkshopOffer } from "@/lib/advice/workshop-offer";
import type {
	FerruleMetalId,
	LayoutId,
	SpliceId,
	TaperShapeId,
} from "@/lib/cue/design";
import { TAPER_SHAPES } from "@/lib/cue/taper";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOOD_IDS } from "@/lib/reference/woods";
import { CHOICES_OF } from "@/lib/workshop/prices-check";

/** One member for each id, none missing. */
export const byId = <Id extends string, T extends z.ZodType>(
	ids: z.ZodEnum<Record<Id, Id>>,
	one: T,
) =>
	z.strictObject(
		Object.fromEntries(ids.options.map((id) => [id, one])) as Record<Id, T>,
	);

/** What a workshop chooses among, as schemas. */
export const WORKSHOP_CHOICES = {
	basis: z.enum(["invented", "workshop"]),
	wood: z.enum(WOOD_IDS),
	game: z.enum(Object.keys(GAMES) as GameId[]),
	metal: z.enum(Object.keys(METALS) as MetalId[]),
	splice: z.enum(CHOICES_OF.splice as SpliceId[]),
	layout: z.enum(CHOICES_OF.layout as LayoutId[]),
	ferruleMetal: z.enum(CHOICES_OF.ferrule as FerruleMetalId[]),
	taperShape: z.enum(Object.keys(TAPER_SHAPES) as TaperShapeId[]),
	tier: z.union([z.literal(0), z.literal(1), z.literal(2)]),
	range: z.tuple([z.number(), z.number()]),
} as const;

const {
	basis,
	wood,
	game,
	metal,
	splice,
	layout,
	ferruleMetal,
	taperShape,
	tier,
	range,
} = WORKSHOP_CHOICES;

/** More than there are of anything: repeats are no use to anyone. */
const list = <T extends z.ZodType>(one: T) => z.array(one).max(WOOD_IDS.length);
const amount = z.number();

/** A workshop's offer as a body or a saved spec holds it. What it may hold beyond the shape is told by refusals. */
export const workshopOfferSchema = z.strictObject({
	basis,
	games: byId(
		game,
		z.strictObject({ shaftWoods: list(wood), layouts: list(layout) }),
	),
	buttWoods: list(z.strictObject({ id: wood, tier })),
	splices: list(z.strictObject({ id: splice, tier })),
	taperShapes: list(taperShape),
	ferruleMetals: list(ferruleMetal),
	addedMetal: metal,
	lengthMm: range,
	buttDiameterMm: range,
	tipDiameterMm: range,
	densities: z
		.partialRecord(wood, z.strictObject({ kgM3: z.number(), sd: z.number() }))
		.optional(),
	priceList: z.strictObject({
		basis,
		currency: z.string().length(3),
		minorPerUnit: amount,
		baseMinor: amount,
		spliceMinor: byId(splice, amount),
		layoutMinor: byId(layout, amount),
		shaftWoodMinor: z.partialRecord(wood, amount),
		buttWoodMinor: z.partialRecord(wood, amount),
		ferruleMinor: z.partialRecord(ferruleMetal, amount).optional(),
		addedWeightMinor: amount,
		pointsBetweenMinor: amount,
		frontWedgeMinor: amount,
		allRoundWedgeMinor: amount,
		veneerMinor: amount,
		endPieceMinor: amount,
		spreadFraction: z.number(),
	}),
}) satisfies z.ZodType<WorkshopOffer>;
