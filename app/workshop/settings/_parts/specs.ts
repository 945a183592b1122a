import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import { TAPER_LIMITS } from "@/lib/cue/taper";
import { FITTING_LIMITS } from "@/lib/cue/validity";
import type { RANGES } from "@/lib/forms/settings/catalogue";
import { SETTING_LIMITS } from "@/lib/workshop/checks";

const bounds = ([min, max]: readonly [number, number]) => ({ min, max });

export const TIP_HEIGHT_SPEC: QuantitySpec = {
	dimension: "length",
	kind: "bench",
	...bounds(FITTING_LIMITS.tipHeightMm),
};
export const END_PIECE_SPEC: QuantitySpec = {
	dimension: "length",
	kind: "length",
	...bounds(FITTING_LIMITS.endPieceMm),
};
export const CASE_SPEC: QuantitySpec = {
	dimension: "length",
	kind: "length",
	...bounds(SETTING_LIMITS.longestPieceMm),
};
export const RING_SPEC: QuantitySpec = {
	dimension: "length",
	kind: "bench",
	...bounds(SETTING_LIMITS.ringSpacingMm),
};
export const BILLET_MASS_SPEC: QuantitySpec = {
	dimension: "mass",
	kind: "cue",
	...bounds(SETTING_LIMITS.massG),
};
export const RANGE_SPECS: Readonly<
	Record<(typeof RANGES)[number], QuantitySpec>
> = {
	lengthMm: {
		dimension: "length",
		kind: "length",
		...bounds(TAPER_LIMITS.lengthMm),
	},
	buttDiameterMm: {
		dimension: "length",
		kind: "diameter",
		...bounds(TAPER_LIMITS.buttDiameterMm),
	},
	tipDiameterMm: {
		dimension: "length",
		kind: "diameter",
		...bounds(TAPER_LIMITS.tipDiameterMm),
	},
};
