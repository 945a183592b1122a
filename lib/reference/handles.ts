import type { CitationId } from "./citations";

/**
 * Published research on handles: context, not a target. Every figure is for gripping hard or for
 * pinching; a cue is held lightly. A diameter between about 16 and 30 mm falls between the published
 * precision and power ranges, so no published figure sets a butt.
 */
export interface HandleStudy {
	readonly source: CitationId;
	readonly purpose: "greatest-force" | "least-effort" | "precision";
	/** Diameters the study or guide favours, mm; equal where one is named. */
	readonly diameterMm: readonly [number, number];
	readonly locator: string;
	readonly fromMemory: boolean;
}

/** Best cylinder for the greatest grip over hand length: Kong & Lowe 2005, 24 people. */
export const HARD_GRIP_SHARE_OF_HAND = 0.197;

export const HANDLE_STUDIES: readonly HandleStudy[] = [
	{
		source: "kong-lowe-2005",
		purpose: "greatest-force",
		diameterMm: [30, 40],
		locator: "30, 35 and 40 rated best of 25–50",
		fromMemory: false,
	},
	{
		source: "sancho-bru-2003",
		purpose: "greatest-force",
		diameterMm: [33, 33],
		locator: "32 women, 34 men; 33 recommended",
		fromMemory: false,
	},
	{
		source: "edgren-2004",
		purpose: "greatest-force",
		diameterMm: [38.1, 38.1],
		locator: "greatest of 25.4–76.2",
		fromMemory: false,
	},
	{
		source: "niosh-2004-164",
		purpose: "greatest-force",
		diameterMm: [31.75, 50.8],
		locator: "power grip 1¼–2 in",
		fromMemory: false,
	},
	{
		source: "niosh-2004-164",
		purpose: "precision",
		diameterMm: [6.35, 12.7],
		locator: "precision grip ¼–½ in",
		fromMemory: false,
	},
	{
		source: "dong-2006",
		purpose: "least-effort",
		diameterMm: [10, 10],
		locator: "pinch: nothing gained past 10",
		fromMemory: false,
	},
];

/** The gap between the published precision and power ranges where butts lie, mm. */
export const UNPUBLISHED_GAP_MM = [16, 30] as const;
