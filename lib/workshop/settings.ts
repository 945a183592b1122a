import type { Offer } from "@/lib/advice/catalogue";
import type { WorkshopOffer } from "@/lib/advice/workshop-offer";
import type {
	FerruleMetalId,
	LayoutId,
	SpliceId,
	TaperShapeId,
} from "@/lib/cue/design";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { UnitSystem } from "@/lib/units/quantity";
import type { LeadTimes } from "./lead-time";
import { type Prices, priceListOf } from "./prices";
import { densitiesOf, type EvidenceByWood, type Stock } from "./stock";

type Range = readonly [number, number];

/** "invented" marks a setting that no workshop has confirmed. */
export type SettingBasis = "invented" | "workshop";

/** Head of every sheet and quote, and how a new reader begins. */
export interface Header {
	readonly basis: SettingBasis;
	readonly name: string;
	/** Address lines, top down. */
	readonly lines: readonly string[];
	/** Telephone, mail or both, as printed. */
	readonly contact: string;
	/** Where the app is reached from outside, "https://cues.example"; empty: the address it is asked at. */
	readonly publicAddress: string;
	readonly paper: "a4" | "letter";
	readonly units: UnitSystem;
	/** Of papers that no reader asked for, and of new readers unless their device decides. */
	readonly language: "en" | "de";
	/** New readers are told in the language of their device, where it is one of the project's. */
	readonly followsDevice: boolean;
	/** Printed under quotes and hand-over sheets; empty for none. */
	readonly warrantyText: string;
}

/** A leather the workshop fits, named as it likes; the name is its key in the price list. */
export interface TipOffer {
	readonly name: string;
	readonly heightMm: number;
}

/** A case with the longest piece it takes; the name is its key in the price list. */
export interface CaseOffer {
	readonly name: string;
	readonly longestPieceMm: number;
}

/** What the workshop makes. First of a kind is its usual. */
export interface WorkshopCatalogue {
	readonly basis: SettingBasis;
	readonly games: Readonly<
		Record<
			GameId,
			{
				readonly shaftWoods: readonly WoodId[];
				readonly layouts: readonly LayoutId[];
			}
		>
	>;
	readonly buttWoods: readonly Offer<WoodId>[];
	readonly veneerWoods: readonly WoodId[];
	readonly splices: readonly Offer<SpliceId>[];
	readonly taperShapes: readonly TaperShapeId[];
	readonly ferruleMetals: readonly FerruleMetalId[];
	readonly tips: readonly TipOffer[];
	readonly jointMetals: readonly MetalId[];
	/** Lengths of the screw-in pieces on offer; empty: none. */
	readonly endPiecesMm: readonly number[];
	readonly cases: readonly CaseOffer[];
	/** Metal added in the butt. */
	readonly addedMetal: MetalId;
	readonly lengthMm: Range;
	readonly buttDiameterMm: Range;
	readonly tipDiameterMm: Range;
}

/** Content of each kind of setting; a kind is versioned on its own. */
export interface SettingContents {
	readonly header: Header;
	readonly catalogue: WorkshopCatalogue;
	readonly stock: Stock;
	readonly prices: Prices;
	readonly "lead-times": LeadTimes;
}

export type SettingKind = keyof SettingContents;

export const SETTING_KINDS = [
	"header",
	"catalogue",
	"stock",
	"prices",
	"lead-times",
] as const satisfies readonly SettingKind[];

/** All of a workshop's settings as they hold on one day. */
export interface Settings {
	readonly header: Header;
	readonly catalogue: WorkshopCatalogue;
	readonly stock: Stock;
	readonly prices: Prices;
	readonly leadTimes: LeadTimes;
	/** What the workshop's own finished cues say of its woods, as it counts today. */
	readonly evidence: EvidenceByWood;
}

/** The name under which `Settings` holds a kind. */
export const SETTING_NAMES = {
	header: "header",
	catalogue: "catalogue",
	stock: "stock",
	prices: "prices",
	"lead-times": "leadTimes",
} as const satisfies Record<SettingKind, keyof Settings>;

/** The setting of one kind. */
export const settingOf = <K extends SettingKind>(
	settings: Settings,
	kind: K,
): SettingContents[K] => settings[SETTING_NAMES[kind]] as SettingContents[K];

/**
 * The version in force on a day: of those that have begun, the one that began last, and of several
 * from one day the newest. Null where none has begun. Dates are ISO dates, which sort as text.
 */
export function inForce<
	V extends { readonly version: number; readonly validFrom: string },
>(versions: readonly V[], onDate: string): V | null {
	let best: V | null = null;
	for (const one of versions) {
		if (one.validFrom > onDate) continue;
		if (
			best === null ||
			one.validFrom > best.validFrom ||
			(one.validFrom === best.validFrom && one.version > best.version)
		)
			best = one;
	}
	return best;
}

/** What the settings say to a computation: catalogue, measured and learnt densities, prices. */
export const offerOf = ({
	catalogue,
	stock,
	evidence,
	prices,
}: Settings): WorkshopOffer => ({
	basis: catalogue.basis,
	games: catalogue.games,
	buttWoods: catalogue.buttWoods,
	splices: catalogue.splices,
	taperShapes: catalogue.taperShapes,
	ferruleMetals: catalogue.ferruleMetals,
	addedMetal: catalogue.addedMetal,
	lengthMm: catalogue.lengthMm,
	buttDiameterMm: catalogue.buttDiameterMm,
	tipDiameterMm: catalogue.tipDiameterMm,
	densities: densitiesOf(stock, evidence),
	priceList: priceListOf(prices),
});
