import { figureFrom } from "./figure";
import { type Situation, type StyleValues, solveLinkage } from "./linkage";
import { spanSlopes } from "./spread";
import { type Style, valuesOf } from "./style";

export interface StyleFit {
	readonly style: StyleValues;
	/** How far the style had to move from what was said, in standard deviations. */
	readonly distanceSd: number;
	/** Style figures that ran into the end of what a player can do. */
	readonly heldAtBound: readonly (keyof StyleValues)[];
	/** Span of the fitted style less the measured one, mm. */
	readonly residualMm: number;
	readonly converged: boolean;
}

/** What a player can do at all, whatever was measured. Assumed. */
const BOUNDS: Readonly<Record<keyof StyleValues, readonly [number, number]>> = {
	yawDeg: [5, 90],
	bridgeElbowDeg: [60, 180],
	chinAboveCueMm: [0, 700],
	headInclinationDeg: [0, 70],
	gripShoulderRiseDeg: [-30, 60],
	bridgeShoulderRiseDeg: [-40, 50],
	trunkHeadingDeg: [-30, 60],
	neckLeanDeg: [-15, 40],
	forearmTiltDeg: [-35, 35],
	legDropRatio: [0, 0.4],
	elevationDeg: [0, 20],
	bridgeAxisHeightMm: [20, 70],
	seatHeightMm: [0, 800],
};

/** Longest move of one step, in standard deviations. */
const TRUST_SD = 1.5;
/** Steps toward the nearest style, then steps that only close what is left of the span. */
const NEAREST_STEPS = 12;
const CLOSING_STEPS = 30;
const CLOSED_MM = 1e-7;
/** A move shorter than this, in standard deviations, changes nothing a coach could see. */
const SETTLED_SD = 1e-4;

/**
 * The style nearest to what was said, in standard deviations, that gives the measured span:
 * minimise Σ((p − p₀)/sd)² subject to S(p) = span, by successive linear constraints.
 */
export function fitStyleToSpan(p: {
	lengths: readonly number[];
	style: Style;
	at: Situation;
	spanMm: number;
}): StyleFit {
	const { lengths, at, spanMm } = p;
	const figure = figureFrom(lengths);
	const start = valuesOf(p.style);
	const sd = (name: keyof StyleValues) => p.style[name].sd;
	const moving = (Object.keys(p.style) as (keyof StyleValues)[]).filter(
		(name) => sd(name) > 0,
	);
	const held = new Set<keyof StyleValues>();
	let now: StyleValues = start;
	let linkage = solveLinkage(figure, now, at);

	let closing = false;
	for (let step = 0; step < NEAREST_STEPS + CLOSING_STEPS; step++) {
		const residualMm = linkage.spanMm - spanMm;
		closing ||= step >= NEAREST_STEPS;
		if (Math.abs(residualMm) < CLOSED_MM && (closing || step === 0)) break;
		const { byStyle } = spanSlopes({
			lengths,
			style: now,
			at,
			linkage,
			styleOnly: true,
		});
		const free = moving.filter((n) => !held.has(n));
		const power = free.reduce((sum, n) => sum + (byStyle[n] * sd(n)) ** 2, 0);
		if (!(power > 0)) break;
		const back = closing
			? 0
			: free.reduce((sum, n) => sum + byStyle[n] * (start[n] - now[n]), 0);
		const pull = (-residualMm - back) / power;
		const moves = free.map((n) => {
			const from = closing ? now[n] : start[n];
			return from + pull * byStyle[n] * sd(n) ** 2 - now[n];
		});
		const longest = Math.hypot(
			...free.map((n, i) => (moves[i] as number) / sd(n)),
		);
		if (longest < (closing ? 1e-14 : SETTLED_SD)) {
			if (closing) break;
			closing = true;
		}
		const part = Math.min(1, TRUST_SD / longest);
		const next: Record<keyof StyleValues, number> = { ...now };
		for (const [i, n] of free.entries()) {
			const value = now[n] + part * (moves[i] as number);
			const [low, high] = BOUNDS[n];
			if (value < low || value > high) held.add(n);
			next[n] = Math.min(high, Math.max(low, value));
		}
		now = next;
		linkage = solveLinkage(figure, now, at);
	}
	const residualMm = linkage.spanMm - spanMm;
	return {
		style: now,
		distanceSd: Math.hypot(...moving.map((n) => (now[n] - start[n]) / sd(n))),
		heldAtBound: [...held],
		residualMm,
		converged: Math.abs(residualMm) < 1e-6,
	};
}
