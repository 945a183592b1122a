import { CM3_PER_IN3, KGM3_PER_LBFT3 } from "@/lib/units/solids";
import type { Reader } from "@/lib/words/reader";
import { formatNumber } from "./figures";

const NBSP = "\u00a0";

/** "672 kg/m³", "42.0 lb/ft³". */
export const formatDensity = (kgM3: number, reader: Reader): string =>
	reader.system === "metric"
		? `${formatNumber(kgM3, reader)}${NBSP}kg/m³`
		: `${formatNumber(kgM3 / KGM3_PER_LBFT3, reader, 1)}${NBSP}lb/ft³`;

export const formatDensityDifference = (
	kgM3: number,
	reader: Reader,
): string => {
	const text = formatDensity(kgM3, reader);
	return kgM3 > 0 && /[1-9]/.test(text) ? `+${text}` : text;
};

/** "2133 cm³", "130.2 in³". */
export const formatVolume = (cm3: number, reader: Reader): string =>
	reader.system === "metric"
		? `${formatNumber(cm3, reader)}${NBSP}cm³`
		: `${formatNumber(cm3 / CM3_PER_IN3, reader, 1)}${NBSP}in³`;
