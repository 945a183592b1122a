import { outside, type Refusal } from "@/lib/numerics/outcome";
import type { Sex } from "@/lib/reference/body-adult";

/** What was measured or said of a player. Everything may be left out. */
export interface PlayerMeasures {
	readonly statureMm?: number;
	readonly armSpanMm?: number;
	readonly ageYears?: number;
	readonly sex?: Sex;
	/** Wrist crease to tip of the middle finger. */
	readonly handLengthMm?: number;
	/** Acromion to the underside of the elbow bent at a right angle. */
	readonly shoulderToElbowMm?: number;
	/** Back of the bent elbow to the centre of a rod held in the fist. */
	readonly elbowToGripMm?: number;
	/** Acromion to acromion. */
	readonly shoulderBreadthMm?: number;
	/** Inside diameter of the light ring of thumb and forefinger, one entry a reading. */
	readonly gripCircleReadingsMm?: readonly number[];
}

type NumericMeasure = Exclude<
	keyof PlayerMeasures,
	"sex" | "gripCircleReadingsMm"
>;

/** Outside these a reading is refused: beyond people, or a slip of unit. Project judgement. */
export const MEASURE_BOUNDS: Readonly<
	Record<NumericMeasure | "gripCircleReadingsMm", readonly [number, number]>
> = {
	statureMm: [900, 2300],
	armSpanMm: [850, 2500],
	ageYears: [4, 110],
	handLengthMm: [90, 250],
	shoulderToElbowMm: [160, 500],
	elbowToGripMm: [150, 500],
	shoulderBreadthMm: [180, 560],
	gripCircleReadingsMm: [15, 70],
};

/** Standard deviation of one careful reading with a tape, mm. Assumed. */
export const READING_SD_MM = {
	statureMm: 6,
	armSpanMm: 10,
	handLengthMm: 3,
	shoulderToElbowMm: 7,
	elbowToGripMm: 7,
	shoulderBreadthMm: 9,
} as const;

export type MeasuredLength = keyof typeof READING_SD_MM;

const NUMERIC = [
	"statureMm",
	"armSpanMm",
	"ageYears",
	"handLengthMm",
	"shoulderToElbowMm",
	"elbowToGripMm",
	"shoulderBreadthMm",
] as const satisfies readonly NumericMeasure[];

/** Refusals of single values; an empty list when every given value is within its bounds. */
export function refusalsOf(measures: PlayerMeasures): Refusal[] {
	const found: Refusal[] = [];
	for (const field of NUMERIC) {
		const value = measures[field];
		if (value === undefined) continue;
		const [min, max] = MEASURE_BOUNDS[field];
		const refusal = outside(field, value, min, max);
		if (refusal) found.push(refusal);
	}
	const [min, max] = MEASURE_BOUNDS.gripCircleReadingsMm;
	for (const [i, reading] of (measures.gripCircleReadingsMm ?? []).entries()) {
		const refusal = outside(`gripCircleReadingsMm.${i}`, reading, min, max);
		if (refusal) found.push(refusal);
	}
	return found;
}
