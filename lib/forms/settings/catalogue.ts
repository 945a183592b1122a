import type { Offer } from "@/lib/advice/catalogue";
import type {
	FerruleMetalId,
	LayoutId,
	SpliceId,
	TaperShapeId,
} from "@/lib/cue/design";
import { TAPER_LIMITS } from "@/lib/cue/taper";
import { FITTING_LIMITS } from "@/lib/cue/validity";
import type { MetalId } from "@/lib/reference/metals";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOOD_IDS, WOODS, type WoodId } from "@/lib/reference/woods";
import type { UnitSystem } from "@/lib/units/quantity";
import { SETTING_LIMITS } from "@/lib/workshop/checks";
import { CHOICES_OF } from "@/lib/workshop/prices-check";
import type { WorkshopCatalogue } from "@/lib/workshop/settings";
import { FieldReader, type FormRead, mmText, readForm } from "./form";

/** Several offered, one of them the usual. */
export interface ChosenForm {
	readonly offered: string[];
	readonly usual: string;
}

/** A rank in looks and hand work, or not offered at all. */
export type TierForm = "" | "0" | "1" | "2";

export const RANGES = ["lengthMm", "buttDiameterMm", "tipDiameterMm"] as const;

export interface CatalogueForm {
	readonly games: Readonly<
		Record<
			GameId,
			{ readonly shaftWoods: ChosenForm; readonly layouts: ChosenForm }
		>
	>;
	readonly buttWoods: Readonly<Record<string, TierForm>>;
	readonly splices: Readonly<Record<SpliceId, TierForm>>;
	readonly taperShapes: ChosenForm;
	readonly ferruleMetals: ChosenForm;
	readonly jointMetals: ChosenForm;
	readonly veneerWoods: string[];
	readonly addedMetal: MetalId;
	readonly tips: { readonly name: string; readonly height: string }[];
	readonly cases: { readonly name: string; readonly longestPiece: string }[];
	readonly endPieces: { readonly length: string }[];
	readonly ranges: Readonly<
		Record<
			(typeof RANGES)[number],
			{ readonly low: string; readonly high: string }
		>
	>;
}

export const GAME_IDS = Object.keys(GAMES) as GameId[];
export const BUTT_WOODS: readonly WoodId[] = WOOD_IDS.filter((id) =>
	WOODS[id].uses.includes("butt"),
);
const SPLICES = CHOICES_OF.splice as readonly SpliceId[];

const chosen = (ids: readonly string[]): ChosenForm => ({
	offered: [...ids],
	usual: ids[0] ?? "",
});

const tiers = <Id extends string>(
	all: readonly Id[],
	offers: readonly Offer<Id>[],
) =>
	Object.fromEntries(
		all.map((id) => [
			id,
			String(offers.find((offer) => offer.id === id)?.tier ?? ""),
		]),
	) as Record<Id, TierForm>;

const byGame = <T>(of: (gameId: GameId) => T) =>
	Object.fromEntries(GAME_IDS.map((id) => [id, of(id)])) as Record<GameId, T>;

/** `mark`: the reader's decimal mark. */
export const catalogueForm = (
	c: WorkshopCatalogue,
	mark = ".",
): CatalogueForm => ({
	games: byGame((gameId) => ({
		shaftWoods: chosen(c.games[gameId].shaftWoods),
		layouts: chosen(c.games[gameId].layouts),
	})),
	buttWoods: tiers(BUTT_WOODS, c.buttWoods),
	splices: tiers(SPLICES, c.splices),
	taperShapes: chosen(c.taperShapes),
	ferruleMetals: chosen(c.ferruleMetals),
	jointMetals: chosen(c.jointMetals),
	veneerWoods: [...c.veneerWoods],
	addedMetal: c.addedMetal,
	tips: c.tips.map(({ name, heightMm }) => ({
		name,
		height: mmText(heightMm, mark),
	})),
	cases: c.cases.map(({ name, longestPieceMm }) => ({
		name,
		longestPiece: mmText(longestPieceMm, mark),
	})),
	endPieces: c.endPiecesMm.map((mm) => ({ length: mmText(mm, mark) })),
	ranges: Object.fromEntries(
		RANGES.map((name) => [
			name,
			{ low: mmText(c[name][0], mark), high: mmText(c[name][1], mark) },
		]),
	) as CatalogueForm["ranges"],
});

