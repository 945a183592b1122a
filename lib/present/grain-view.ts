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
import { joinedAnd } from "./lists";

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
	const { say } = reader;
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
				? say("grain.noneNear", { sighted: mm(SIGHTED_MM) })
				: say("grain.near", {
						sighted: mm(SIGHTED_MM),
						count: picture.nearTip.length,
						places: picture.nearTip
							.map(({ face, stationMm }) =>
								say("grain.nearOne", {
									place: mm(stationMm),
									face: say(`grain.faceMid.${face}`),
								}),
							)
							.join("; "),
					}),
			sightWords(p.sightTurnDeg, reader),
		],
		advice: adviceOf(p),
		rows: all.map(({ face, stationMm, pointsTo }) => ({
			face: say(`grain.face.${face}`),
			fromTip: formatLength(stationMm, reader, "station"),
			fromButt: formatLength(design.lengthMm - stationMm, reader, "station"),
			points: pointsTo === "tip" ? say("grain.toTip") : say("grain.toButt"),
			near: stationMm <= ferruleEndMm + SIGHTED_MM ? say("grain.inSight") : "",
		})),
	};
}

function faceWords(
	face: Face,
	{ arrows, meanSpacingMm }: GrainPicture["front"],
	reader: Reader,
): string {
	const mm = (value: number) => formatLength(value, reader);
	const { say } = reader;
	const name = say(`grain.face.${face}`);
	const [first] = arrows;
	if (!first) return say("grain.noArrow", { face: name });
	const ways = new Set(arrows.map(({ pointsTo }) => pointsTo));
	return say("grain.arrows", {
		face: name,
		count: arrows.length,
		apart:
			meanSpacingMm === null
				? ""
				: say("grain.apart", { spacing: mm(meanSpacingMm) }),
		way: ways.size > 1 ? "both" : first.pointsTo,
		first: mm(first.stationMm),
	});
}

function sightWords(turnDeg: number, reader: Reader): string {
	const { say } = reader;
	const { front, back } = arrowsSeenAt(turnDeg);
	const place = (share: number) =>
		Math.abs(share) < 0.05
			? say("grain.onLine")
			: say("grain.beside", { share: formatPercent(Math.abs(share), reader) });
	const seen = [
		front.seen
			? say("grain.frontStands", { place: place(front.sidewaysShare) })
			: null,
		back.seen
			? say("grain.backStands", { place: place(back.sidewaysShare) })
			: null,
	].filter((words) => words !== null);
	const angle = formatAngle(turnDeg, reader, 0);
	return seen.length === 0
		? say("grain.noneSeen", { angle })
		: say("grain.seen", { angle, seen: joinedAnd(seen, reader) });
}

function adviceOf(p: {
	design: CueDesign;
	grain: Grain;
	wantedSpacingMm: number;
	reader: Reader;
}): readonly string[] {
	const { design, grain, wantedSpacingMm, reader } = p;
	const { say } = reader;
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
		say("grain.billet", {
			wanted: mm(wantedSpacingMm),
			rings: formatNumber(wanted, reader, 1),
			tilt: formatAngle(tiltDeg, reader),
		}),
		say("grain.taper", {
			taper: degrees(taperDeg),
			rings: formatNumber(ringSpacingMm, reader, 1),
			spacing: mm(untilted),
		}),
		say("grain.hiding", {
			low: degrees(hiding.lowDeg),
			high: degrees(hiding.highDeg),
			sighted: mm(SIGHTED_MM),
		}),
	];
}
