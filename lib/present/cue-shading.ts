import type { Grain } from "@/lib/cue/grain";
import type { CuePalette } from "./cue-palette";

/** Rings as `grainArrows` takes them, and the meridian of the cue that is their front. */
export interface WoodGrain extends Grain {
	readonly turnDeg?: number;
}

/** Each wood its own rings; null draws none. A wedge's rings turn with the face it is glued on. */
export interface CueGrain {
	readonly shaft: WoodGrain | null;
	readonly butt: WoodGrain | null;
}

/** Where no billet was looked at: this project's judgement of a usual one. */
export const USUAL_GRAIN: CueGrain = {
	shaft: { ringSpacingMm: 2, tiltDeg: 0 },
	butt: { ringSpacingMm: 1.5, tiltDeg: 0.2, turnDeg: 30 },
};

/** Rings a millimetre towards the reader, down and along the cue, and where the count begins. */
export interface Rings {
	readonly toward: number;
	readonly down: number;
	readonly along: number;
	readonly phase: number;
}

/**
 * A point of the surface stands at ring toward·w + down·v + along·station − phase: the planes of flat
 * rings that grain.ts counts. `faceDeg` is the wood's face against the meridian that faces the reader.
 */
export function ringsOf(grain: WoodGrain, faceDeg: number): Rings {
	const { ringSpacingMm, tiltDeg, turnDeg = 0, phaseShare = 0 } = grain;
	const face = ((faceDeg + turnDeg) * Math.PI) / 180;
	const tilt = (tiltDeg * Math.PI) / 180;
	const square = Math.cos(tilt) / ringSpacingMm;
	return {
		toward: square * Math.cos(face),
		down: square * Math.sin(face),
		along: Math.sin(tilt) / ringSpacingMm,
		phase: phaseShare,
	};
}

/** Half-width of a ring's line as a share of the spacing, and what it darkens on average. */
const LINE_HALF = 0.2;
const LINE_MEAN = (2 * LINE_HALF) / 3;

/**
 * How much of the ring colour shows, 0 to 1, at a count of rings: a line at each whole ring. A pixel
 * that spans a good part of a ring takes the average, so that fine rings do not make false patterns.
 */
export function ringShade(p: { rings: number; perPx: number }): number {
	const { rings, perPx } = p;
	if (!(perPx < 0.6)) return LINE_MEAN;
	const off = Math.abs(rings - Math.round(rings));
	const half = perPx > LINE_HALF ? Math.min(0.5, perPx) : LINE_HALF;
	const inside = off < half ? 1 - off / half : 0;
	const line = (LINE_HALF / half) * inside * inside;
	if (perPx <= 0.3) return line;
	const blur = (perPx - 0.3) / 0.3;
	return line + blur * (LINE_MEAN - line);
}

/** Steps of the light over half a diameter. */
const HALF = 512;

/** The light stands above and in front; unrolled there is none. */
const LIGHT_DEG = -42;
const SHINE_DEG = -24;

/** Factor and reflection by place across the cue, from its upper edge (0) to its lower (2·half). */
export function lightOf(isUnrolled: boolean): {
	readonly half: number;
	readonly shade: Float64Array;
	readonly shine: Float64Array;
} {
	const shade = new Float64Array(2 * HALF + 1).fill(1);
	const shine = new Float64Array(2 * HALF + 1);
	if (isUnrolled) return { half: HALF, shade, shine };
	for (let i = 0; i <= 2 * HALF; i++) {
		const place = Math.asin(i / HALF - 1);
		const toLight = (degrees: number) =>
			Math.max(0, Math.cos(place - (degrees * Math.PI) / 180));
		shade[i] = 0.54 + 0.53 * toLight(LIGHT_DEG);
		shine[i] = 150 * toLight(SHINE_DEG) ** 40;
	}
	return { half: HALF, shade, shine };
}

/** Darkens each pixel at which another part begins, to the right of or below the one before it. */
export function drawSeams(p: {
	rgba: Uint8ClampedArray;
	surface: Uint8Array;
	widthPx: number;
	seam: CuePalette["seam"];
}): void {
	const { rgba, surface, widthPx, seam } = p;
	for (let i = widthPx; i < surface.length; i++) {
		const here = surface[i] as number;
		if (here === 0) continue;
		const above = surface[i - widthPx] as number;
		const before = i % widthPx === 0 ? here : (surface[i - 1] as number);
		if ((above === here || above === 0) && (before === here || before === 0))
			continue;
		for (let channel = 0; channel < 3; channel++) {
			const at = 4 * i + channel;
			const was = rgba[at] as number;
			rgba[at] = was + seam.strength * ((seam.rgb[channel] as number) - was);
		}
	}
}
