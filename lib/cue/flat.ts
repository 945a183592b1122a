import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import { rootBetween } from "@/lib/numerics/roots";
import type { FlatRequest } from "./design";

/** What can be planed and glued, mm and degrees. Common practice and this project's judgement. */
export const PLANING = {
	/** The core must stay thick enough to hold on the bench. */
	coreHalfWidthMm: { min: 2.5, maxButtShare: 0.85 },
	pointFromButtMm: { min: 100, maxLengthShare: 0.65 },
	planeAngleDeg: { min: 0.05, max: 4 },
	veneerMm: { min: 0.3, max: 3 },
	maxVeneers: 5,
	allRoundCount: { min: 3, max: 12 },
	/** Usual points of a hand splice: this share of the length, at most so far from the butt. */
	pointShare: 0.475,
	pointMaxMm: 700,
	/** Usual core: half its width as a share of the butt radius. */
	coreShare: 0.35,
	/** Usual points between the four: lower and shallower. */
	betweenPointShare: 0.7,
	betweenCoreShare: 1.35,
	/** Usual decoration: how far up it points, and how deep its flat lies at the butt end. */
	decorationShare: 0.14,
	decorationCoreShare: 0.55,
} as const;

/** The turned round a flat is planed on. */
export interface Round {
	readonly lengthMm: number;
	readonly radiusAt: (stationMm: number) => number;
}

/** A flat: where it leaves the surface, how far from the axis it ends, how it leans. */
export interface Flat {
	readonly pointFromButtMm: number;
	readonly coreHalfWidthMm: number;
	readonly planeAngleDeg: number;
}

/**
 * Completes a flat from any two of point, core and angle; the usual figures fill what is missing.
 * radius(point) = core + pointFromButt·tan(angle). Refuses what cannot be planed and, as
 * "one-too-many", a request that names all three.
 */
export function flatFrom(p: {
	round: Round;
	request: FlatRequest;
	usual: { pointFromButtMm: number; coreHalfWidthMm: number };
	field: string;
}): Outcome<Flat> {
	const { round, request, usual, field } = p;
	const { lengthMm, radiusAt } = round;
	const { pointFromButtMm, coreHalfWidthMm, planeAngleDeg } = request;
	const pointMaxMm = PLANING.pointFromButtMm.maxLengthShare * lengthMm;
	if (
		pointFromButtMm !== undefined &&
		coreHalfWidthMm !== undefined &&
		planeAngleDeg !== undefined
	)
		return refuse({
			code: "one-too-many",
			field: `${field}.planeAngleDeg`,
			value: planeAngleDeg,
			facts: { pointFromButtMm, coreHalfWidthMm },
		});
	const given = [
		pointFromButtMm !== undefined &&
			outside(
				`${field}.pointFromButtMm`,
				pointFromButtMm,
				PLANING.pointFromButtMm.min,
				pointMaxMm,
			),
		planeAngleDeg !== undefined &&
			outside(
				`${field}.planeAngleDeg`,
				planeAngleDeg,
				PLANING.planeAngleDeg.min,
				PLANING.planeAngleDeg.max,
			),
	].filter((refusal) => refusal !== null && refusal !== false);
	if (given.length > 0) return refuse(...given);
	const surfaceMm = (fromButtMm: number) => radiusAt(lengthMm - fromButtMm);
	const tangent = Math.tan(((planeAngleDeg ?? 0) * Math.PI) / 180);
	let point = pointFromButtMm ?? usual.pointFromButtMm;
	let core = coreHalfWidthMm ?? usual.coreHalfWidthMm;
	if (planeAngleDeg !== undefined && pointFromButtMm !== undefined)
		core = surfaceMm(point) - point * tangent;
	else if (planeAngleDeg !== undefined) {
		const rise = rootBetween({
			f: (fromButtMm) => core + fromButtMm * tangent - surfaceMm(fromButtMm),
			from: 0,
			to: lengthMm,
			tolerance: 1e-9,
		});
		// The flat starts inside the surface at the butt end; were it outside, it would cut nothing.
		point = rise.converged ? rise.root : 0;
	}
	const angleDeg =
		planeAngleDeg ??
		(Math.atan((surfaceMm(point) - core) / point) * 180) / Math.PI;
	const refusals = [
		outside(
			`${field}.coreHalfWidthMm`,
			core,
			PLANING.coreHalfWidthMm.min,
			PLANING.coreHalfWidthMm.maxButtShare * radiusAt(lengthMm),
		),
		outside(
			`${field}.pointFromButtMm`,
			point,
			PLANING.pointFromButtMm.min,
			pointMaxMm,
		),
		outside(
			`${field}.planeAngleDeg`,
			angleDeg,
			PLANING.planeAngleDeg.min,
			PLANING.planeAngleDeg.max,
		),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	return accept({
		pointFromButtMm: point,
		coreHalfWidthMm: core,
		planeAngleDeg: angleDeg,
	});
}
