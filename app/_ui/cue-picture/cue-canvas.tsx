"use client";

import { useEffect, useRef } from "react";
import type { CueDesign } from "@/lib/cue/design";
import type { CuePicture } from "@/lib/present/cue-picture";
import type { CueGrain } from "@/lib/present/cue-shading";
import styles from "./cue-picture.module.css";
import { RasterLine } from "./raster";

/** Pixels of the raster across, where the screen has room for fewer: enough for paper. */
const LEAST_RASTER_PX = 1600;
const MOST_SCALE = 3;
const MOST_RASTER_PX = 3200;

/**
 * The raster under the drawing, in the screen's own pixels. It is drawn away from the page and follows
 * the drawing a moment later; until then the one before stands.
 */
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
	const line = useRef<RasterLine | null>(null);
	const asked = useRef(0);
	const { view, angleDeg, widthPx, heightPx } = frame;
	useEffect(
		() => () => {
			line.current?.close();
			line.current = null;
		},
		[],
	);
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
		const mine = ++asked.current;
		delete element.dataset.drawn;
		line.current ??= new RasterLine();
		line.current.draw({ design, view, angleDeg, ...size, grain }, (rgba) => {
			element.width = size.widthPx;
			element.height = size.heightPx;
			context.putImageData(
				new ImageData(rgba, size.widthPx, size.heightPx),
				0,
				0,
			);
			if (mine === asked.current) element.dataset.drawn = String(angleDeg);
		});
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
