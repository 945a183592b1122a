import { inventedCatalogue } from "@/lib/advice/catalogue";
import { INVENTED_PRICE_LIST } from "@/lib/price/list";
import type { GameId } from "@/lib/reference/rules";
import { GAMES } from "@/lib/reference/rules";
import { WOOD_IDS, WOODS } from "@/lib/reference/woods";
import type { LeadTimes } from "./lead-time";
import type { PricePart, PriceRow, Prices } from "./prices";
import type { Header, Settings, WorkshopCatalogue } from "./settings";

/*
 * What holds while a workshop has set nothing: an invented plain one, marked so wherever it shows. The
 * order of the amounts and days is common practice of the trade, no source: hand splice over machine
 * over plain, ebony over rosewood over walnut, each joint and decoration on top.
 */

const header: Header = {
	basis: "invented",
	name: "",
	lines: [],
	contact: "",
	publicAddress: "",
	paper: "a4",
	units: "metric",
	language: "en",
	followsDevice: true,
	warrantyText: "",
};

const plain = inventedCatalogue("snooker");

const catalogue: WorkshopCatalogue = {
	basis: "invented",
	games: Object.fromEntries(
		(Object.keys(GAMES) as GameId[]).map((gameId) => {
			const { shaftWoods, layouts } = inventedCatalogue(gameId);
			return [gameId, { shaftWoods, layouts }];
		}),
	) as WorkshopCatalogue["games"],
	buttWoods: plain.buttWoods,
	veneerWoods: WOOD_IDS.filter((id) => WOODS[id].uses.includes("veneer")),
	splices: plain.splices,
	taperShapes: plain.taperShapes,
	ferruleMetals: ["brass", "stainless-steel"],
	tips: [
		{ name: "Pressed leather", heightMm: 4 },
		{ name: "Layered leather", heightMm: 5 },
	],
	jointMetals: ["brass", "stainless-steel"],
	endPiecesMm: [150],
	cases: [
		{ name: "Three-quarter case", longestPieceMm: 1120 },
		{ name: "Two-piece case", longestPieceMm: 800 },
		{ name: "One-piece case", longestPieceMm: 1560 },
	],
	addedMetal: plain.addedMetal,
	lengthMm: plain.lengthMm,
	buttDiameterMm: plain.buttDiameterMm,
	tipDiameterMm: plain.tipDiameterMm,
};

/** An invented split of the invented amounts into work and material. */
const split = (
	part: PricePart,
	choice: string,
	amount: number,
	materialShare: number,
): PriceRow => {
	const materialMinor = Math.round(amount * materialShare);
	return { part, choice, labourMinor: amount - materialMinor, materialMinor };
};
const each = (
	part: PricePart,
	amounts: Readonly<Record<string, number>>,
	materialShare: number,
): PriceRow[] =>
	Object.entries(amounts).map(([choice, amount]) =>
		split(part, choice, amount, materialShare),
	);

const list = INVENTED_PRICE_LIST;
const prices: Prices = {
	basis: "invented",
	currency: list.currency,
	minorPerUnit: list.minorPerUnit,
	spreadFraction: list.spreadFraction,
	rows: [
		split("base", "", list.baseMinor, 0.1),
		...each("splice", list.spliceMinor, 0),
		...each("layout", list.layoutMinor, 0.4),
		...each("shaft-wood", list.shaftWoodMinor, 1),
		...each("butt-wood", list.buttWoodMinor, 1),
		split("added-weight", "", list.addedWeightMinor, 0.25),
		split("points-between", "", list.pointsBetweenMinor, 0.2),
		split("front-wedge", "", list.frontWedgeMinor, 0.3),
		split("all-round-wedges", "", list.allRoundWedgeMinor, 0.3),
		split("veneers", "", list.veneerMinor, 0.2),
		split("end-piece", "", list.endPieceMinor, 0.4),
		...each("ferrule", { brass: 0, "stainless-steel": 0 }, 1),
		...each("tip", { "Pressed leather": 0, "Layered leather": 1_500 }, 1),
		...each(
			"case",
			{
				"Three-quarter case": 6_000,
				"Two-piece case": 5_500,
				"One-piece case": 4_500,
			},
			1,
		),
	],
};

const leadTimes: LeadTimes = {
	basis: "invented",
	openWeekdays: [1, 2, 3, 4, 5],
	closed: [],
	cuesPerWeek: 2,
	baseDays: 10,
	spliceDays: { plain: 0, "machine-four-point": 1, "hand-four-point": 3 },
	layoutDays: { "one-piece": 0, "three-quarter": 1, centre: 1 },
	buttWoodDays: { snakewood: 15 },
	addedWeightDays: 0.5,
	pointsBetweenDays: 2,
	frontWedgeDays: 1,
	allRoundWedgeDays: 0.5,
	veneerDays: 0.5,
	endPieceDays: 1,
};

/** Invented, all of it: no workshop has confirmed any part. */
export const DEFAULT_SETTINGS: Settings = {
	header,
	catalogue,
	stock: { basis: "invented", woods: [] },
	prices,
	leadTimes,
	evidence: {},
};
