import type { WorkshopOffer } from "@/lib/advice/workshop-offer";
import type {
	CueRequest,
	FerruleMetalId,
	FlatRequest,
	LayoutId,
	SpliceId,
	TaperShapeId,
	Veneer,
} from "@/lib/cue/design";
import type { MetalId } from "@/lib/reference/metals";
import { GAMES, type GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { LeadTimes } from "./lead-time";
import { priceOf } from "./prices";
import {
	type CaseOffer,
	offerOf,
	type Settings,
	type TipOffer,
} from "./settings";

/** Everything a customer decides of a cue online. Null: left to the workshop, or none. */
export interface OnlineChoices {
	readonly gameId: GameId;
	readonly lengthMm: number;
	readonly layout: LayoutId;
	readonly jointFromButtMm: number | null;
	readonly jointMetal: MetalId;
	readonly endPieceMm: number | null;
	readonly buttDiameterMm: number;
	readonly tipDiameterMm: number;
	readonly taperShape: TaperShapeId;
	readonly shaftWood: WoodId;
	readonly buttWood: WoodId;
	readonly splice: SpliceId;
	/** Where the first four points come to the surface. */
	readonly pointsFromButtMm: number | null;
	readonly pointsBetween: WoodId | null;
	readonly frontWedge: WoodId | null;
	/** Equal wedges all round. */
	readonly wedges: WoodId | null;
	readonly wedgeCount: number;
	/** Under the first four points; all alike. */
	readonly veneer: WoodId | null;
	readonly veneerCount: number;
	readonly veneerMm: number;
	readonly ferruleMetal: FerruleMetalId;
	/** In the workshop's own names. */
	readonly tip: string | null;
	readonly case: string | null;
	readonly massG: number | null;
	readonly balanceFromButtMm: number | null;
	/** Whether the cue, once made, will cross a border. */
	readonly isGoingAbroad: boolean;
}

export type OnlineField = keyof OnlineChoices;

interface Priced {
	/** Null where the price list has no amount for it. */
	readonly priceMinor: number | null;
}

/**
 * What of the workshop's settings a customer's page works with: catalogue, densities, amounts and days.
 * Plain JSON, without labour and material apart, billets or notes.
 */
export interface OnlineOffer {
	readonly workshop: WorkshopOffer;
	readonly veneerWoods: readonly WoodId[];
	readonly tips: readonly (TipOffer & Priced)[];
	readonly jointMetals: readonly MetalId[];
	readonly endPiecesMm: readonly number[];
	readonly cases: readonly (CaseOffer & Priced)[];
	readonly leadTimes: LeadTimes;
	/** Cues not yet begun that are made first. */
	readonly cuesAhead: number;
	/** ISO date from which the lead time counts. */
	readonly from: string;
}

export function onlineOfferOf(
	settings: Settings,
	now: Pick<OnlineOffer, "cuesAhead" | "from">,
): OnlineOffer {
	const { catalogue, prices, leadTimes } = settings;
	const priced =
		(part: "tip" | "case") =>
		<T extends { readonly name: string }>(one: T) => ({
			...one,
			priceMinor: priceOf(prices, part, one.name),
		});
	return {
		workshop: offerOf(settings),
		veneerWoods: catalogue.veneerWoods,
		tips: catalogue.tips.map(priced("tip")),
		jointMetals: catalogue.jointMetals,
		endPiecesMm: catalogue.endPiecesMm,
		cases: catalogue.cases.map(priced("case")),
		leadTimes: {
			...leadTimes,
			closed: leadTimes.closed.map((days) => ({ ...days, note: "" })),
		},
		...now,
	};
}

/** What a wedge or the points between can be of: the butt woods, and the woods cut as veneers. */
const wedgeWoods = ({ workshop, veneerWoods }: OnlineOffer) => [
	...new Set([...workshop.buttWoods.map(({ id }) => id), ...veneerWoods]),
];

/** The catalogue of each choice that has one, usual first; a choice that may be none lists null last. */
export function optionsFor(offer: OnlineOffer, gameId: GameId) {
	const { workshop } = offer;
	const wedges = [...wedgeWoods(offer), null];
	return {
		gameId: Object.keys(GAMES) as GameId[],
		layout: workshop.games[gameId].layouts,
		jointMetal: offer.jointMetals,
		endPieceMm: [...offer.endPiecesMm, null],
		taperShape: workshop.taperShapes,
		shaftWood: workshop.games[gameId].shaftWoods,
		buttWood: workshop.buttWoods.map(({ id }) => id),
		splice: workshop.splices.map(({ id }) => id),
		pointsBetween: wedges,
		frontWedge: wedges,
		wedges,
		veneer: [...offer.veneerWoods, null],
		ferruleMetal: workshop.ferruleMetals,
		tip: offer.tips.map(({ name }) => name),
		case: [...offer.cases.map(({ name }) => name), null],
	} as const satisfies Partial<{
		[Field in OnlineField]: readonly OnlineChoices[Field][];
	}>;
}

export type CataloguedField = keyof ReturnType<typeof optionsFor>;
export const CATALOGUED = [
	"gameId",
	"layout",
	"jointMetal",
	"endPieceMm",
	"taperShape",
	"shaftWood",
	"buttWood",
	"splice",
	"pointsBetween",
	"frontWedge",
	"wedges",
	"veneer",
	"ferruleMetal",
	"tip",
	"case",
] as const satisfies readonly CataloguedField[];

const middle = ([low, high]: readonly [number, number]) => (low + high) / 2;
const within = (value: number, [low, high]: readonly [number, number]) =>
	Math.min(high, Math.max(low, value));
/** A butt most hands take. Common practice, no source. */
const USUAL_BUTT_MM = 29;
/** Sheets of a veneered splice, and wedges all round. Common practice, no source. */
const USUAL_VENEER = { count: 1, thicknessMm: 0.6 } as const;
const USUAL_WEDGES = 4;

/** The first of a list, which the workshop's catalogue always has. */
function first<T>(list: readonly T[], what: string): T {
	const [one] = list;
	if (one === undefined) throw new RangeError(`the workshop offers no ${what}`);
	return one;
}

/** What a cue of a game is until the customer says otherwise: the workshop's usual, plain, for the middle of the game's usual figures. */
export function usualOnline(
	offer: OnlineOffer,
	gameId: GameId = "snooker",
): OnlineChoices {
	const { workshop } = offer;
	const options = optionsFor(offer, gameId);
	const { usual } = GAMES[gameId];
	return {
		gameId,
		lengthMm: within(Math.round(middle(usual.lengthMm)), workshop.lengthMm),
		layout: first(options.layout, "layouts"),
		jointFromButtMm: null,
		jointMetal: first(options.jointMetal, "joint metals"),
		endPieceMm: null,
		buttDiameterMm: within(USUAL_BUTT_MM, workshop.buttDiameterMm),
		tipDiameterMm: within(
			Math.round(4 * middle(usual.tipMm)) / 4,
			workshop.tipDiameterMm,
		),
		taperShape: first(options.taperShape, "tapers"),
		shaftWood: first(options.shaftWood, "shaft woods"),
		buttWood: first(options.buttWood, "butt woods"),
		splice: first(options.splice, "splices"),
		pointsFromButtMm: null,
		pointsBetween: null,
		frontWedge: null,
		wedges: null,
		wedgeCount: USUAL_WEDGES,
		veneer: null,
		veneerCount: USUAL_VENEER.count,
		veneerMm: USUAL_VENEER.thicknessMm,
		ferruleMetal: first(options.ferruleMetal, "ferrules"),
		tip: first(options.tip, "tips"),
		case: null,
		massG: null,
		balanceFromButtMm: null,
		isGoingAbroad: false,
	};
}

/** The choices as the models take them. */
export function requestOf(
	choices: OnlineChoices,
	offer: OnlineOffer,
): CueRequest {
	const { pointsFromButtMm, wedges, tip, jointFromButtMm, endPieceMm } =
		choices;
	const veneers = veneersOf(choices);
	const points: FlatRequest = {
		...(pointsFromButtMm === null ? {} : { pointFromButtMm: pointsFromButtMm }),
		...(veneers.length === 0 ? {} : { veneers }),
	};
	const tipHeightMm = offer.tips.find(({ name }) => name === tip)?.heightMm;
	return {
		lengthMm: choices.lengthMm,
		buttDiameterMm: choices.buttDiameterMm,
		tipDiameterMm: choices.tipDiameterMm,
		taperShape: choices.taperShape,
		shaftWood: choices.shaftWood,
		buttWood: choices.buttWood,
		splice: choices.splice,
		layout: choices.layout,
		ferruleMetal: choices.ferruleMetal,
		splicing: {
			...(Object.keys(points).length === 0 ? {} : { points }),
			...(choices.pointsBetween === null
				? {}
				: { pointsBetween: { wood: choices.pointsBetween } }),
			...(choices.frontWedge === null
				? {}
				: { frontWedge: { wood: choices.frontWedge } }),
			...(wedges === null
				? {}
				: { allRound: { wood: wedges, count: choices.wedgeCount } }),
		},
		fittings: {
			...(tipHeightMm === undefined ? {} : { tipHeightMm }),
			...(jointFromButtMm === null ? {} : { jointFromButtMm }),
			...(choices.layout === "one-piece" && endPieceMm === null
				? {}
				: { jointMetal: choices.jointMetal }),
			...(endPieceMm === null ? {} : { endPieceMm }),
		},
	};
}

const veneersOf = ({
	veneer,
	veneerCount,
	veneerMm,
}: OnlineChoices): readonly Veneer[] =>
	veneer === null
		? []
		: Array.from({ length: veneerCount }, () => ({
				wood: veneer,
				thicknessMm: veneerMm,
			}));

/** Whether a choice has any bearing on the cue as the others stand: sheets only where there is a veneer. */
export function isBearing(field: OnlineField, choices: OnlineChoices): boolean {
	switch (field) {
		case "wedgeCount":
			return choices.wedges !== null;
		case "veneerCount":
		case "veneerMm":
			return choices.veneer !== null;
		case "jointMetal":
			return choices.layout !== "one-piece" || choices.endPieceMm !== null;
		default:
			return true;
	}
}
