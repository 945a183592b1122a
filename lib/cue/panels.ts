import { rootBetween } from "@/lib/numerics/roots";
import type { CueDesign } from "./design";
import { cutOffsetMm, prongHalfWidthMm, sleevesOf } from "./layers";
import { domeDepthMm, outlineRadiusMm } from "./taper";

/**
 * A stretch of the cue on which every section area is smooth. "root": areas start like
 * (z − from)^{3/2} where a flat breaks the surface, so the panel is mapped by z = from + w·s².
 * "edge": the rounded butt edge, mapped by z = from + w·sin t.
 */
export interface Panel {
	readonly fromMm: number;
	readonly toMm: number;
	readonly map: "plain" | "root" | "edge";
}

const known = new WeakMap<CueDesign, readonly Panel[]>();

/** Panels of a design from tip to butt, split wherever a taper piece, body, flat or edge begins or ends. */
export function panelsOf(design: CueDesign): readonly Panel[] {
	const before = known.get(design);
	if (before) return before;
	const edgeFromMm = design.lengthMm - design.buttEndRadiusMm;
	const marks: Mark[] = [
		...plainBreaks(design),
		...surfaceBreaks(design, edgeFromMm),
	].map((mark) => ({ ...mark }));
	marks.sort((a, b) => a.stationMm - b.stationMm);
	const merged: { stationMm: number; root: boolean }[] = [];
	for (const mark of marks) {
		const last = merged[merged.length - 1];
		if (last && mark.stationMm - last.stationMm < 1e-6)
			last.root = last.root || mark.root;
		else merged.push({ stationMm: mark.stationMm, root: mark.root });
	}
	const panels: Panel[] = [];
	for (let i = 0; i + 1 < merged.length; i++) {
		const from = merged[i];
		const to = merged[i + 1];
		if (!from || !to) continue;
		const map =
			from.stationMm >= edgeFromMm - 1e-9
				? "edge"
				: from.root
					? "root"
					: "plain";
		panels.push({ fromMm: from.stationMm, toMm: to.stationMm, map });
	}
	known.set(design, panels);
	return panels;
}

interface Mark {
	readonly stationMm: number;
	readonly root: boolean;
}

function plainBreaks(design: CueDesign): readonly Mark[] {
	const { base } = design.splice;
	const stations = [
		0,
		design.lengthMm,
		design.lengthMm - design.buttEndRadiusMm,
		domeDepthMm(design),
		...design.taper.map((point) => point.stationMm),
		...sleevesOf(design).flatMap((body) => [
			body.fromStationMm,
			body.toStationMm,
		]),
		...(base.kind === "tenon"
			? [base.joinStationMm, base.joinStationMm + base.tenonLengthMm]
			: []),
		...(base.kind === "prongs" ? [base.pointStationMm, base.endStationMm] : []),
	];
	return stations
		.filter((station) => station >= 0 && station <= design.lengthMm)
		.map((stationMm) => ({ stationMm, root: false }));
}

interface Flat {
	readonly angleRad: number;
	offsetAt(stationMm: number): number;
}

function flatsOf(design: CueDesign): readonly Flat[] {
	const flats: Flat[] = design.splice.cuts.map((cut) => ({
		angleRad: (cut.faceAngleDeg * Math.PI) / 180,
		offsetAt: (stationMm) => cutOffsetMm({ design, cut, stationMm }),
	}));
	if (design.splice.base.kind === "prongs")
		for (const turn of [45, 135, 225, 315])
			flats.push({
				angleRad: (turn * Math.PI) / 180,
				offsetAt: (stationMm) => prongHalfWidthMm(design, stationMm),
			});
	return flats;
}

