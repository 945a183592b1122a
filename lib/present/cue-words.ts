import type { CueDesign, MaterialId } from "@/lib/cue/design";
import { materialAt } from "@/lib/cue/material";
import { outlineRadiusMm } from "@/lib/cue/taper";
import type { Reader } from "@/lib/words/reader";
import type { CuePart } from "./cue-view";
import { formatLength, formatNumber } from "./figures";
import { inSentence, layoutLabel, materialName } from "./labels";
import { cuePartName } from "./part-names";
import { pointMarks } from "./point-marks";

/** One stretch of a line along the surface that shows one material. */
export interface SeenStretch {
	readonly part: string;
	readonly material: MaterialId;
	readonly fromStationMm: number;
	readonly toStationMm: number;
}

const STEP_MM = 2;

/**
 * What stands along one meridian of the surface, from tip to butt, boundaries within a hundredth of a
 * millimetre. A stretch shorter than 2 mm may be missed.
 */
export function seenAlong(
	design: CueDesign,
	angleDeg: number,
): readonly SeenStretch[] {
	const { lengthMm } = design;
	const at = (stationMm: number) =>
		materialAt({
			design,
			stationMm,
			angleDeg,
			radiusMm: outlineRadiusMm(design, stationMm),
		});
	const stretches: SeenStretch[] = [];
	let from = 0;
	let before = at(0);
	const count = Math.ceil(lengthMm / STEP_MM);
	for (let i = 1; i <= count; i++) {
		const isEnd = i === count;
		const stationMm = isEnd ? lengthMm : (lengthMm * i) / count;
		const here = at(stationMm);
		if (
			!isEnd &&
			here?.part === before?.part &&
			here?.material === before?.material
		)
			continue;
		let low = (lengthMm * (i - 1)) / count;
		let high = stationMm;
		while (!isEnd && high - low > 0.01) {
			const middle = (low + high) / 2;
			const there = at(middle);
			if (there?.part === before?.part && there?.material === before?.material)
				low = middle;
			else high = middle;
		}
		if (before)
			stretches.push({ ...before, fromStationMm: from, toStationMm: high });
		from = high;
		before = here;
	}
	return stretches;
}

/** The cue in two or three sentences, for who does not see the picture. */
export function cueWords(p: {
	design: CueDesign;
	reader: Reader;
	balanceFromButtMm?: number;
}): string {
	const { design, reader, balanceFromButtMm } = p;
	const { say } = reader;
	const first = design.taper[0];
	const last = design.taper[design.taper.length - 1];
	if (!first || !last) throw new RangeError("a cue without a taper");
	const points = pointMarks(design)
		.map(({ place, stationMm }) =>
			say("cuePicture.mark", {
				name: say(`cuePicture.placeMid.${place}`),
				place: formatLength(design.lengthMm - stationMm, reader),
			}),
		)
		.join(", ");
	return say("cuePicture.words", {
		length: formatLength(design.lengthMm, reader),
		tip: formatLength(first.diameterMm, reader, "diameter"),
		butt: formatLength(last.diameterMm, reader, "diameter"),
		layout: layoutLabel(design.layout, reader),
		shaftWood: inSentence.material(design.shaftWood, reader),
		buttWood: inSentence.material(design.buttWood, reader),
		splice: inSentence.splice(design.splice.id, reader),
		points: points === "" ? "" : say("cuePicture.points", { points }),
		balance:
			balanceFromButtMm === undefined
				? ""
				: say("cuePicture.balances", {
						place: formatLength(balanceFromButtMm, reader),
					}),
	});
}

/** How a view is drawn, for its caption. */
export function viewWords(
	p: {
		part: CuePart;
		isUnrolled: boolean;
		stretch: number;
		angleDeg: number;
	},
	reader: Reader,
): string {
	const { say } = reader;
	const turn = ((p.angleDeg % 360) + 360) % 360;
	const part = say(`cuePicture.part.${p.part}`);
	const angle = formatNumber(turn, reader);
	if (p.isUnrolled) return say("cuePicture.flat", { part, angle });
	const scale =
		p.stretch === 1
			? say("cuePicture.toScale")
			: say("cuePicture.thicker", { times: formatNumber(p.stretch, reader) });
	return say("cuePicture.view", { part, scale, angle });
}

export interface SeenRow {
	readonly part: string;
	readonly material: string;
	/** From the butt end. */
	readonly from: string;
	readonly to: string;
}

/** The same as a table, from tip to butt. */
export function seenRows(p: {
	design: CueDesign;
	angleDeg: number;
	reader: Reader;
}): readonly SeenRow[] {
	const { design, reader } = p;
	const fromButt = (stationMm: number) =>
		formatLength(design.lengthMm - stationMm, reader, "station");
	return seenAlong(design, p.angleDeg).map((one) => ({
		part: cuePartName(one.part, reader),
		material: materialName(one.material, reader),
		from: fromButt(one.fromStationMm),
		to: fromButt(one.toStationMm),
	}));
}
