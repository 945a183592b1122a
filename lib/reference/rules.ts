import type { CitationId } from "./citations";
import { customary, sourced } from "./constant";
import type { SourcedConstant } from "./estimate";

export type GameId =
	| "snooker"
	| "english-eight-ball"
	| "american-pool"
	| "carom";

export interface Ball {
	readonly diameterMm: SourcedConstant;
	readonly massG: SourcedConstant;
}

/** Common practice without a published source: lowest and highest usual value. */
export interface UsualRanges {
	readonly lengthMm: readonly [number, number];
	readonly massG: readonly [number, number];
	readonly tipMm: readonly [number, number];
}

export interface Game {
	readonly id: GameId;
	readonly name: string;
	readonly cueMinLengthMm: SourcedConstant | null;
	readonly cueMaxMassG: SourcedConstant | null;
	readonly tipMaxDiameterMm: SourcedConstant | null;
	readonly metalFerruleMaxLengthMm: SourcedConstant | null;
	/** The rule asks for no substantial departure from the accepted tapered form. */
	readonly taperedForm: { readonly source: CitationId } | null;
	readonly cueBall: Ball;
	readonly objectBall: Ball;
	readonly tableHeight: {
		readonly minMm: number;
		readonly maxMm: number;
		readonly of: "cushion-top" | "bed";
		readonly source: CitationId;
	};
	readonly usual: UsualRanges;
}

const rule = (p: {
	value: number;
	unit: string;
	sd?: number;
	source: CitationId;
	locator: string;
}) => sourced(p);

/** SD of a quantity known only as lying between two bounds: (high − low)/√12. */
const spreadOf = (low: number, high: number) => (high - low) / Math.sqrt(12);

const SNOOKER_BALL: Ball = {
	diameterMm: rule({
		value: 52.5,
		unit: "mm",
		sd: spreadOf(52.45, 52.55),
		source: "wpbsa-rules",
		locator: "section 1: 52.5 ± 0.05",
	}),
	massG: customary({
		value: 142,
		unit: "g",
		sd: spreadOf(130, 150),
		locator: "the rule gives no absolute mass; usual 130–150",
	}),
};
const POOL_BALL: Ball = {
	diameterMm: rule({
		value: 57.15,
		unit: "mm",
		sd: spreadOf(57.15 - 0.127, 57.15 + 0.127),
		source: "wpa-equipment",
		locator: "balls: 2¼ in, tolerance 0.127 mm",
	}),
	massG: rule({
		value: 163,
		unit: "g",
		sd: spreadOf(156, 170),
		source: "wpa-equipment",
		locator: "balls: 156–170, midpoint",
	}),
};
const CAROM_BALL: Ball = {
	diameterMm: rule({
		value: 61.25,
		unit: "mm",
		sd: spreadOf(61, 61.5),
		source: "umb-rules",
		locator: "balls: 61–61.5, midpoint",
	}),
	massG: rule({
		value: 210,
		unit: "g",
		sd: spreadOf(205, 220),
		source: "umb-rules",
		locator: "balls: 205–220, usually 210",
	}),
};

export const GAMES: Readonly<Record<GameId, Game>> = {
	snooker: {
		id: "snooker",
		name: "Snooker",
		cueMinLengthMm: rule({
			value: 914,
			unit: "mm",
			source: "wpbsa-rules",
			locator: "section 1, cue: 3 ft, printed 914",
		}),
		cueMaxMassG: null,
		tipMaxDiameterMm: null,
		metalFerruleMaxLengthMm: null,
		taperedForm: { source: "wpbsa-rules" },
		cueBall: SNOOKER_BALL,
		objectBall: SNOOKER_BALL,
		tableHeight: {
			minMm: 851,
			maxMm: 876,
			of: "cushion-top",
			source: "wpbsa-rules",
		},
		usual: { lengthMm: [1448, 1499], massG: [468, 539], tipMm: [9, 10] },
	},
	"english-eight-ball": {
		id: "english-eight-ball",
		name: "English eight-ball",
		cueMinLengthMm: null,
		cueMaxMassG: null,
		tipMaxDiameterMm: null,
		metalFerruleMaxLengthMm: null,
		taperedForm: null,
		cueBall: {
			diameterMm: rule({
				value: 47.6,
				unit: "mm",
				source: "wepf-rules",
				locator: "cue ball 1⅞ in",
			}),
			massG: rule({
				value: 94,
				unit: "g",
				sd: spreadOf(92, 96),
				source: "wepf-rules",
				locator: "cue ball 94 ± 2",
			}),
		},
		objectBall: {
			diameterMm: rule({
				value: 50.8,
				unit: "mm",
				source: "wepf-rules",
				locator: "object balls 2 in",
			}),
			massG: rule({
				value: 116,
				unit: "g",
				sd: spreadOf(114, 118),
				source: "wepf-rules",
				locator: "object balls 116 ± 2",
			}),
		},
		tableHeight: {
			minMm: 800,
			maxMm: 850,
			of: "cushion-top",
			source: "wepf-rules",
		},
		usual: { lengthMm: [1422, 1473], massG: [468, 539], tipMm: [8, 9] },
	},
	"american-pool": {
		id: "american-pool",
		name: "American pool",
		cueMinLengthMm: rule({
			value: 1016,
			unit: "mm",
			source: "wpa-equipment",
			locator: "cues: 40 in",
		}),
		cueMaxMassG: rule({
			value: 708.75,
			unit: "g",
			source: "wpa-equipment",
			locator: "cues: 25 oz, printed 708.75",
		}),
		tipMaxDiameterMm: rule({
			value: 14,
			unit: "mm",
			source: "wpa-equipment",
			locator: "cues: tip width",
		}),
		metalFerruleMaxLengthMm: rule({
			value: 25.4,
			unit: "mm",
			source: "wpa-equipment",
			locator: "cues: metal ferrule 1 in",
		}),
		taperedForm: null,
		cueBall: POOL_BALL,
		objectBall: POOL_BALL,
		tableHeight: {
			minMm: 743,
			maxMm: 787,
			of: "bed",
			source: "wpa-equipment",
		},
		usual: {
			lengthMm: [1448, 1499],
			massG: [510, 596],
			tipMm: [11.75, 13],
		},
	},
	carom: {
		id: "carom",
		name: "Carom",
		cueMinLengthMm: null,
		cueMaxMassG: null,
		tipMaxDiameterMm: null,
		metalFerruleMaxLengthMm: null,
		taperedForm: null,
		cueBall: CAROM_BALL,
		objectBall: CAROM_BALL,
		tableHeight: {
			minMm: 750,
			maxMm: 800,
			of: "cushion-top",
			source: "umb-rules",
		},
		usual: { lengthMm: [1397, 1448], massG: [482, 539], tipMm: [11, 12] },
	},
};
