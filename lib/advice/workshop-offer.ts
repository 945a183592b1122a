import type { FerruleMetalId } from "@/lib/cue/design";
import type { PriceList } from "@/lib/price/list";
import type { GameId } from "@/lib/reference/rules";
import type { Catalogue } from "./catalogue";

/**
 * All that a workshop's own settings say to a computation, for any game: what it makes, the densities
 * it weighed and what it charges. Plain JSON; it travels in the fitting's input, so that an advice
 * opened later is worked out with what held then.
 */
export interface WorkshopOffer
	extends Omit<Catalogue, "shaftWoods" | "layouts"> {
	/** First of a kind is the usual one for that game. */
	readonly games: Readonly<
		Record<GameId, Pick<Catalogue, "shaftWoods" | "layouts">>
	>;
	/** The usual one first. */
	readonly ferruleMetals: readonly FerruleMetalId[];
	readonly priceList: PriceList;
}

/** The workshop's catalogue for one game. */
export const catalogueFor = (
	{ games, priceList, ferruleMetals, ...common }: WorkshopOffer,
	gameId: GameId,
): Catalogue => ({ ...common, ...games[gameId] });
