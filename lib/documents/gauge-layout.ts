import { gaugeStepsMm } from "@/lib/player/gauge";

/** Papers a gauge is printed on, mm: ISO 216 A4, and 8½ by 11 in. */
export const PAPERS = {
	a4: { name: "A4", widthMm: 210, heightMm: 297 },
	letter: { name: "Letter", widthMm: 215.9, heightMm: 279.4 },
} as const;

export type PaperId = keyof typeof PAPERS;
export type Paper = (typeof PAPERS)[PaperId];

/** Diameters of the gauge, mm; the cone is marked twice as finely. */
export const RING_GAUGE = { fromMm: 15, toMm: 50, stepMm: 1 } as const;
export const CONE_STEP_MM = 0.5;

/** Clear of what printers cannot reach; heading and ruler keep to it too. */
export const MARGIN_MM = 12;
export const HEADING_MM = 16;
export const RULER_ROOM_MM = 30;
const GAP_MM = 4;

export interface PrintedCircle {
	readonly diameterMm: number;
	readonly xMm: number;
	readonly yMm: number;
}

/** Circles in rows from small to large, a list for each page; centres from the paper's upper left corner. */
export function circlePages(
	paper: Pick<Paper, "widthMm" | "heightMm">,
): readonly (readonly PrintedCircle[])[] {
	const right = paper.widthMm - MARGIN_MM;
	const bottom = paper.heightMm - MARGIN_MM - RULER_ROOM_MM;
	const rows: number[][] = [];
	let used = Number.POSITIVE_INFINITY;
	for (const diameterMm of gaugeStepsMm(RING_GAUGE)) {
		if (used + diameterMm > right) {
			rows.push([]);
			used = MARGIN_MM;
		}
		rows.at(-1)?.push(diameterMm);
		used += diameterMm + GAP_MM;
	}
	const pages: PrintedCircle[][] = [];
	let top = Number.POSITIVE_INFINITY;
	for (const row of rows) {
		const height = Math.max(...row);
		if (top + height > bottom) {
			pages.push([]);
			top = MARGIN_MM + HEADING_MM;
		}
		let x = MARGIN_MM;
		for (const diameterMm of row) {
			pages.at(-1)?.push({
				diameterMm,
				xMm: x + diameterMm / 2,
				yMm: top + height / 2,
			});
			x += diameterMm + GAP_MM;
		}
		top += height + GAP_MM;
	}
	return pages;
}

/**
 * A cone unrolled: with half-angle α and k = sin α a circle of diameter d lies at d/(2k) from the
 * apex, and the whole sheet spans 2πk, so that each arc is πd long and rolls up to d.
 */
export const CONE_K = 0.11;
export const CONE_SPAN_RAD = 2 * Math.PI * CONE_K;
/** Strip to glue under, mm. */
export const GLUE_MM = 9;

export const fromApexMm = (diameterMm: number): number =>
	diameterMm / (2 * CONE_K);

/** A point of the unrolled cone: x to the right of its middle line, y down from the apex, mm. */
export const onCone = (
	diameterMm: number,
	angleRad: number,
): { xMm: number; yMm: number } => ({
	xMm: fromApexMm(diameterMm) * Math.sin(angleRad),
	yMm: fromApexMm(diameterMm) * Math.cos(angleRad),
});

/** Ticks of a ruler from 0, mm: position and rank (0 longest). */
export function rulerTicks(p: {
	lengthMm: number;
	stepMm: number;
	/** Every how many steps a tick is longer, from the longest kind down. */
	ranks: readonly number[];
}): readonly { readonly atMm: number; readonly rank: number }[] {
	return gaugeStepsMm({ fromMm: 0, toMm: p.lengthMm, stepMm: p.stepMm }).map(
		(atMm, i) => {
			const rank = p.ranks.findIndex((every) => i % every === 0);
			return { atMm, rank: rank === -1 ? p.ranks.length : rank };
		},
	);
}
