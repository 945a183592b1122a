import "server-only";
import type { CueDesign } from "@/lib/cue/design";
import { encodePng } from "@/lib/documents/png";
import { GREY_PALETTE, NATURAL_PALETTE } from "@/lib/present/cue-palette";
import { cuePicture } from "@/lib/present/cue-picture";
import { renderCue } from "@/lib/present/cue-raster";
import { type CueGrain, USUAL_GRAIN } from "@/lib/present/cue-shading";
import {
	type CuePart,
	frameFor,
	heightForPx,
	readableStretch,
} from "@/lib/present/cue-view";
import { cueWords, viewWords } from "@/lib/present/cue-words";
import type { UnitSystem } from "@/lib/units/quantity";
import { CueOverlay } from "./cue-overlay";
import styles from "./cue-picture.module.css";

/** Units of the drawing across a page, and pixels of the raster for each: 220 to the inch on A4. */
const WIDTH_PX = 900;
const RASTER_SCALE = 2;

/** The picture for paper: made on the server, needing nothing of the browser but to show it. */
export function CuePlate({
	design,
	system,
	part = "whole",
	isUnrolled = false,
	isToScale = false,
	angleDeg = 0,
	grain = USUAL_GRAIN,
	balanceFromButtMm,
	ink = "colour",
}: {
	design: CueDesign;
	system: UnitSystem;
	part?: CuePart;
	isUnrolled?: boolean;
	isToScale?: boolean;
	angleDeg?: number;
	grain?: CueGrain;
	balanceFromButtMm?: number;
	/** Grey keeps dark woods off black and draws every seam. */
	ink?: "colour" | "grey";
}) {
	const stretch = isToScale
		? 1
		: readableStretch({ design, part, widthPx: WIDTH_PX });
	const view = { part, isUnrolled, stretch };
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
		palette: ink === "grey" ? GREY_PALETTE : NATURAL_PALETTE,
		grain,
	});
	const image = `data:image/png;base64,${encodePng({ rgba, ...raster }).toString("base64")}`;
	const words = viewWords({ ...view, angleDeg });
	return (
		<figure className={styles.plate}>
			<div
				role="img"
				aria-label={`${words} ${cueWords({ design, system, balanceFromButtMm })}`}
			>
				<CueOverlay
					picture={cuePicture({ design, frame, system, balanceFromButtMm })}
					image={image}
				/>
			</div>
			<figcaption>{words} Distances are from the butt end.</figcaption>
		</figure>
	);
}
