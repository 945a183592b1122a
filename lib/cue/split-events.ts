import type { CueDesign } from "./design";

/** A distance from the axis that may cross the surface: of a flat, or of the line where two flats meet. */
export interface SplitEvent {
	distanceMm(stationMm: number): number;
	/** The stretch on which the flats exist. */
	readonly fromMm: number;
	readonly toMm: number;
	/** The distance only falls towards the butt, so it crosses a growing radius once at most. */
	readonly falling: boolean;
	/** A flat breaking the surface starts areas like a 3/2 power. */
	readonly root: boolean;
}

interface Flat {
	readonly angleRad: number;
	/** Offset = atTipMm − slope·station. */
	readonly atTipMm: number;
	readonly slope: number;
	readonly fromMm: number;
	readonly toMm: number;
}

function flatsOf(design: CueDesign): readonly Flat[] {
	const flats: Flat[] = design.splice.cuts.map((cut) => {
		const slope = Math.tan((cut.angleDeg * Math.PI) / 180);
		return {
			angleRad: (cut.faceAngleDeg * Math.PI) / 180,
			atTipMm: cut.buttOffsetMm + slope * design.lengthMm,
			slope,
			fromMm: 0,
			toMm: design.lengthMm,
		};
	});
	const { base } = design.splice;
	if (base.kind === "prongs") {
		const slope =
			base.pointHalfWidthMm / (base.endStationMm - base.pointStationMm);
		for (const quarter of [1, 3, 5, 7])
			flats.push({
				angleRad: (quarter * Math.PI) / 4,
				atTipMm: slope * base.endStationMm,
				slope,
				fromMm: base.pointStationMm,
				toMm: base.endStationMm,
			});
	}
	return flats;
}

const offsetMm = (flat: Flat, stationMm: number): number =>
	flat.atTipMm - flat.slope * stationMm;

/** Each distance once, however many equal flats there are. */
export function splitEventsOf(design: CueDesign): readonly SplitEvent[] {
	const flats = flatsOf(design);
	const events: SplitEvent[] = [];
	const kinds: Flat[] = [];
	const pairs: { a: Flat; b: Flat; cosine: number }[] = [];
	for (const [i, flat] of flats.entries()) {
		if (!kinds.some((other) => alike(other, flat))) {
			kinds.push(flat);
			events.push({
				distanceMm: (station) => Math.abs(offsetMm(flat, station)),
				fromMm: flat.fromMm,
				toMm: flat.toMm,
				falling: offsetMm(flat, flat.toMm) >= 0,
				root: true,
			});
		}
		for (const other of flats.slice(i + 1)) {
			const cosine = Math.cos(other.angleRad - flat.angleRad);
			if (1 - Math.abs(cosine) < 1e-9) continue;
			const seen = pairs.some(
				(pair) =>
					Math.abs(pair.cosine - cosine) < 1e-9 &&
					((alike(pair.a, flat) && alike(pair.b, other)) ||
						(alike(pair.a, other) && alike(pair.b, flat))),
			);
			if (seen) continue;
			pairs.push({ a: flat, b: other, cosine });
			events.push(meeting(flat, other, cosine));
		}
	}
	return events;
}

const alike = (a: Flat, b: Flat): boolean =>
	Math.abs(a.atTipMm - b.atTipMm) < 1e-9 &&
	Math.abs(a.slope - b.slope) < 1e-12 &&
	a.fromMm === b.fromMm;

/** Distance of the meeting line: √(a² + b² − 2ab·cos)/|sin| of the angle between the flats. */
function meeting(a: Flat, b: Flat, cosine: number): SplitEvent {
	const sine = Math.sqrt(1 - cosine * cosine);
	const toMm = Math.min(a.toMm, b.toMm);
	return {
		distanceMm: (station) => {
			const p = offsetMm(a, station);
			const q = offsetMm(b, station);
			return Math.sqrt(Math.max(0, p * p + q * q - 2 * p * q * cosine)) / sine;
		},
		fromMm: Math.max(a.fromMm, b.fromMm),
		toMm,
		falling:
			Math.abs(cosine) < 1e-9 &&
			offsetMm(a, toMm) >= 0 &&
			offsetMm(b, toMm) >= 0,
		root: false,
	};
}
