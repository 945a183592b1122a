import type { CueDesign } from "@/lib/cue/design";
import { cutOffsetMm } from "@/lib/cue/layers";
import { diameterAtMm } from "@/lib/cue/taper";
import { rootBetween } from "@/lib/numerics/roots";
import { TURNING_TOLERANCE } from "./tolerance";

export type StationNote = "ferrule" | "joint" | "splice-points" | "butt" | null;

export interface SheetStation {
	readonly stationMm: number;
	readonly fromButtMm: number;
	readonly diameterMm: number;
	readonly toleranceMm: number;
	readonly note: StationNote;
}

/** The closer tolerance reaches this share of the length from the tip. */
const SHAFT_SHARE = 0.5;

/**
 * Diameters for the bench, counted from the butt end in equal steps, with the ferrule's rear, the
 * joint, the splice points and the butt end where they stand. Throws RangeError unless everyMm is
 * 10–500.
 */
export function sheetStations(
	design: CueDesign,
	options: { everyMm?: number } = {},
): readonly SheetStation[] {
	const everyMm = options.everyMm ?? 100;
	if (!(everyMm >= 10 && everyMm <= 500))
		throw new RangeError(`everyMm must be 10–500 mm, got ${everyMm}`);
	const ferruleEndMm = design.tip.heightMm + design.ferrule.lengthMm;
	const noted = new Map<number, StationNote>();
	const note = (stationMm: number, what: StationNote) => {
		for (const known of noted.keys())
			if (Math.abs(known - stationMm) < 0.05) {
				if (what) noted.set(known, what);
				return;
			}
		noted.set(stationMm, what);
	};
	note(design.lengthMm, "butt");
	note(ferruleEndMm, "ferrule");
	if (design.joint) note(design.joint.stationMm, "joint");
	for (const stationMm of splicePointStationsMm(design))
		note(stationMm, "splice-points");
	for (
		let stationMm = design.lengthMm - everyMm;
		stationMm > ferruleEndMm;
		stationMm -= everyMm
	)
		note(stationMm, null);
	return [...noted]
		.sort(([a], [b]) => a - b)
		.map(([stationMm, what]) => ({
			stationMm,
			fromButtMm: design.lengthMm - stationMm,
			diameterMm: diameterAtMm(design, stationMm),
			toleranceMm:
				what === "ferrule"
					? TURNING_TOLERANCE.ferruleMm
					: stationMm < SHAFT_SHARE * design.lengthMm
						? TURNING_TOLERANCE.shaftMm
						: TURNING_TOLERANCE.buttMm,
			note: what,
		}));
}

/** Where the points of a splice stand, each station once, nearest the tip first. */
export function splicePointStationsMm(design: CueDesign): readonly number[] {
	const { base, cuts } = design.splice;
	const found: number[] = base.kind === "prongs" ? [base.pointStationMm] : [];
	for (const cut of cuts) {
		const result = rootBetween({
			f: (stationMm) =>
				diameterAtMm(design, stationMm) / 2 -
				cutOffsetMm({ design, cut, stationMm }),
			from: 0,
			to: design.lengthMm,
			tolerance: 1e-6,
		});
		if (
			result.converged &&
			!found.some((one) => Math.abs(one - result.root) < 0.05)
		)
			found.push(result.root);
	}
	return found.sort((a, b) => a - b);
}
