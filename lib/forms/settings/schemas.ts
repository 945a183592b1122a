import { z } from "zod";
import { byId, WORKSHOP_CHOICES } from "@/lib/forms/workshop-offer";
import { PRICE_PARTS } from "@/lib/workshop/prices";
import type { SettingContents, SettingKind } from "@/lib/workshop/settings";

/*
 * The shape of each setting, as stored, imported and published. Bounds and what must agree with what
 * are lib/workshop/settings-check.ts, so that a refusal says the same wherever it comes from.
 */

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
const offerOf = <T extends z.ZodType>(id: T) =>
	z.strictObject({
		id,
		tier,
	});

const header = z.strictObject({
	basis,
	name: z.string(),
	lines: z.array(z.string()),
	contact: z.string(),
	publicAddress: z.string(),
	paper: z.enum(["a4", "letter"]),
	units: z.enum(["metric", "trade"]),
	language: z.enum(["en", "de"]),
	followsDevice: z.boolean(),
	warrantyText: z.string(),
});

const catalogue = z.strictObject({
	basis,
	games: byId(
		game,
		z.strictObject({ shaftWoods: z.array(wood), layouts: z.array(layout) }),
	),
	buttWoods: z.array(offerOf(wood)),
	veneerWoods: z.array(wood),
	splices: z.array(offerOf(splice)),
	taperShapes: z.array(taperShape),
	ferruleMetals: z.array(ferruleMetal),
	tips: z.array(z.strictObject({ name: z.string(), heightMm: z.number() })),
	jointMetals: z.array(metal),
	endPiecesMm: z.array(z.number()),
	cases: z.array(
		z.strictObject({ name: z.string(), longestPieceMm: z.number() }),
	),
	addedMetal: metal,
	lengthMm: range,
	buttDiameterMm: range,
	tipDiameterMm: range,
});

const billet = { label: z.string(), moisturePct: z.number().nullable() };

const stock = z.strictObject({
	basis,
	woods: z.array(
		z.strictObject({
			wood,
			grade: z.string(),
			ringSpacingMm: z.number().nullable(),
			count: z.number(),
			billets: z.array(
				z.union([
					z.strictObject({ ...billet, densityKgM3: z.number() }),
					z.strictObject({
						...billet,
						massG: z.number(),
						volumeCm3: z.number(),
					}),
				]),
			),
			stated: z.strictObject({ kgM3: z.number(), sd: z.number() }).nullable(),
		}),
	),
});

const prices = z.strictObject({
	basis,
	currency: z.string(),
	minorPerUnit: z.number(),
	spreadFraction: z.number(),
	rows: z.array(
		z.strictObject({
			part: z.enum(PRICE_PARTS),
			choice: z.string(),
			labourMinor: z.number(),
			materialMinor: z.number(),
		}),
	),
});

const leadTimes = z.strictObject({
	basis,
	openWeekdays: z.array(z.number()),
	closed: z.array(
		z.strictObject({ from: z.string(), to: z.string(), note: z.string() }),
	),
	cuesPerWeek: z.number(),
	baseDays: z.number(),
	spliceDays: byId(splice, z.number()),
	layoutDays: byId(layout, z.number()),
	buttWoodDays: z.partialRecord(wood, z.number()),
	addedWeightDays: z.number(),
	pointsBetweenDays: z.number(),
	frontWedgeDays: z.number(),
	allRoundWedgeDays: z.number(),
	veneerDays: z.number(),
	endPieceDays: z.number(),
});

export const SETTING_SCHEMAS: {
	readonly [K in SettingKind]: z.ZodType<SettingContents[K]>;
} = {
	header,
	catalogue,
	stock,
	prices,
	"lead-times": leadTimes,
};
