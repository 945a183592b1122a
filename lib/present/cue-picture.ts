import type { CueDesign } from "@/lib/cue/design";
import { sleevesOf } from "@/lib/cue/layers";
import { diameterAtMm, domeDepthMm, outlineRadiusMm } from "@/lib/cue/taper";
import type { Reader } from "@/lib/words/reader";
import { angleYPx, type CueFrame, xPx, yPx } from "./cue-view";
import { formatLength, formatNumber } from "./figures";
import { metalName } from "./labels";
import { placeLabels } from "./place-labels";
import { pointMarks } from "./point-marks";

export type MarkKind = "joint" | "points" | "balance" | "weight";

/** A place along the cue with its label hung below the picture. */
export interface PlacedMark {
	readonly kind: MarkKind;
	readonly text: string;
	readonly x: number;
	/** The leader: from the cue's lower edge to beside the text, or above it where the text had to move. */
	readonly fromY: number;
	readonly toY: number;
	readonly textX: number;
	readonly textY: number;
}

/** A body inside the wood, drawn with a broken line. */
export interface HiddenBody {
	readonly part: string;
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

export interface EndLabel {
	readonly text: string;
	readonly side: "left" | "right";
}

/** The drawing that lies over the raster, in the raster's own pixels; above and below it there is room. */
export interface CuePicture {
	readonly frame: CueFrame;
	readonly roomAbovePx: number;
	readonly roomBelowPx: number;
	readonly outline: string;
	readonly hidden: readonly HiddenBody[];
	readonly marks: readonly PlacedMark[];
	/** Thickness at the two ends of what is shown. */
	readonly ends: readonly EndLabel[];
	/** Length of what is shown. */
	readonly span: string;
	/** Unrolled: where the meridians stand. */
	readonly meridians: readonly { readonly y: number; readonly text: string }[];
}

/** Size of the text over the picture. */
export const LABEL_PX = 15;
export const LABEL_ROW_PX = 20;
/** Mean advance of the face used, share of its size; rather wide. */
const ADVANCE = 0.56;

/** Samples of each part of the outline: no chord leaves the curve by a tenth of a pixel. */
const OUTLINE_STEPS = 60;

/**
 * Outline, dimensions and what lies inside, for a frame of the raster. Distances are written from the
 * butt end. `balanceFromButtMm` is drawn where given.
 */
export function cuePicture(p: {
	design: CueDesign;
	frame: CueFrame;
	reader: Reader;
	balanceFromButtMm?: number;
}): CuePicture {
	const { design, frame, reader } = p;
	const marks = placedMarks(p);
	const lowest = Math.max(frame.heightPx, ...marks.map(({ textY }) => textY));
	return {
		frame,
		roomAbovePx: 2 * LABEL_ROW_PX + 6,
		roomBelowPx: lowest - frame.heightPx + 6,
		outline: outlinePath(design, frame),
		hidden: frame.view.isUnrolled ? [] : hiddenBodies(design, frame),
		marks,
		ends: endLabels(design, frame, reader),
		span: formatLength(frame.toMm - frame.fromMm, reader),
		meridians: frame.view.isUnrolled
			? [0, 90, 180, 270].map((angleDeg) => ({
					y: angleYPx(frame, angleDeg),
					text: `${formatNumber(angleDeg, reader)}°`,
				}))
			: [],
	};
}

const rounded = (value: number): number => Math.round(value * 100) / 100;

function outlinePath(design: CueDesign, frame: CueFrame): string {
	const { widthPx, heightPx } = frame;
	if (frame.view.isUnrolled) return `M0 0H${widthPx}V${heightPx}H0Z`;
	const stations = outlineStationsMm(design).filter(
		(stationMm) => stationMm > frame.fromMm && stationMm < frame.toMm,
	);
	const edge = (stationMm: number, side: number) => {
		const y = yPx(frame, side * outlineRadiusMm(design, stationMm));
		return `${rounded(xPx(frame, stationMm))} ${rounded(y)}`;
	};
	const all = [frame.fromMm, ...stations, frame.toMm];
	const upper = all.map((stationMm) => edge(stationMm, -1));
	const lower = all.map((stationMm) => edge(stationMm, 1)).reverse();
	return `M${[...upper, ...lower].join("L")}Z`;
}

/** Evenly along the taper, closer together where the tip's dome and the butt's edge turn. */
function outlineStationsMm(design: CueDesign): readonly number[] {
	const { lengthMm, buttEndRadiusMm } = design;
	const domeMm = domeDepthMm(design);
	const shares = Array.from(
		{ length: OUTLINE_STEPS },
		(_, i) => (i + 1) / OUTLINE_STEPS,
	);
	const turn = shares.map((share) => 1 - Math.cos((Math.PI / 2) * share));
	return [
		...shares.map((share) => domeMm * share * share),
		...shares.map(
			(share) => domeMm + share * (lengthMm - buttEndRadiusMm - domeMm),
		),
		...turn.map((share) => lengthMm - buttEndRadiusMm * share).reverse(),
	];
}

/** Pins, plugs and added weight: every body that does not reach the surface. */
function hiddenBodies(
	design: CueDesign,
	frame: CueFrame,
): readonly HiddenBody[] {
	return sleevesOf(design)
		.filter(
			(body) =>
				Number.isFinite(body.outerRadiusMm) &&
				body.toStationMm > frame.fromMm &&
				body.fromStationMm < frame.toMm,
		)
		.map((body) => {
			const x = xPx(frame, Math.max(body.fromStationMm, frame.fromMm));
			const y = yPx(frame, -body.outerRadiusMm);
			return {
				part: body.part,
				x: rounded(x),
				y: rounded(y),
				width: rounded(xPx(frame, Math.min(body.toStationMm, frame.toMm)) - x),
				height: rounded(yPx(frame, body.outerRadiusMm) - y),
			};
		});
}

interface Mark {
	readonly kind: MarkKind;
	readonly stationMm: number;
	readonly text: string;
}

function marksOf(p: {
	design: CueDesign;
	reader: Reader;
	balanceFromButtMm?: number;
}): readonly Mark[] {
	const { design, reader, balanceFromButtMm } = p;
	const { say } = reader;
	const { lengthMm, joint, endJoint } = design;
	const fromButt = (stationMm: number) =>
		formatLength(lengthMm - stationMm, reader);
	const marks: Mark[] = pointMarks(design).map(({ place, stationMm }) => ({
		kind: "points",
		stationMm,
		text: say("cuePicture.mark", {
			name: say(`cuePicture.place.${place}`),
			place: fromButt(stationMm),
		}),
	}));
	for (const [one, name] of [
		[joint, "joint"],
		[endJoint, "endPiece"],
	] as const)
		if (one)
			marks.push({
				kind: "joint",
				stationMm: one.stationMm,
				text: say("cuePicture.mark", {
					name: say(`cuePicture.${name}`),
					place: fromButt(one.stationMm),
				}),
			});
	if (balanceFromButtMm !== undefined)
		marks.push({
			kind: "balance",
			stationMm: lengthMm - balanceFromButtMm,
			text: say("cuePicture.balance", {
				place: formatLength(balanceFromButtMm, reader),
			}),
		});
	for (const slug of design.addedWeight)
		marks.push({
			kind: "weight",
			stationMm: (slug.fromStationMm + slug.toStationMm) / 2,
			text: say("cuePicture.slug", {
				metal: metalName(slug.metal, reader),
				across: formatLength(slug.diameterMm, reader, "diameter"),
				length: formatLength(slug.toStationMm - slug.fromStationMm, reader),
			}),
		});
	return marks;
}

function placedMarks(p: {
	design: CueDesign;
	frame: CueFrame;
	reader: Reader;
	balanceFromButtMm?: number;
}): readonly PlacedMark[] {
	const { design, frame } = p;
	const marks = marksOf(p).filter(
		({ stationMm }) => stationMm >= frame.fromMm && stationMm <= frame.toMm,
	);
	const widths = marks.map(({ text }) => text.length * LABEL_PX * ADVANCE);
	const placed = placeLabels(
		marks.map(({ stationMm }, i) => ({
			x: xPx(frame, stationMm),
			widthPx: widths[i] ?? 0,
		})),
		frame.widthPx,
	);
	return marks.map(({ kind, stationMm, text }, i) => {
		const { row = 0, left = 0 } = placed[i] ?? {};
		const x = xPx(frame, stationMm);
		const textY = frame.heightPx + (row + 1) * LABEL_ROW_PX;
		const isUnder = x > left && x < left + (widths[i] ?? 0);
		return {
			kind,
			text,
			x: rounded(x),
			fromY: frame.view.isUnrolled
				? frame.heightPx
				: rounded(yPx(frame, outlineRadiusMm(design, stationMm))),
			toY: isUnder ? textY - LABEL_PX : textY,
			textX: rounded(left),
			textY,
		};
	});
}

function endLabels(
	design: CueDesign,
	frame: CueFrame,
	reader: Reader,
): readonly EndLabel[] {
	const thick = (stationMm: number) =>
		formatLength(diameterAtMm(design, stationMm), reader, "diameter");
	return [
		{
			side: "left",
			text:
				frame.fromMm === 0
					? reader.say("cuePicture.tip", { across: thick(0) })
					: `Ø${thick(frame.fromMm)}`,
		},
		{
			side: "right",
			text:
				frame.toMm === design.lengthMm
					? reader.say("cuePicture.butt", { across: thick(frame.toMm) })
					: `Ø${thick(frame.toMm)}`,
		},
	];
}
