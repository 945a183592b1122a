"use client";

import { useEffect, useRef } from "react";
import type { CueDesign } from "@/lib/cue/design";
import { NATURAL_PALETTE } from "@/lib/present/cue-palette";
import type { CuePicture } from "@/lib/present/cue-picture";
import { renderCue } from "@/lib/present/cue-raster";
import type { CueGrain } from "@/lib/present/cue-shading";
import styles from "./cue-picture.module.css";

/** Pixels of the raster across, where the screen has room for fewer: enough for paper. */
const LEAST_RASTER_PX = 1600;
const MOST_SCALE = 3;
const MOST_RASTER_PX = 3200;

/** The raster under the drawing, in the screen's own pixels. */
export function CueCanvas({
	design,
	picture: { frame, roomAbovePx, roomBelowPx },
	grain,
}: {
	design: CueDesign;
	picture: CuePicture;
	grain: CueGrain;
}) {
	const canvas = useRef<HTMLCanvasElement>(null);
	const { view, angleDeg, widthPx, heightPx } = frame;
	useEffect(() => {
		const element = canvas.current;
		const context = element?.getContext("2d");
		if (!element || !context) return;
		const scale = Math.min(
			MOST_SCALE,
			MOST_RASTER_PX / widthPx,
			Math.max(window.devicePixelRatio, LEAST_RASTER_PX / widthPx),
		);
		const size = {
			widthPx: Math.round(widthPx * scale),
			heightPx: Math.round(heightPx * scale),
		};
		const { rgba } = renderCue({
			design,
			view,
			angleDeg,
			...size,
			palette: NATURAL_PALETTE,
			grain,
		});
		element.width = size.widthPx;
		element.height = size.heightPx;
		context.putImageData(
			new ImageData(rgba, size.widthPx, size.heightPx),
			0,
			0,
		);
		element.dataset.drawn = String(angleDeg);
	}, [design, view, angleDeg, widthPx, heightPx, grain]);
	const fullPx = roomAbovePx + heightPx + roomBelowPx;
	return (
		<canvas
			className={styles.canvas}
			ref={canvas}
			style={{
				insetBlockStart: `${(100 * roomAbovePx) / fullPx}%`,
				blockSize: `${(100 * heightPx) / fullPx}%`,
			}}
		/>
	);
}
