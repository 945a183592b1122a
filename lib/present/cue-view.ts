import type { CueDesign } from "@/lib/cue/design";
import { cutOffsetMm } from "@/lib/cue/layers";
import { diameterAtMm, outlineRadiusMm } from "@/lib/cue/taper";
import { rootBetween } from "@/lib/numerics/roots";

/** `front`: the part a player sights along. `butt`: from just before the first point to the end. */
export type CuePart = "whole" | "front" | "butt";

export interface CueView {
	readonly part: CuePart;
	/** The surface laid flat, one full turn over the height, instead of the cue seen from the side. */
	readonly isUnrolled: boolean;
	/** Thickness is drawn so many times larger than length; 1 is to scale. Of no effect unrolled. */
	readonly stretch: number;
}

/**
 * Where a cue stands in a picture. One frame serves the raster, the drawing over it and the print.
 * Tip on the left. Seen from the side, the meridian at `angleDeg` faces the reader and angles grow
 * downwards, so that x (towards the reader), y (down) and the axis (to the right) are right-handed.
 */
export interface CueFrame {
	readonly view: CueView;
	readonly angleDeg: number;
	readonly widthPx: number;
	readonly heightPx: number;
	readonly fromMm: number;
	readonly toMm: number;
	readonly pxPerMm: number;
	/** Across the axis; pixels a degree where unrolled. */
	readonly pxAcross: number;
}

export const VIEW_LIMITS = {
	widthPx: [100, 4000],
	heightPx: [4, 1600],
	stretch: [1, 30],
	angleDeg: [-360, 720],
} as const;

const FRONT_MM = 300;
const UNROLLED_HEIGHT_SHARE = 0.25;
/** Room in front of the first point in the enlarged butt, share of what is behind it. */
const BEFORE_POINTS_SHARE = 0.06;

/** The stretch of stations a part shows. */
export function stationsShownMm(
	design: CueDesign,
	part: CuePart,
): readonly [number, number] {
	const { lengthMm } = design;
	if (part === "whole") return [0, lengthMm];
	if (part === "front") return [0, Math.min(FRONT_MM, lengthMm / 2)];
	const behindMm = lengthMm - firstButtWoodMm(design);
	return [
		Math.max(0, lengthMm - behindMm * (1 + BEFORE_POINTS_SHARE)),
		lengthMm,
	];
}

/** Where the first wood of the butt comes to the surface; half the length where there is none. */
export function firstButtWoodMm(design: CueDesign): number {
	const { base, cuts } = design.splice;
	const stations = cuts
		.map((cut) => pointStationMm(design, cut))
		.filter((station) => station !== null);
	if (base.kind === "tenon") stations.push(base.joinStationMm);
	if (base.kind === "prongs") stations.push(base.pointStationMm);
	return stations.length > 0 ? Math.min(...stations) : design.lengthMm / 2;
}

/** Where a planed flat leaves the surface in a point; null where it never reaches it. */
export function pointStationMm(
	design: CueDesign,
	cut: CueDesign["splice"]["cuts"][number],
): number | null {
	const found = rootBetween({
		f: (stationMm) =>
			diameterAtMm(design, stationMm) / 2 -
			cutOffsetMm({ design, cut, stationMm }),
		from: 0,
		to: design.lengthMm,
		tolerance: 1e-9,
	});
	return found.converged ? found.root : null;
}

/** Height that holds the thickest shown part with a pixel of air on both sides; whole pixels. */
export function heightForPx(p: {
	design: CueDesign;
	view: CueView;
	widthPx: number;
}): number {
	const { design, view, widthPx } = p;
	const [fromMm, toMm] = stationsShownMm(design, view.part);
	if (view.isUnrolled) return Math.round(UNROLLED_HEIGHT_SHARE * widthPx);
	const pxPerMm = widthPx / (toMm - fromMm);
	return Math.ceil(diameterAtMm(design, toMm) * pxPerMm * view.stretch) + 2;
}