/** The usual one first, the others in the order they had. */
const usualFirst = <Id extends string>({ offered, usual }: ChosenForm): Id[] =>
	[...offered].sort(
		(a, b) => Number(b === usual) - Number(a === usual),
	) as Id[];

/** Those with a rank: in the order they had, then those added. */
function offersOf<Id extends string>(
	form: Readonly<Record<string, TierForm>>,
	before: readonly Offer<Id>[],
): Offer<Id>[] {
	const ids = [
		...before.map(({ id }) => id),
		...(Object.keys(form) as Id[]).filter(
			(id) => !before.some((offer) => offer.id === id),
		),
	];
	return ids.flatMap((id) => {
		const tier = form[id];
		return tier === undefined || tier === ""
			? []
			: [{ id, tier: Number(tier) as Offer<Id>["tier"] }];
	});
}

export function readCatalogue(
	form: CatalogueForm,
	system: UnitSystem,
	before: WorkshopCatalogue,
): FormRead<"catalogue"> {
	const fields = new FieldReader(system);
	const range = (name: (typeof RANGES)[number]) =>
		(["low", "high"] as const).map((end) =>
			fields.lengthMm(
				`ranges.${name}.${end}`,
				form.ranges[name][end],
				TAPER_LIMITS[name],
			),
		) as [number, number];
	return readForm({
		kind: "catalogue",
		fields,
		content: {
			basis: "workshop",
			games: byGame((gameId) => ({
				shaftWoods: usualFirst<WoodId>(form.games[gameId].shaftWoods),
				layouts: usualFirst<LayoutId>(form.games[gameId].layouts),
			})),
			buttWoods: offersOf(form.buttWoods, before.buttWoods),
			splices: offersOf(form.splices, before.splices),
			taperShapes: usualFirst<TaperShapeId>(form.taperShapes),
			ferruleMetals: usualFirst<FerruleMetalId>(form.ferruleMetals),
			jointMetals: usualFirst<MetalId>(form.jointMetals),
			veneerWoods: form.veneerWoods as WoodId[],
			addedMetal: form.addedMetal,
			tips: form.tips.map(({ name, height }, i) => ({
				name: fields.named(`tips.${i}.name`, name),
				heightMm: fields.lengthMm(
					`tips.${i}.height`,
					height,
					FITTING_LIMITS.tipHeightMm,
				),
			})),
			cases: form.cases.map(({ name, longestPiece }, i) => ({
				name: fields.named(`cases.${i}.name`, name),
				longestPieceMm: fields.lengthMm(
					`cases.${i}.longestPiece`,
					longestPiece,
					SETTING_LIMITS.longestPieceMm,
				),
			})),
			endPiecesMm: form.endPieces.map(({ length }, i) =>
				fields.lengthMm(
					`endPieces.${i}.length`,
					length,
					FITTING_LIMITS.endPieceMm,
				),
			),
			lengthMm: range("lengthMm"),
			buttDiameterMm: range("buttDiameterMm"),
			tipDiameterMm: range("tipDiameterMm"),
		},
		pathOf,
	});
}

const pathOf = (field: string): string =>
	field
		.replace(/^(games\.[^.]+\.(?:shaftWoods|layouts)).*$/, "$1.offered")
		.replace(
			/^(taperShapes|ferruleMetals|jointMetals)(?:\.\d+)?$/,
			"$1.offered",
		)
		.replace(/^(lengthMm|buttDiameterMm|tipDiameterMm)\.0$/, "ranges.$1.low")
		.replace(/^(lengthMm|buttDiameterMm|tipDiameterMm)\.1$/, "ranges.$1.high")
		.replace(/^(tips|cases)\.(\d+)$/, "$1.$2.name")
		.replace(/heightMm$/, "height")
		.replace(/longestPieceMm$/, "longestPiece")
		.replace(/^endPiecesMm\.(\d+)$/, "endPieces.$1.length")
		.replace(/^(buttWoods|splices|veneerWoods)\..*$/, "$1");