/** Where a flat, or the line in which two flats meet, passes the surface or the wall of a body. */
function surfaceBreaks(design: CueDesign, edgeFromMm: number): readonly Mark[] {
	const flats = flatsOf(design);
	if (flats.length === 0) return [];
	const { base } = design.splice;
	const startMm =
		base.kind === "prongs" && design.splice.cuts.length === 0
			? base.pointStationMm
			: design.tip.heightMm + design.ferrule.lengthMm;
	const marks: Mark[] = [];
	const done = new Set<string>();
	const spans: readonly Span[] = [
		{
			fromMm: startMm,
			toMm: edgeFromMm,
			radiusAt: (station) => outlineRadiusMm(design, station),
		},
		{
			fromMm: edgeFromMm,
			toMm: design.lengthMm,
			radiusAt: (station) => outlineRadiusMm(design, station),
		},
		...sleevesOf(design)
			.filter((body) => body.toStationMm > startMm)
			.flatMap((body) =>
				[body.innerRadiusMm, body.outerRadiusMm]
					.filter((radius) => radius > 0 && Number.isFinite(radius))
					.map((radius) => ({
						fromMm: Math.max(startMm, body.fromStationMm),
						toMm: Math.min(design.lengthMm, body.toStationMm),
						radiusAt: () => radius,
					})),
			),
	];
	const events: { of: (stationMm: number) => number; root: boolean }[] = [];
	const middleMm = (startMm + design.lengthMm) / 2;
	const note = (of: (stationMm: number) => number, root: boolean) => {
		const key = [startMm, middleMm, design.lengthMm]
			.map((station) => of(station).toFixed(9))
			.join(" ");
		if (done.has(key)) return;
		done.add(key);
		events.push({ of, root });
	};
	flats.forEach((flat, i) => {
		note((station) => Math.abs(flat.offsetAt(station)), true);
		for (const other of flats.slice(i + 1)) {
			const turn = other.angleRad - flat.angleRad;
			const sine = Math.sin(turn);
			if (Math.abs(sine) < 1e-9) continue;
			note((station) => {
				const a = flat.offsetAt(station);
				const b = other.offsetAt(station);
				return (
					Math.sqrt(Math.max(0, a * a + b * b - 2 * a * b * Math.cos(turn))) /
					Math.abs(sine)
				);
			}, false);
		}
	});
	for (const span of spans)
		for (const event of events)
			for (const stationMm of crossings(span, event.of))
				marks.push({ stationMm, root: event.root });
	return [...marks, ...tripleBreaks(design, flats, startMm)];
}

interface Span {
	readonly fromMm: number;
	readonly toMm: number;
	radiusAt(stationMm: number): number;
}

function crossings(
	span: Span,
	distanceAt: (stationMm: number) => number,
): readonly number[] {
	const pieces = 8;
	const found: number[] = [];
	const gap = (station: number) => {
		const distance = distanceAt(station);
		return (
			(Number.isFinite(distance) ? distance : 1e3) - span.radiusAt(station)
		);
	};
	for (let i = 0; i < pieces; i++) {
		const from = span.fromMm + ((span.toMm - span.fromMm) * i) / pieces;
		const to = span.fromMm + ((span.toMm - span.fromMm) * (i + 1)) / pieces;
		const result = rootBetween({ f: gap, from, to, tolerance: 1e-9 });
		if (result.converged) found.push(result.root);
	}
	return found;
}

/** Where three flats meet in one point, the polygon of kept wood gains or loses a side. */
function tripleBreaks(
	design: CueDesign,
	flats: readonly Flat[],
	startMm: number,
): readonly Mark[] {
	const marks: Mark[] = [];
	const endMm = design.lengthMm;
	for (let i = 0; i < flats.length; i++)
		for (let j = i + 1; j < flats.length; j++)
			for (let k = j + 1; k < flats.length; k++) {
				const [a, b, c] = [flats[i], flats[j], flats[k]];
				if (!a || !b || !c) continue;
				// Three lines meet where Σ offset·sin(turn between the other two) = 0.
				const excess = (station: number) =>
					a.offsetAt(station) * Math.sin(c.angleRad - b.angleRad) +
					b.offsetAt(station) * Math.sin(a.angleRad - c.angleRad) +
					c.offsetAt(station) * Math.sin(b.angleRad - a.angleRad);
				const atStart = excess(startMm);
				const atEnd = excess(endMm);
				if (!Number.isFinite(atStart) || atStart * atEnd >= 0) continue;
				const result = rootBetween({
					f: excess,
					from: startMm,
					to: endMm,
					tolerance: 1e-9,
				});
				if (result.converged)
					marks.push({ stationMm: result.root, root: false });
			}
	return marks;
}
