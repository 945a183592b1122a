import type { CueDesign } from "@/lib/cue/design";
import { cutOffsetMm, prongHalfWidthMm, sleevesOf } from "@/lib/cue/layers";
import type { MaterialPoint } from "@/lib/cue/material";
import { outlineRadiusMm, taperCurve } from "@/lib/cue/taper";
import type { CuePalette } from "./cue-palette";
import { BUTT, FIRST_BODY, type Scene, SHAFT, sceneOf } from "./cue-scene";
import { type CueGrain, drawSeams, ringShade } from "./cue-shading";
import { type CueFrame, type CueView, frameFor, stationAtPx } from "./cue-view";

export interface CueRender {
	readonly frame: CueFrame;
	/** Four bytes a pixel, row by row; alpha is how much of the pixel the cue covers. */
	readonly rgba: Uint8ClampedArray<ArrayBuffer>;
	/** One byte a pixel: 0 where the pixel's centre is beside the cue, else 1 + its place in `legend`. */
	readonly surface: Uint8Array<ArrayBuffer>;
	/** Shaft wood, butt wood, every body of revolution, every flat in glue order. */
	readonly legend: readonly MaterialPoint[];
}

/**
 * The cue's surface, one point a pixel, from the same planes and bodies that `materialAt` asks.
 * What does not change down a column is worked out once a column; down it, a point of the surface is
 * (w, v), towards the reader and down, and a flat of normal n is passed where n·(w, v) exceeds its
 * offset, so no pixel needs a trigonometric function. Throws as `frameFor`.
 */
export function renderCue(p: {
	design: CueDesign;
	view: CueView;
	angleDeg: number;
	widthPx: number;
	heightPx: number;
	palette: CuePalette;
	grain: CueGrain;
}): CueRender {
	const { design, palette } = p;
	const frame = frameFor(p);
	const { widthPx, heightPx } = frame;
	const rgba = new Uint8ClampedArray(4 * widthPx * heightPx);
	const surface = new Uint8Array(widthPx * heightPx);
	const scene = sceneOf({ ...p, frame });
	const curve = taperCurve(design.taper);
	const column: Column = {
		index: 0,
		stationMm: 0,
		radiusMm: 0,
		slope: 0,
		fullBody: NONE,
		halfMm: 0,
		offsetsMm: new Float64Array(design.splice.cuts.length),
		flats: new Int32Array(design.splice.cuts.length),
		flatCount: 0,
	};
	for (let i = 0; i < widthPx; i++) {
		const stationMm = stationAtPx(frame, i + 0.5);
		column.index = i;
		column.stationMm = stationMm;
		column.radiusMm = outlineRadiusMm(design, stationMm);
		column.slope = curve.slopeAt(stationMm) / 2;
		settle(scene, column);
		paint(scene, column, { rgba, surface });
	}
	drawSeams({ rgba, surface, widthPx, seam: palette.seam });
	return { frame, rgba, surface, legend: scene.legend };
}

const NONE = -1;

/** What is the same all round the cue at one station. */
interface Column {
	index: number;
	stationMm: number;
	radiusMm: number;
	/** Growth of the radius along the cue. */
	slope: number;
	/** Place in the legend of the body that is the whole surface here. */
	fullBody: number;
	/** Half-width of the shaft's strips under the flats: Infinity all shaft wood, 0 all butt wood. */
	halfMm: number;
	readonly offsetsMm: Float64Array;
	/** The flats that reach the surface here, last glued first. */
	readonly flats: Int32Array;
	flatCount: number;
}

function settle({ design }: Scene, column: Column): void {
	const { stationMm, radiusMm, flats, offsetsMm } = column;
	const { base, cuts } = design.splice;
	const place = sleevesOf(design).findLastIndex(
		(body) =>
			stationMm >= body.fromStationMm &&
			stationMm < body.toStationMm &&
			radiusMm >= body.innerRadiusMm &&
			radiusMm < body.outerRadiusMm,
	);
	column.fullBody = place < 0 ? NONE : FIRST_BODY + place;
	column.flatCount = 0;
	for (let k = cuts.length - 1; k >= 0; k--) {
		const cut = cuts[k];
		if (!cut) continue;
		const offsetMm = cutOffsetMm({ design, cut, stationMm });
		offsetsMm[k] = offsetMm;
		if (offsetMm < radiusMm) flats[column.flatCount++] = k;
	}
	if (base.kind === "prongs") {
		column.halfMm = prongHalfWidthMm(design, stationMm);
		return;
	}
	const isShaft =
		base.kind === "through" ||
		stationMm < base.joinStationMm ||
		(stationMm < base.joinStationMm + base.tenonLengthMm &&
			radiusMm < base.tenonDiameterMm / 2);
	column.halfMm = isShaft ? Number.POSITIVE_INFINITY : 0;
}

