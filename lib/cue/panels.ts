import { rememberLast } from "@/lib/numerics/remember-last";
import { rootBetween } from "@/lib/numerics/roots";
import type { CueDesign } from "./design";
import { sleevesOf } from "./layers";
import { type SplitEvent, splitEventsOf } from "./split-events";
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

interface Mark {
	readonly stationMm: number;
	readonly root: boolean;
}

/** Panels from tip to butt, split wherever a taper piece, body, flat or edge begins or ends. */
export const panelsOf: (design: CueDesign) => readonly Panel[] =
	rememberLast(panelsFrom);

function panelsFrom(design: CueDesign): readonly Panel[] {
	const edgeFromMm = design.lengthMm - design.buttEndRadiusMm;
	const marks = [
		...plainBreaks(design),
		...surfaceBreaks(design, edgeFromMm),
	].sort((a, b) => a.stationMm - b.stationMm);
	const merged: { stationMm: number; root: boolean }[] = [];
	for (const mark of marks) {
		const last = merged[merged.length - 1];
		if (last && mark.stationMm - last.stationMm < 1e-6)
			last.root = last.root || mark.root;
		else merged.push({ ...mark });
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
	return panels;
}

function plainBreaks(design: CueDesign): readonly Mark[] {
	const { base } = design.splice;
	const stations = [
		0,
		design.lengthMm,
		design.lengthMm - design.buttEndRadiusMm,
		domeDepthMm(design),
		...design.taper.map((point) => point.stationMm),
	];
	for (const body of sleevesOf(design))
		stations.push(body.fromStationMm, body.toStationMm);
	if (base.kind === "tenon")
		stations.push(base.joinStationMm, base.joinStationMm + base.tenonLengthMm);
	if (base.kind === "prongs")
		stations.push(base.pointStationMm, base.endStationMm);
	return stations
		.filter((station) => station >= 0 && station <= design.lengthMm)
		.map((stationMm) => ({ stationMm, root: false }));
}

/** Stretches on which the wood inside a coaxial cylinder changes smoothly. */
export function cylinderPanels(
	design: CueDesign,
	cylinder: { fromMm: number; toMm: number; radiusMm: number },
): readonly Panel[] {
	const { fromMm, toMm, radiusMm } = cylinder;
	const { base } = design.splice;
	const marks: Mark[] = [{ stationMm: toMm, root: false }];
	const span = { fromMm, toMm, pieces: 1, radiusAt: () => radiusMm };
	for (const event of splitEventsOf(design))
		for (const stationMm of crossings(span, event))
			marks.push({ stationMm, root: event.root });
	if (base.kind === "tenon")
		marks.push(
			{ stationMm: base.joinStationMm, root: false },
			{ stationMm: base.joinStationMm + base.tenonLengthMm, root: false },
		);
	if (base.kind === "prongs")
		marks.push(
			{ stationMm: base.pointStationMm, root: false },
			{ stationMm: base.endStationMm, root: false },
		);
	const panels: Panel[] = [];
	let last: Mark = { stationMm: fromMm, root: false };
	for (const mark of marks.sort((a, b) => a.stationMm - b.stationMm)) {
		if (mark.stationMm - last.stationMm < 1e-6 || mark.stationMm > toMm)
			continue;
		panels.push({
			fromMm: last.stationMm,
			toMm: mark.stationMm,
			map: last.root ? "root" : "plain",
		});
		last = mark;
	}
	return panels;
}

interface Span {
	readonly fromMm: number;
	readonly toMm: number;
	/** Pieces searched for a crossing of a distance that only falls. */
	readonly pieces: number;
	radiusAt(stationMm: number): number;
}

/** Where a flat, or the line in which two flats meet, passes the surface or the wall of a body. */
function surfaceBreaks(design: CueDesign, edgeFromMm: number): readonly Mark[] {
	const startMm = design.tip.heightMm + design.ferrule.lengthMm;
	const events = splitEventsOf(design);
	if (events.length === 0) return [];
	const surfaceMm = (station: number) => outlineRadiusMm(design, station);
	const spans: Span[] = [
		{ fromMm: startMm, toMm: edgeFromMm, pieces: 1, radiusAt: surfaceMm },
		{
			fromMm: edgeFromMm,
			toMm: design.lengthMm,
			pieces: 3,
			radiusAt: surfaceMm,
		},
	];
	for (const body of sleevesOf(design)) {
		if (body.toStationMm <= startMm) continue;
		for (const radiusMm of [body.innerRadiusMm, body.outerRadiusMm])
			if (radiusMm > 0 && Number.isFinite(radiusMm))
				spans.push({
					fromMm: Math.max(startMm, body.fromStationMm),
					toMm: Math.min(design.lengthMm, body.toStationMm),
					pieces: 1,
					radiusAt: () => radiusMm,
				});
	}
	const { base } = design.splice;
	if (base.kind === "tenon")
		spans.push({
			fromMm: base.joinStationMm,
			toMm: base.joinStationMm + base.tenonLengthMm,
			pieces: 1,
			radiusAt: () => base.tenonDiameterMm / 2,
		});
	const marks: Mark[] = [];
	for (const span of spans)
		for (const event of events)
			for (const stationMm of crossings(span, event))
				marks.push({ stationMm, root: event.root });
	return marks;
}

function crossings(span: Span, event: SplitEvent): readonly number[] {
	const fromMm = Math.max(span.fromMm, event.fromMm);
	const toMm = Math.min(span.toMm, event.toMm);
	const pieces = span.pieces * (event.falling ? 1 : 6);
	const gap = (station: number) =>
		event.distanceMm(station) - span.radiusAt(station);
	const found: number[] = [];
	for (let i = 0; i < pieces && fromMm < toMm; i++) {
		const result = rootBetween({
			f: gap,
			from: fromMm + ((toMm - fromMm) * i) / pieces,
			to: fromMm + ((toMm - fromMm) * (i + 1)) / pieces,
			tolerance: 1e-8,
		});
		if (result.converged) found.push(result.root);
	}
	return found;
}
