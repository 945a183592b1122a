import { MEASURE_BOUNDS } from "@/lib/player/measures";
import { ANSWER_BOUNDS } from "@/lib/stance/answers";

/**
 * The range each asked quantity may take: the validity of the models behind it, once, for the
 * forms, the API and the OpenAPI document. Lengths mm, masses g.
 */
export interface QuantityBound {
	readonly min: number;
	readonly max: number;
}

const bound = ([min, max]: readonly [number, number]): QuantityBound => ({
	min,
	max,
});

export const BOUNDS = {
	ageYears: bound(MEASURE_BOUNDS.ageYears),
	statureMm: bound(MEASURE_BOUNDS.statureMm),
	armSpanMm: bound(MEASURE_BOUNDS.armSpanMm),
	handLengthMm: bound(MEASURE_BOUNDS.handLengthMm),
	shoulderToElbowMm: bound(MEASURE_BOUNDS.shoulderToElbowMm),
	elbowToGripMm: bound(MEASURE_BOUNDS.elbowToGripMm),
	shoulderBreadthMm: bound(MEASURE_BOUNDS.shoulderBreadthMm),
	gripCircleReadingMm: bound(MEASURE_BOUNDS.gripCircleReadingsMm),
	bridgeLengthMm: bound(ANSWER_BOUNDS.bridgeLengthMm),
	gripFromButtMm: bound(ANSWER_BOUNDS.gripFromButtMm),
	bridgeToGripMm: bound(ANSWER_BOUNDS.bridgeToGripMm),
	cueInHandMm: bound(ANSWER_BOUNDS.cueInHandMm),
	clothHeightMm: bound(ANSWER_BOUNDS.clothHeightMm),
	trunkMaxDeg: bound(ANSWER_BOUNDS.trunkMaxDeg),
	neckExtensionMaxDeg: bound(ANSWER_BOUNDS.neckExtensionMaxDeg),
	bridgeElbowMaxDeg: bound(ANSWER_BOUNDS.bridgeElbowMaxDeg),
	cueLengthMm: { min: 900, max: 1650 },
	cueMassG: { min: 300, max: 850 },
	buttDiameterMm: { min: 24, max: 31 },
	presentButtDiameterMm: { min: 20, max: 40 },
	presentShaftDiameterMm: { min: 10, max: 32 },
	tipDiameterMm: { min: 7, max: 14 },
	longestPieceMm: { min: 300, max: 1700 },
	/** Minor units of the price list's currency. */
	maxPriceMinor: { min: 5_000, max: 2_000_000 },
	balanceFromButtMm: { min: 200, max: 900 },
} as const satisfies Record<string, QuantityBound>;

/** How many readings of the ring one session may hold. */
export const MAX_GRIP_READINGS = 12;
export const MAX_NOTES_LENGTH = 4000;
