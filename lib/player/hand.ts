import {
	accept,
	type Caution,
	type Outcome,
	outside,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import { MEASURE_BOUNDS } from "./measures";

export interface GripCircle {
	/** Inside diameter of the light ring of thumb and forefinger, pads just meeting, mm. */
	readonly circleMm: Estimate;
	readonly readingCount: number;
	/** Largest minus smallest reading, mm; null below two readings. */
	readonly spreadMm: number | null;
	readonly cautions: readonly Caution[];
}

/**
 * Assumed: the light ring on a cue over hand length, and its spread between people. Set so that a
 * hand of 193 mm (the mean man of the adult survey) takes a butt of about 29 mm, the common practice:
 * held 105 mm up an even taper such a butt is 27.4 mm through, and that is the ring.
 */
export const LIGHT_RING_SHARE = { ratio: 0.142, relativeSd: 0.12 } as const;

/**
 * Published *largest* inside grip (thumb to middle fingertip) over hand length, from memory of
 * Bodyspace's tables (52/189, 48/174). Context only: the light ring is far smaller.
 */
export const LARGEST_GRIP_SHARE = 0.274;

/** sd of one reading when the player's own spread is not known yet, mm, and its weight in readings. Assumed. */
const PRIOR_READING_SD_MM = 1;
const PRIOR_READING_COUNT = 3;
/** Dowels or cone marks in steps of 1 mm: uniform error, 1/√12. */
const RESOLUTION_SD_MM = 1 / Math.sqrt(12);
/** Readings further apart than this are pointed out, mm. Assumed. */
export const AGREEMENT_MM = 3;

/** Grip circle from readings, or a wide estimate from hand length when there are none. */
export function gripCircleFrom(p: {
	readingsMm: readonly number[];
	handLengthMm: Estimate;
}): Outcome<GripCircle> {
	const { readingsMm, handLengthMm } = p;
	const [min, max] = MEASURE_BOUNDS.gripCircleReadingsMm;
	const refusals = readingsMm
		.map((r, i) => outside(`gripCircleReadingsMm.${i}`, r, min, max))
		.filter((r): r is Refusal => r !== null);
	if (refusals.length > 0) return refuse(...refusals);

	if (readingsMm.length === 0) {
		const { ratio, relativeSd } = LIGHT_RING_SHARE;
		return accept({
			circleMm: {
				value: ratio * handLengthMm.value,
				sd:
					ratio * Math.hypot(relativeSd * handLengthMm.value, handLengthMm.sd),
				standing: "assumed",
				sources: ["common-practice", ...handLengthMm.sources],
			},
			readingCount: 0,
			spreadMm: null,
			cautions: [{ code: "grip-circle-assumed" }],
		});
	}

	const count = readingsMm.length;
	const mean = readingsMm.reduce((sum, r) => sum + r, 0) / count;
	const squares = readingsMm.reduce((sum, r) => sum + (r - mean) ** 2, 0);
	// One reading's variance: the readings' own scatter pooled with the assumed one.
	const variance =
		(PRIOR_READING_COUNT * PRIOR_READING_SD_MM ** 2 + squares) /
		(PRIOR_READING_COUNT + count - 1);
	const spreadMm =
		count < 2 ? null : Math.max(...readingsMm) - Math.min(...readingsMm);

	const cautions: Caution[] = [];
	if (count === 1) cautions.push({ code: "single-reading" });
	if (spreadMm !== null && spreadMm > AGREEMENT_MM)
		cautions.push({
			code: "readings-disagree",
			facts: { spreadMm, agreementMm: AGREEMENT_MM },
		});
	const largestMm =
		LARGEST_GRIP_SHARE * (handLengthMm.value + 2 * handLengthMm.sd);
	if (mean > largestMm)
		cautions.push({
			code: "ring-above-largest-grip",
			facts: { circleMm: mean, largestMm },
		});
	return accept({
		circleMm: {
			value: mean,
			sd: Math.sqrt(variance / count + RESOLUTION_SD_MM ** 2),
			standing: "measured",
			sources: ["measured-here"],
		},
		readingCount: count,
		spreadMm,
		cautions,
	});
}

/**
 * Arc between the pads round a cue of that diameter, mm: the ring's inside length πC laid on the
 * girth πD leaves π(D − C). Positive: gap; negative: overlap.
 */
export function closureMm(p: { circleMm: number; diameterMm: number }): number {
	return Math.PI * (p.diameterMm - p.circleMm);
}

/** Diameter at the hand that gives the wanted closure: C + g/π, mm. */
export function diameterForClosureMm(p: {
	circleMm: number;
	closureMm: number;
}): number {
	return p.circleMm + p.closureMm / Math.PI;
}

/** The same with the circle's uncertainty: the diameter moves one to one with the circle. */
export function diameterEstimateForClosure(p: {
	circle: GripCircle;
	closureMm: number;
}): Estimate {
	const { circleMm } = p.circle;
	return {
		...circleMm,
		value: diameterForClosureMm({
			circleMm: circleMm.value,
			closureMm: p.closureMm,
		}),
	};
}
