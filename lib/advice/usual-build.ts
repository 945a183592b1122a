import type {
	BilletDensities,
	CueRequest,
	FerruleMetalId,
	LayoutId,
	SpliceId,
} from "@/lib/cue/design";
import type { MetalId } from "@/lib/reference/metals";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import { type Catalogue, inventedCatalogue } from "./catalogue";
import type { FittingInput } from "./input";
import { BUDGET_BUILD, USUAL_LAYOUT, USUAL_SHAFT } from "./judgement";
import { catalogueFor, type WorkshopOffer } from "./workshop-offer";

/** What the workshop of a fitting makes for a game; an invented plain one where none is named. */
export const catalogueOf = (
	{ workshop }: FittingInput,
	gameId: GameId,
): Catalogue =>
	workshop === undefined
		? inventedCatalogue(gameId)
		: catalogueFor(workshop, gameId);

/** What is built where nobody wished otherwise. */
export interface UsualBuild {
	readonly shaftWood: WoodId;
	/** To be tried in this order. */
	readonly buttWoods: readonly WoodId[];
	readonly splice: SpliceId;
	readonly layout: LayoutId;
	readonly ferruleMetal: FerruleMetalId;
}

/** The budget's and the game's usual build, out of what the workshop makes. */
export function usualBuild(input: FittingInput, gameId: GameId): UsualBuild {
	const { workshop, budget = "middle" } = input;
	const usual = BUDGET_BUILD[budget];
	if (workshop === undefined)
		return {
			shaftWood: USUAL_SHAFT[gameId],
			buttWoods: usual.buttWoods,
			splice: usual.splice,
			layout: USUAL_LAYOUT[gameId],
			ferruleMetal: "brass",
		};
	const { shaftWoods, buttWoods, splices, layouts } = catalogueFor(
		workshop,
		gameId,
	);
	const woods = buttWoods.map(({ id }) => id);
	const wanted = usual.buttWoods.filter((id) => woods.includes(id));
	return {
		shaftWood: shaftWoods[0] ?? USUAL_SHAFT[gameId],
		buttWoods: wanted.length > 0 ? wanted : woods,
		splice:
			splices.find(({ id }) => id === usual.splice)?.id ??
			splices[0]?.id ??
			usual.splice,
		layout: layouts[0] ?? USUAL_LAYOUT[gameId],
		ferruleMetal: workshop.ferruleMetals[0] ?? "brass",
	};
}

/** A request with the densities that the workshop weighed, where it weighed any and none are in it. */
export function withStock(
	request: CueRequest,
	workshop: WorkshopOffer | undefined,
): CueRequest {
	const densities: BilletDensities = workshop?.densities ?? {};
	return request.densities === undefined && Object.keys(densities).length > 0
		? { ...request, densities }
		: request;
}

/** Metal added in the butt. */
export const addedMetalOf = (workshop: WorkshopOffer | undefined): MetalId =>
	workshop?.addedMetal ?? "brass";
