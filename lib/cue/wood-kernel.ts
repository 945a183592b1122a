import {
	type AreaPolar,
	rectangleInDisc,
	stripInDisc,
	wholeDisc,
} from "./cut-disc";
import type { CueDesign, MaterialId, PlaneCut } from "./design";
import { discWithin } from "./disc";
import { cutOffsetMm, prongHalfWidthMm } from "./layers";

/** Receives the area and polar moment of each piece of wood within a radius. */
export type WoodSink = (
	slot: number,
	areaMm2: number,
	polarMm4: number,
) => void;

/** Numbers a part and material for the sink. */
export type SlotOf = (part: string, material: MaterialId) => number;

/**
 * The wood of a design within a radius at a station, the same geometry as `woodRegions` but area and
 * polar moment only, and closed forms for the standard splices. Made once for a design.
 */
export function woodKernel(
	design: CueDesign,
	slotOf: SlotOf,
): (stationMm: number, radiusMm: number, sink: WoodSink) => void {
	const groups = groupsOf(design, slotOf);
	const baseKernel = baseKernelOf(design, slotOf);
	const out: AreaPolar = { area: 0, polar: 0 };
	return (stationMm, radiusMm, sink) => {
		wholeDisc(radiusMm, out);
		let { area, polar } = out;
		for (const group of groups) {
			group.keep(stationMm, radiusMm, out);
			if (out.area !== area)
				sink(group.slot, area - out.area, polar - out.polar);
			area = out.area;
			polar = out.polar;
		}
		out.area = area;
		out.polar = polar;
		baseKernel(stationMm, radiusMm, out, sink);
	};
}

type Keep = (stationMm: number, radiusMm: number, out: AreaPolar) => void;

interface Group {
	readonly slot: number;
	/** What is left inside this group's planes and all later ones. */
	readonly keep: Keep;
}

/** Neighbouring cuts of one part and wood, last glued first. */
function groupsOf(design: CueDesign, slotOf: SlotOf): readonly Group[] {
	const { cuts } = design.splice;
	const groups: Group[] = [];
	for (let k = cuts.length - 1; k >= 0; k--) {
		const cut = cuts[k];
		const before = cuts[k - 1];
		if (!cut) continue;
		if (before?.part === cut.part && before.wood === cut.wood) continue;
		groups.push({
			slot: slotOf(cut.part, cut.wood),
			keep: keeperOf(design, cuts.slice(k)),
		});
	}
	return groups;
}

function keeperOf(design: CueDesign, cuts: readonly PlaneCut[]): Keep {
	const [a, b, c, d] = cuts;
	if (cuts.length === 2 && a && b && opposite(a, b)) {
		const offset = offsetOf(design, a);
		return (stationMm, radiusMm, out) =>
			stripInDisc(radiusMm, offset(stationMm), out);
	}
	if (
		cuts.length === 4 &&
		a &&
		b &&
		c &&
		d &&
		opposite(a, b) &&
		opposite(c, d) &&
		Math.abs(Math.abs(turn(a, c)) - 90) < 1e-9
	) {
		const first = offsetOf(design, a);
		const second = offsetOf(design, c);
		return (stationMm, radiusMm, out) =>
			rectangleInDisc(radiusMm, first(stationMm), second(stationMm), out);
	}
	return (stationMm, radiusMm, out) => {
		const kept = discWithin(
			radiusMm,
			cuts.map((cut) => ({
				angleRad: (cut.faceAngleDeg * Math.PI) / 180,
				offset: cutOffsetMm({ design, cut, stationMm }),
			})),
		);
		out.area = kept.area;
		out.polar = kept.polar;
	};
}

function offsetOf(
	design: CueDesign,
	cut: PlaneCut,
): (stationMm: number) => number {
	const slope = Math.tan((cut.angleDeg * Math.PI) / 180);
	const atTip = cut.buttOffsetMm + design.lengthMm * slope;
	return (stationMm) => atTip - stationMm * slope;
}

const turn = (a: PlaneCut, b: PlaneCut): number => {
	const difference = (a.faceAngleDeg - b.faceAngleDeg) % 360;
	if (difference > 180) return difference - 360;
	return difference < -180 ? difference + 360 : difference;
};

const opposite = (a: PlaneCut, b: PlaneCut): boolean =>
	Math.abs(Math.abs(turn(a, b)) - 180) < 1e-9 &&
	a.buttOffsetMm === b.buttOffsetMm &&
	a.angleDeg === b.angleDeg;

/** Splits what the flats left, in `out`, between shaft and butt wood. */
function baseKernelOf(
	design: CueDesign,
	slotOf: SlotOf,
): (
	stationMm: number,
	radiusMm: number,
	out: AreaPolar,
	sink: WoodSink,
) => void {
	const { base, cuts } = design.splice;
	const shaft = slotOf("shaft", design.shaftWood);
	if (base.kind === "through")
		return (_stationMm, _radiusMm, out, sink) =>
			sink(shaft, out.area, out.polar);
	const butt = slotOf("butt", design.buttWood);
	const keep = keeperOrWhole(design, cuts);
	if (base.kind === "tenon")
		return (stationMm, radiusMm, out, sink) => {
			if (stationMm < base.joinStationMm)
				return sink(shaft, out.area, out.polar);
			const { area, polar } = out;
			if (stationMm >= base.joinStationMm + base.tenonLengthMm)
				return sink(butt, area, polar);
			keep(stationMm, Math.min(radiusMm, base.tenonDiameterMm / 2), out);
			sink(shaft, out.area, out.polar);
			sink(butt, area - out.area, polar - out.polar);
		};
	return (stationMm, radiusMm, out, sink) => {
		const half = prongHalfWidthMm(design, stationMm);
		if (half * Math.SQRT2 >= radiusMm) return sink(shaft, out.area, out.polar);
		if (half === 0) return sink(butt, out.area, out.polar);
		const { area, polar } = out;
		crossInDisc({ design, stationMm, radiusMm, half }, out);
		sink(shaft, out.area, out.polar);
		sink(butt, area - out.area, polar - out.polar);
	};
}

const keeperOrWhole = (design: CueDesign, cuts: readonly PlaneCut[]): Keep =>
	cuts.length === 0
		? (_stationMm, radiusMm, out) => wholeDisc(radiusMm, out)
		: keeperOf(design, cuts);

/** Two strips of half-width along the diagonals, within the design's flats. */
function crossInDisc(
	p: { design: CueDesign; stationMm: number; radiusMm: number; half: number },
	out: AreaPolar,
): void {
	const { design, stationMm, radiusMm, half } = p;
	if (design.splice.cuts.length === 0) {
		rectangleInDisc(radiusMm, half, half, out);
		const { area, polar } = out;
		stripInDisc(radiusMm, half, out);
		out.area = 2 * out.area - area;
		out.polar = 2 * out.polar - polar;
		return;
	}
	const planes = design.splice.cuts.map((cut) => ({
		angleRad: (cut.faceAngleDeg * Math.PI) / 180,
		offset: cutOffsetMm({ design, cut, stationMm }),
	}));
	const strip = (angleRad: number) => [
		{ angleRad, offset: half },
		{ angleRad: angleRad + Math.PI, offset: half },
	];
	const rising = strip(Math.PI / 4);
	const falling = strip((3 * Math.PI) / 4);
	const one = discWithin(radiusMm, [...planes, ...rising]);
	const two = discWithin(radiusMm, [...planes, ...falling]);
	const both = discWithin(radiusMm, [...planes, ...rising, ...falling]);
	out.area = one.area + two.area - both.area;
	out.polar = one.polar + two.polar - both.polar;
}