/** Height a side view is stretched towards, so that points and rings can be read on any screen. */
const READABLE_PX = 68;
const MOST_STRETCH = 8;

/** A whole stretch that makes a part easy to read at a width. */
export function readableStretch(p: {
	design: CueDesign;
	part: CuePart;
	widthPx: number;
}): number {
	const { design, part, widthPx } = p;
	const [fromMm, toMm] = stationsShownMm(design, part);
	const toScalePx = (diameterAtMm(design, toMm) * widthPx) / (toMm - fromMm);
	return Math.min(
		MOST_STRETCH,
		Math.max(1, Math.round(READABLE_PX / toScalePx)),
	);
}

/**
 * The frame of a view. Throws RangeError for sizes, angles and stretches outside `VIEW_LIMITS` and
 * where the height cuts into the cue.
 */
export function frameFor(p: {
	design: CueDesign;
	view: CueView;
	angleDeg: number;
	widthPx: number;
	heightPx: number;
}): CueFrame {
	const { design, view, angleDeg, widthPx, heightPx } = p;
	within("widthPx", widthPx, VIEW_LIMITS.widthPx);
	within("heightPx", heightPx, VIEW_LIMITS.heightPx);
	within("angleDeg", angleDeg, VIEW_LIMITS.angleDeg);
	within("stretch", view.stretch, VIEW_LIMITS.stretch);
	const [fromMm, toMm] = stationsShownMm(design, view.part);
	const pxPerMm = widthPx / (toMm - fromMm);
	const pxAcross = view.isUnrolled ? heightPx / 360 : pxPerMm * view.stretch;
	const thickPx = diameterAtMm(design, toMm) * pxAcross;
	if (!view.isUnrolled && thickPx > heightPx)
		throw new RangeError(
			`heightPx must hold ${thickPx} px of cue, got ${heightPx} px`,
		);
	return {
		view,
		angleDeg,
		widthPx,
		heightPx,
		fromMm,
		toMm,
		pxPerMm,
		pxAcross,
	};
}

function within(
	name: string,
	value: number,
	[min, max]: readonly [number, number],
): void {
	if (!(value >= min && value <= max))
		throw new RangeError(`${name} must be ${min} to ${max}, got ${value}`);
}

export const xPx = (frame: CueFrame, stationMm: number): number =>
	(stationMm - frame.fromMm) * frame.pxPerMm;

export const stationAtPx = (frame: CueFrame, x: number): number =>
	frame.fromMm + x / frame.pxPerMm;

/** Height of a distance across the axis, down positive. For views from the side. */
export const yPx = (frame: CueFrame, acrossMm: number): number =>
	frame.heightPx / 2 + acrossMm * frame.pxAcross;

export const acrossAtPx = (frame: CueFrame, y: number): number =>
	(y - frame.heightPx / 2) / frame.pxAcross;

/** Height of an angle in an unrolled view, the facing meridian in the middle. */
export function angleYPx(frame: CueFrame, angleDeg: number): number {
	const past = angleDeg - frame.angleDeg + 180;
	return (past - 360 * Math.floor(past / 360)) * frame.pxAcross;
}

/** The point of the surface under a point of the picture, or null beside the cue. */
export function surfaceAtPx(p: {
	design: CueDesign;
	frame: CueFrame;
	x: number;
	y: number;
}): { stationMm: number; angleDeg: number; radiusMm: number } | null {
	const { design, frame, x, y } = p;
	const stationMm = stationAtPx(frame, x);
	if (stationMm < 0 || stationMm > design.lengthMm) return null;
	const radiusMm = outlineRadiusMm(design, stationMm);
	if (frame.view.isUnrolled)
		return {
			stationMm,
			radiusMm,
			angleDeg: frame.angleDeg + y / frame.pxAcross - 180,
		};
	const acrossMm = acrossAtPx(frame, y);
	if (Math.abs(acrossMm) > radiusMm) return null;
	return {
		stationMm,
		radiusMm,
		angleDeg: frame.angleDeg + (Math.asin(acrossMm / radiusMm) * 180) / Math.PI,
	};
}
