import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";

/** ID-1 card of ISO/IEC 7810: bank and identity cards, mm. Figures from memory of the standard. */
export const ID1_CARD = { widthMm: 85.6, heightMm: 53.98 } as const;

/** Pixels a millimetre on any screen people hold or sit at; outside, the card was not matched. */
const PIXELS_PER_MM = [1.5, 30] as const;
/** Width over height of the matched card may be off by this share before it is refused. Assumed. */
const CARD_SHAPE_TOLERANCE = 0.03;

/** True size on screen from the width to which a card's outline was dragged. */
export function pixelsPerMm(p: {
	cardWidthPx: number;
	/** Given where both sides were matched: the shape is then checked. */
	cardHeightPx?: number;
}): Outcome<number> {
	const scale = p.cardWidthPx / ID1_CARD.widthMm;
	const [min, max] = PIXELS_PER_MM;
	const refusal = outside(
		"cardWidthPx",
		p.cardWidthPx,
		min * ID1_CARD.widthMm,
		max * ID1_CARD.widthMm,
	);
	if (refusal) return refuse(refusal);
	if (p.cardHeightPx !== undefined) {
		const ratio =
			p.cardWidthPx / p.cardHeightPx / (ID1_CARD.widthMm / ID1_CARD.heightMm);
		const shape = outside(
			"cardShapeRatio",
			ratio,
			1 - CARD_SHAPE_TOLERANCE,
			1 + CARD_SHAPE_TOLERANCE,
		);
		if (shape) return refuse(shape);
	}
	return accept(scale);
}

/** A print further from true size than this is to be printed again, not corrected. Assumed. */
export const PRINT_SCALE_TOLERANCE = 0.01;

/** Scale of a printed gauge: what its ruler measures over what it should, refused past the tolerance. */
export function printScaleRatio(p: {
	rulerMm: number;
	readMm: number;
}): Outcome<number> {
	const ratio = p.readMm / p.rulerMm;
	const refusal = outside(
		"readMm",
		p.readMm,
		p.rulerMm * (1 - PRINT_SCALE_TOLERANCE),
		p.rulerMm * (1 + PRINT_SCALE_TOLERANCE),
	);
	return refusal ? refuse(refusal) : accept(ratio);
}

/** Ring read on a cone: diameter where the ring came to rest, straight cone, ring square to its axis, mm. */
export function coneReadingMm(p: {
	smallEndDiameterMm: number;
	largeEndDiameterMm: number;
	lengthMm: number;
	fromSmallEndMm: number;
}): Outcome<number> {
	const refusal =
		outside("lengthMm", p.lengthMm, 1, 2000) ??
		outside("fromSmallEndMm", p.fromSmallEndMm, 0, p.lengthMm);
	if (refusal) return refuse(refusal);
	return accept(
		p.smallEndDiameterMm +
			((p.largeEndDiameterMm - p.smallEndDiameterMm) * p.fromSmallEndMm) /
				p.lengthMm,
	);
}

/** Diameters of a set of dowels or printed rings, mm, both ends in. */
export function gaugeStepsMm(p: {
	fromMm: number;
	toMm: number;
	stepMm: number;
}): readonly number[] {
	if (!(p.stepMm > 0) || !(p.toMm >= p.fromMm))
		throw new RangeError(
			`gauge from ${p.fromMm} to ${p.toMm} mm in steps of ${p.stepMm} mm`,
		);
	const count = Math.floor((p.toMm - p.fromMm) / p.stepMm + 1e-9) + 1;
	return Array.from({ length: count }, (_, i) => p.fromMm + i * p.stepMm);
}
