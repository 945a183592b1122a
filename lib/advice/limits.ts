import { Z90 } from "@/lib/reference/estimate";
import { GAMES, type GameId } from "@/lib/reference/rules";
import type { Wishes } from "./input";
import { NEGLIGIBLE_G } from "./loading";

/** What no compromise may pass: rules of the game, and what the customer said is the most. */
export interface HardLimits {
	readonly lengthMinMm: number;
	readonly massMaxG: number;
	readonly tipMaxMm: number;
	readonly priceMaxMinor: number;
	readonly pieceMaxMm: number;
	/** The weight wished for: met by added metal, or by wood that may turn out so light. */
	readonly wishedMassG: number | null;
}

export function limitsFor(p: {
	gameId: GameId;
	wishes: Wishes;
	maxPriceMinor?: number;
	longestPieceMm?: number;
}): HardLimits {
	const game = GAMES[p.gameId];
	return {
		lengthMinMm: game.cueMinLengthMm?.value ?? 0,
		massMaxG: game.cueMaxMassG?.value ?? Number.POSITIVE_INFINITY,
		tipMaxMm: game.tipMaxDiameterMm?.value ?? Number.POSITIVE_INFINITY,
		priceMaxMinor: p.maxPriceMinor ?? Number.POSITIVE_INFINITY,
		pieceMaxMm: p.longestPieceMm ?? Number.POSITIVE_INFINITY,
		wishedMassG: p.wishes.massG ?? null,
	};
}

/** Whether a cue left at its wood's own weight can pass for the wished one, as planAddedWeight judges it. */
export const naturalMeetsWish = (
	naturalG: number,
	naturalSdG: number,
	wishedMassG: number | null,
): boolean =>
	wishedMassG === null ||
	(naturalG > wishedMassG - NEGLIGIBLE_G &&
		naturalG - Z90 * naturalSdG <= wishedMassG);
