import type { CueDesign, MaterialId } from "./design";
import { type DiscMoments, discWithin, type HalfPlane } from "./disc";
import { cutOffsetMm, prongHalfWidthMm, shellsAt } from "./layers";
import { outlineRadiusMm } from "./taper";

/** Part of a cross-section filled with one material. Moments in mm², mm³, mm⁴ about the axis. */
export interface Region {
	readonly part: string;
	readonly material: MaterialId;
	readonly moments: DiscMoments;
}

const combine = (
	a: DiscMoments,
	b: DiscMoments,
	factor: number,
): DiscMoments => ({
	area: a.area + factor * b.area,
	polar: a.polar + factor * b.polar,
	firstX: a.firstX + factor * b.firstX,
	firstY: a.firstY + factor * b.firstY,
	difference: a.difference + factor * b.difference,
	product: a.product + factor * b.product,
});

/** The wood within a radius of the axis, before metal or leather replaces any of it. */
export function woodRegions(p: {
	design: CueDesign;
	stationMm: number;
	radiusMm: number;
}): readonly Region[] {
	const { design, stationMm, radiusMm } = p;
	const flats = design.splice.cuts.flatMap((cut) => {
		const offset = cutOffsetMm({ design, cut, stationMm });
		return offset < radiusMm
			? [{ cut, plane: planeAt(cut.faceAngleDeg, offset) }]
			: [];
	});
	const planes = flats.map((flat) => flat.plane);
	const regions: Region[] = [];
	let outside = discWithin(radiusMm, []);
	for (let k = flats.length - 1; k >= 0; k--) {
		const flat = flats[k];
		const before = flats[k - 1];
		if (flat === undefined) continue;
		if (before?.cut.part === flat.cut.part && before.cut.wood === flat.cut.wood)
			continue;
		const inside = discWithin(radiusMm, planes.slice(k));
		regions.push({
			part: flat.cut.part,
			material: flat.cut.wood,
			moments: combine(outside, inside, -1),
		});
		outside = inside;
	}
	return [...regions, ...baseRegions({ ...p, planes, whole: outside })];
}

const planeAt = (faceAngleDeg: number, offset: number): HalfPlane => ({
	angleRad: (faceAngleDeg * Math.PI) / 180,
	offset,
});

function baseRegions(p: {
	design: CueDesign;
	stationMm: number;
	radiusMm: number;
	planes: readonly HalfPlane[];
	whole: DiscMoments;
}): readonly Region[] {
	const { design, stationMm, radiusMm, planes, whole } = p;
	const { base } = design.splice;
	const shaft = (moments: DiscMoments): Region => ({
		part: "shaft",
		material: design.shaftWood,
		moments,
	});
	const butt = (moments: DiscMoments): Region => ({
		part: "butt",
		material: design.buttWood,
		moments,
	});
	if (base.kind === "through") return [shaft(whole)];
	if (base.kind === "tenon") {
		if (stationMm < base.joinStationMm) return [shaft(whole)];
		if (stationMm >= base.joinStationMm + base.tenonLengthMm)
			return [butt(whole)];
		const tenon = discWithin(
			Math.min(radiusMm, base.tenonDiameterMm / 2),
			planes,
		);
		return [shaft(tenon), butt(combine(whole, tenon, -1))];
	}
	const half = prongHalfWidthMm(design, stationMm);
	if (half * Math.SQRT2 >= radiusMm) return [shaft(whole)];
	if (half === 0) return [butt(whole)];
	const strip = (angleDeg: number) => [
		planeAt(angleDeg, half),
		planeAt(angleDeg + 180, half),
	];
	const rising = strip(45);
	const falling = strip(135);
	const cross = combine(
		combine(
			discWithin(radiusMm, [...planes, ...rising]),
			discWithin(radiusMm, [...planes, ...falling]),
			1,
		),
		discWithin(radiusMm, [...planes, ...rising, ...falling]),
		-1,
	);
	return [shaft(cross), butt(combine(whole, cross, -1))];
}

/** Every region of the turned section at a station, metal and leather included. */
export function regionsAt(
	design: CueDesign,
	stationMm: number,
): readonly Region[] {
	const surfaceMm = outlineRadiusMm(design, stationMm);
	const regions: Region[] = [];
	for (const shell of shellsAt(design, stationMm)) {
		const inner = shell.innerRadiusMm;
		const outer = Math.min(shell.outerRadiusMm, surfaceMm);
		if (inner >= outer) continue;
		if (shell.sleeve) {
			regions.push({
				part: shell.sleeve.part,
				material: shell.sleeve.material,
				moments: combine(discWithin(outer, []), discWithin(inner, []), -1),
			});
			continue;
		}
		regions.push(...woodRegions({ design, stationMm, radiusMm: outer }));
		if (inner > 0)
			for (const region of woodRegions({ design, stationMm, radiusMm: inner }))
				regions.push({
					...region,
					moments: combine(discWithin(0, []), region.moments, -1),
				});
	}
	return regions;
}
