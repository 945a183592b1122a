import type { CueDesign } from "@/lib/cue/design";
import {
	arrowSpacingMm,
	arrowsSeenAt,
	type Face,
	type Grain,
	type GrainPicture,
	hidingTiltsDeg,
	ringSpacingForMm,
} from "@/lib/cue/grain";
import { diameterAtMm } from "@/lib/cue/taper";
import type { Reader } from "@/lib/words/reader";
import { firstButtWoodMm } from "./cue-view";
import {
	formatAngle,
	formatLength,
	formatNumber,
	formatPercent,
} from "./figures";

/** The part behind the ferrule that a player's eye rests on. */
export const SIGHTED_MM = 150;

export interface ArrowRow {
	readonly face: string;
	readonly fromTip: string;
	readonly fromButt: string;
	readonly points: string;
	readonly near: string;
}

export interface GrainView {
	/** What stands where, in sentences. */
	readonly told: readonly string[];
	/** What to look for in a billet, and what hides the arrows. */
	readonly advice: readonly string[];
	readonly rows: readonly ArrowRow[];
}

const FACE_WORDS: Readonly<Record<Face, string>> = {
	front: "Front",
	back: "Back",
};

/** Half-angle of the straight taper from ferrule to the butt's first wood. */
export function meanTaperDeg(design: CueDesign): number {
	const fromMm = design.tip.heightMm + design.ferrule.lengthMm;
	const toMm = firstButtWoodMm(design);
	const growthMm = diameterAtMm(design, toMm) - diameterAtMm(design, fromMm);
	return (Math.atan(growthMm / 2 / (toMm - fromMm)) * 180) / Math.PI;
}

/**
 * Grain arrows of a cue in words. `sightTurnDeg` is how far the flat-sawn face is turned from the top,
 * `arrowSpacingMm` the distance between arrows that is wished for.
 */
export function grainView(p: {
	design: CueDesign;
	grain: Grain;
	picture: GrainPicture;
	sightTurnDeg: number;
	wantedSpacingMm: number;
	reader: Reader;
}): GrainView {
	const { design, picture, reader } = p;
	const mm = (value: number) => formatLength(value, reader);
	const ferruleEndMm = design.tip.heightMm + design.ferrule.lengthMm;
	const all = [...picture.front.arrows, ...picture.back.arrows].sort(
		(a, b) => a.stationMm - b.stationMm,
	);
	return {
		told: [
			faceWords("front", picture.front, reader),
			faceWords("back", picture.back, reader),
			picture.nearTip.length === 0
				? `None falls in the ${mm(SIGHTED_MM)} behind the ferrule.`
				: `In the ${mm(SIGHTED_MM)} behind the ferrule ${picture.nearTip.length === 1 ? "one falls" : `${formatNumber(picture.nearTip.length, reader)} fall`}: ${picture.nearTip.map(({ face, stationMm }) => `${mm(stationMm)} from the tip, ${face}`).join("; ")}.`,
			sightWords(p.sightTurnDeg, reader),
		],
		advice: adviceOf(p),
		rows: all.map(({ face, stationMm, pointsTo }) => ({
			face: FACE_WORDS[face],
			fromTip: formatLength(stationMm, reader, "station"),
			fromButt: formatLength(design.lengthMm - stationMm, reader, "station"),
			points: pointsTo === "tip" ? "to the tip" : "to the butt",
			near: stationMm <= ferruleEndMm + SIGHTED_MM ? "in sight" : "",
		})),
	};
}

function faceWords(
	face: Face,
	{ arrows, meanSpacingMm }: GrainPicture["front"],
	reader: Reader,
): string {
	const mm = (value: number) => formatLength(value, reader);
	const [first] = arrows;
	if (!first) return `${FACE_WORDS[face]}: no arrow on the shaft.`;
	const count =
		arrows.length === 1
			? "one arrow"
			: `${formatNumber(arrows.length, reader)} arrows`;
	const apart =
		meanSpacingMm === null ? "" : `, ${mm(meanSpacingMm)} apart on average`;
	const ways = new Set(arrows.map(({ pointsTo }) => pointsTo));
	const way =
		ways.size > 1
			? "pointing both ways"
			: `pointing to the ${first.pointsTo === "tip" ? "tip" : "butt"}`;
	return `${FACE_WORDS[face]}: ${count}${apart}, ${way}, the first ${mm(first.stationMm)} from the tip.`;
}

function sightWords(turnDeg: number, reader: Reader): string {
	const { front, back } = arrowsSeenAt(turnDeg);
	const place = (share: number) =>
		Math.abs(share) < 0.05
			? "on the sight line"
			: `${formatPercent(Math.abs(share), reader)} of the half thickness beside the sight line`;
	const seen = [
		front.seen
			? `the front’s arrows stand ${place(front.sidewaysShare)}`
			: null,
		back.seen ? `the back’s arrows stand ${place(back.sidewaysShare)}` : null,
	].filter((words) => words !== null);
	return seen.length === 0
		? `Turned by ${formatAngle(turnDeg, reader, 0)}, both faces lie at the sides: no arrow points along the sight line.`
		: `Turned by ${formatAngle(turnDeg, reader, 0)}, ${seen.join(" and ")}.`;
}

function adviceOf(p: {
	design: CueDesign;
	grain: Grain;
	wantedSpacingMm: number;
	reader: Reader;
}): readonly string[] {
	const { design, grain, wantedSpacingMm, reader } = p;
	const mm = (value: number) => formatLength(value, reader);
	const taperDeg = meanTaperDeg(design);
	const { tiltDeg, ringSpacingMm } = grain;
	const wanted = ringSpacingForMm({
		arrowSpacingMm: wantedSpacingMm,
		taperDeg,
		tiltDeg,
		face: "front",
	});
	const untilted = arrowSpacingMm({
		ringSpacingMm,
		taperDeg,
		tiltDeg: 0,
		face: "front",
	});
	const hiding = hidingTiltsDeg({
		ringSpacingMm,
		taperDeg,
		lengthMm: SIGHTED_MM,
		face: "front",
	});
	const degrees = (angleDeg: number) => formatAngle(angleDeg, reader, 2);
	return [
		`For arrows about ${mm(wantedSpacingMm)} apart on the front, look for a billet with rings ${formatNumber(wanted, reader, 1)} mm apart, at a tilt of ${formatAngle(tiltDeg, reader)}. Close rings give many arrows, wide rings few.`,
		`The shaft’s half-angle is ${degrees(taperDeg)} on average. With rings along the axis, ${formatNumber(ringSpacingMm, reader, 1)} mm apart, that puts arrows ${mm(untilted)} apart on both faces.`,
		`Rings tilted between ${degrees(hiding.lowDeg)} and ${degrees(hiding.highDeg)} leave the front’s ${mm(SIGHTED_MM)} behind the ferrule with one arrow at most; the back then shows about twice as many.`,
	];
}
