import { planAddedWeight } from "@/lib/build/added-weight";
import type { CueDesign } from "@/lib/cue/design";
import { designFrom } from "@/lib/cue/template";
import type { CuePictureRequest } from "@/lib/forms/cue-picture-request";
import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import { GREY_PALETTE, NATURAL_PALETTE } from "@/lib/present/cue-palette";
import { renderCue } from "@/lib/present/cue-raster";
import { USUAL_GRAIN } from "@/lib/present/cue-shading";
import {
	heightForPx,
	readableStretch,
	VIEW_LIMITS,
} from "@/lib/present/cue-view";
import { encodePng } from "./png";

/** Without a stretch asked for, as on a page of this width. */
const PAGE_WIDTH_PX = 1000;

/** The picture of a requested cue as a PNG file. Refuses as `designFrom` and `planAddedWeight`, and pictures too high. */
export function cuePicturePng(request: CuePictureRequest): Outcome<Buffer> {
	const design = designOf(request);
	if (!design.ok) return design;
	const { part, widthPx, angleDeg } = request;
	const view = {
		part,
		isUnrolled: request.unrolled,
		stretch:
			request.stretch ??
			readableStretch({ design: design.value, part, widthPx: PAGE_WIDTH_PX }),
	};
	const heightPx = heightForPx({ design: design.value, view, widthPx });
	const tooHigh = outside("heightPx", heightPx, ...VIEW_LIMITS.heightPx);
	if (tooHigh) return refuse(tooHigh);
	const { rgba } = renderCue({
		design: design.value,
		view,
		angleDeg,
		widthPx,
		heightPx,
		palette: request.ink === "grey" ? GREY_PALETTE : NATURAL_PALETTE,
		grain: request.grain ?? USUAL_GRAIN,
	});
	return accept(encodePng({ rgba, widthPx, heightPx }));
}

function designOf(request: CuePictureRequest): Outcome<CueDesign> {
	const { cue, wantedMassG, wantedBalanceFromButtMm } = request;
	const design = designFrom(cue);
	if (!design.ok || wantedMassG === undefined) return design;
	const plan = planAddedWeight({
		design: design.value,
		wantedMassG,
		wantedBalanceFromButtMm,
	});
	return plan.ok ? accept(plan.value.finished) : plan;
}
