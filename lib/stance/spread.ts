import { figureFrom } from "./figure";
import {
	type Linkage,
	placeAt,
	type Situation,
	type StyleValues,
} from "./linkage";

/** Slopes of the span on each body length (order of BODY_LENGTHS) and each style figure. */
export interface SpanSlopes {
	readonly byLength: readonly number[];
	readonly byStyle: Readonly<Record<keyof StyleValues, number>>;
}

/** Central-difference steps, in the parameter's unit. */
const LENGTH_STEP_MM = 0.5;
const STYLE_STEP: Readonly<Record<keyof StyleValues, number>> = {
	yawDeg: 0.02,
	bridgeElbowDeg: 0.02,
	chinAboveCueMm: 0.1,
	headInclinationDeg: 0.02,
	gripShoulderRiseDeg: 0.02,
	bridgeShoulderRiseDeg: 0.02,
	trunkHeadingDeg: 0.02,
	neckLeanDeg: 0.02,
	forearmTiltDeg: 0.02,
	legDropRatio: 0.001,
	elevationDeg: 0.01,
	bridgeAxisHeightMm: 0.1,
	seatHeightMm: 0.2,
};
const THETA_STEP = 1e-5;

/**
 * Implicit differentiation. With span S(θ, p) and the chin's condition F(θ, p) = 0:
 * dS/dp = ∂S/∂p − (∂S/∂θ)(∂F/∂p)/(∂F/∂θ) while θ is free, ∂S/∂p where a limit holds it.
 */
export function spanSlopes(p: {
	lengths: readonly number[];
	style: StyleValues;
	at: Situation;
	linkage: Linkage;
	/** Leave the body lengths out (their slopes come back empty). */
	styleOnly?: boolean;
}): SpanSlopes {
	const { lengths, style, at, linkage } = p;
	const figure = figureFrom(lengths);
	const pair = (
		up: { spanMm: number; chinAboveCueMm: number },
		down: { spanMm: number; chinAboveCueMm: number },
		width: number,
	) => ({
		span: (up.spanMm - down.spanMm) / width,
		chin: (up.chinAboveCueMm - down.chinAboveCueMm) / width,
	});
	const free = linkage.trunk === "free";
	const byTheta = pair(
		placeAt(figure, style, at, linkage.theta + THETA_STEP),
		placeAt(figure, style, at, linkage.theta - THETA_STEP),
		2 * THETA_STEP,
	);
	const through = free ? byTheta.span / byTheta.chin : 0;
	const total = (d: { span: number; chin: number }) =>
		d.span - through * d.chin;

	const byLength = p.styleOnly
		? []
		: lengths.map((value, i) => {
				const shifted = (by: number) =>
					placeAt(
						figureFrom(lengths.with(i, value + by)),
						style,
						at,
						linkage.theta,
					);
				return total(
					pair(
						shifted(LENGTH_STEP_MM),
						shifted(-LENGTH_STEP_MM),
						2 * LENGTH_STEP_MM,
					),
				);
			});
	const byStyle = Object.fromEntries(
		(Object.keys(STYLE_STEP) as (keyof StyleValues)[]).map((name) => {
			// The chin's own condition is F = chin above cue − wanted: wanted enters F alone.
			if (name === "chinAboveCueMm") return [name, through];
			const h = STYLE_STEP[name];
			const shifted = (by: number) =>
				placeAt(
					figure,
					{ ...style, [name]: style[name] + by },
					at,
					linkage.theta,
				);
			return [name, total(pair(shifted(h), shifted(-h), 2 * h))];
		}),
	) as Record<keyof StyleValues, number>;
	return { byLength, byStyle };
}