/** Place in the legend of what stands at a point of the surface. */
function bodyAt(
	{ normals, diagonal, firstFlat }: Scene,
	column: Column,
	w: number,
	v: number,
): number {
	if (column.fullBody !== NONE) return column.fullBody;
	const { flats, offsetsMm, halfMm } = column;
	for (let f = 0; f < column.flatCount; f++) {
		const k = flats[f] as number;
		const reached =
			(normals[2 * k] as number) * w + (normals[2 * k + 1] as number) * v;
		if (reached > (offsetsMm[k] as number)) return firstFlat + k;
	}
	if (halfMm === Number.POSITIVE_INFINITY) return SHAFT;
	if (halfMm === 0) return BUTT;
	const [c, s] = diagonal;
	return Math.abs(c * w + s * v) < halfMm || Math.abs(c * v - s * w) < halfMm
		? SHAFT
		: BUTT;
}

function paint(
	scene: Scene,
	column: Column,
	into: { rgba: Uint8ClampedArray; surface: Uint8Array },
): void {
	const { frame, down, toward, inks, glosses, light } = scene;
	const { radiusMm } = column;
	if (!(radiusMm > 0)) return;
	const { heightPx, widthPx, pxAcross } = frame;
	for (let j = 0; j < heightPx; j++) {
		let v = down[j] as number;
		let w: number;
		let cover = 1;
		let isInside = true;
		if (toward) {
			v *= radiusMm;
			w = radiusMm * (toward[j] as number);
		} else {
			const airPx = (Math.abs(v) - radiusMm) * pxAcross;
			if (airPx >= 0.5) continue;
			if (airPx > -0.5) cover = 0.5 - airPx;
			isInside = airPx <= 0;
			if (!isInside) v = v > 0 ? radiusMm : -radiusMm;
			w = Math.sqrt(radiusMm * radiusMm - v * v);
		}
		const body = bodyAt(scene, column, w, v);
		const pixel = j * widthPx + column.index;
		if (isInside) into.surface[pixel] = 1 + body;
		const line = ringLine({ scene, column, body, w, v });
		const lit = Math.round((v / radiusMm + 1) * light.half);
		const shade = light.shade[lit] as number;
		const shine = (glosses[body] as number) * (light.shine[lit] as number);
		for (let channel = 0; channel < 3; channel++) {
			const ground = inks[6 * body + channel] as number;
			const late = inks[6 * body + 3 + channel] as number;
			into.rgba[4 * pixel + channel] =
				(ground + line * (late - ground)) * shade + shine;
		}
		into.rgba[4 * pixel + 3] = 255 * cover;
	}
}

/** How much of the ring colour shows at a point, with the rings that one pixel spans there. */
function ringLine(p: {
	scene: Scene;
	column: Column;
	body: number;
	w: number;
	v: number;
}): number {
	const { w, v } = p;
	const { radiusMm, stationMm, slope } = p.column;
	const rings = p.scene.rings[p.body];
	if (!rings) return 0;
	const { pxAcross, pxPerMm, view } = p.scene.frame;
	const { toward, down, along, phase } = rings;
	const count = toward * w + down * v;
	const round = down * w - toward * v;
	const perPx = view.isUnrolled
		? (Math.abs(round) * Math.PI) / 180 / pxAcross +
			Math.abs((count * slope) / radiusMm + along) / pxPerMm
		: Math.abs(round) / (w * pxAcross) +
			Math.abs((toward * radiusMm * slope) / w + along) / pxPerMm;
	return ringShade({ rings: count + along * stationMm - phase, perPx });
}
