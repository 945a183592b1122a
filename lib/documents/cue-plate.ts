import type { CueDesign } from "@/lib/cue/design";
import { GREY_PALETTE, NATURAL_PALETTE } from "@/lib/present/cue-palette";
import { type CuePicture, cuePicture } from "@/lib/present/cue-picture";
import { renderCue } from "@/lib/present/cue-raster";
import { type CueGrain, USUAL_GRAIN } from "@/lib/present/cue-shading";
import {
	type CuePart,
	frameFor,
	heightForPx,
	readableStretch,
} from "@/lib/present/cue-view";
import { cueWords, viewWords } from "@/lib/present/cue-words";
import type { Reader } from "@/lib/words/reader";
import { encodePng } from "./png";

/** Units of the drawing across a page, and pixels of the raster for each: 220 to the inch on A4. */
const WIDTH_PX = 900;
const RASTER_SCALE = 2;

export interface CuePlateQuestion {
	readonly design: CueDesign;
	readonly reader: Reader;
	/** Default the whole cue. */
	readonly part?: CuePart;
	readonly isUnrolled?: boolean;
	/** Default: stretched so far that it is easy to read. */
	readonly isToScale?: boolean;
	readonly angleDeg?: number;
	readonly grain?: CueGrain;
	readonly balanceFromButtMm?: number;
	/** Grey keeps dark woods off black and draws every seam. */
	readonly ink?: "colour" | "grey";
}

/** A picture for paper: the raster as a file, the drawing over it in the raster's frame, and both in words. */
export interface CuePlate {
	readonly png: Buffer;
	readonly picture: CuePicture;
	/** How it is drawn. */
	readonly viewWords: string;
	/** What it shows. */
	readonly cueWords: string;
}

/** Raster and drawing share `picture.frame`: the file fills its width and height exactly. */
export function cuePlate(p: CuePlateQuestion): CuePlate {
	const { design, reader, balanceFromButtMm } = p;
	const { part = "whole", angleDeg = 0 } = p;
	const view = {
		part,
		isUnrolled: p.isUnrolled ?? false,
		stretch: p.isToScale
			? 1
			: readableStretch({ design, part, widthPx: WIDTH_PX }),
	};
	const heightPx = heightForPx({ design, view, widthPx: WIDTH_PX });
	const frame = frameFor({
		design,
		view,
		angleDeg,
		widthPx: WIDTH_PX,
		heightPx,
	});
	const raster = {
		widthPx: WIDTH_PX * RASTER_SCALE,
		heightPx: heightPx * RASTER_SCALE,
	};
	const { rgba } = renderCue({
		design,
		view,
		angleDeg,
		...raster,
		palette: p.ink === "grey" ? GREY_PALETTE : NATURAL_PALETTE,
		grain: p.grain ?? USUAL_GRAIN,
	});
	return {
		png: encodePng({ rgba, ...raster }),
		picture: cuePicture({ design, frame, reader, balanceFromButtMm }),
		viewWords: viewWords({ ...view, angleDeg }, reader),
		cueWords: cueWords({ design, reader, balanceFromButtMm }),
	};
}
