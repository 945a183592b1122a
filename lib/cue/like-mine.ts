import { accept, type Outcome, outside, refuse } from "@/lib/numerics/outcome";
import type { BaseWood, CueDesign, Joint, PlaneCut } from "./design";
import { diameterAtMm, TAPER_LIMITS } from "./taper";

export interface CueChange {
	readonly lengthMm?: number;
	readonly buttDiameterMm?: number;
	readonly tipDiameterMm?: number;
}

/**
 * The same cue, longer or shorter, slimmer or thicker: stations stretch with the length, diameters with
 * the growth from tip to butt, flats with both. Joints, metal and plugs keep their distance from the
 * butt end. Refuses what `designFrom` would refuse of the three figures.
 */
export function changedCue(
	design: CueDesign,
	change: CueChange,
): Outcome<CueDesign> {
	const tipWasMm = diameterAtMm(design, 0);
	const buttWasMm = diameterAtMm(design, design.lengthMm);
	const lengthMm = change.lengthMm ?? design.lengthMm;
	const tipMm = change.tipDiameterMm ?? tipWasMm;
	const buttMm = change.buttDiameterMm ?? buttWasMm;
	const [slimMm, thickMm] = TAPER_LIMITS.buttDiameterMm;
	const refusals = [
		outside("lengthMm", lengthMm, ...TAPER_LIMITS.lengthMm),
		outside("tipDiameterMm", tipMm, ...TAPER_LIMITS.tipDiameterMm),
		outside(
			"buttDiameterMm",
			buttMm,
			Math.max(slimMm, tipMm + TAPER_LIMITS.minGrowthMm),
			thickMm,
		),
	].filter((refusal) => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	const stretch = lengthMm / design.lengthMm;
	const thicken = buttMm / buttWasMm;
	const diameterMm = (was: number) =>
		tipMm + ((was - tipWasMm) * (buttMm - tipMm)) / (buttWasMm - tipWasMm);
	const moveMm = lengthMm - design.lengthMm;
	const shifted = <T extends { fromStationMm: number; toStationMm: number }>(
		body: T,
	): T => ({
		...body,
		fromStationMm: body.fromStationMm + moveMm,
		toStationMm: body.toStationMm + moveMm,
	});
	const moved = (joint: Joint | null): Joint | null =>
		joint && { ...joint, stationMm: joint.stationMm + moveMm };
	const taper = design.taper.map((point, i) => ({
		stationMm:
			i === design.taper.length - 1 ? lengthMm : point.stationMm * stretch,
		diameterMm: diameterMm(point.diameterMm),
	}));
	return accept({
		...design,
		lengthMm,
		taper,
		splice: {
			...design.splice,
			base: changedBase(design.splice.base, { stretch, diameterMm }),
			cuts: design.splice.cuts.map((cut) =>
				changedCut(cut, { stretch, thicken }),
			),
		},
		joint: moved(design.joint),
		endJoint: moved(design.endJoint),
		addedWeight: design.addedWeight.map(shifted),
		plugs: design.plugs.map(shifted),
	});
}

function changedCut(
	cut: PlaneCut,
	{ stretch, thicken }: { stretch: number; thicken: number },
): PlaneCut {
	const slope = Math.tan((cut.angleDeg * Math.PI) / 180);
	return {
		...cut,
		buttOffsetMm: cut.buttOffsetMm * thicken,
		angleDeg: (Math.atan((slope * thicken) / stretch) * 180) / Math.PI,
	};
}

function changedBase(
	base: BaseWood,
	p: { stretch: number; diameterMm: (was: number) => number },
): BaseWood {
	if (base.kind === "through") return base;
	if (base.kind === "tenon")
		return { ...base, joinStationMm: base.joinStationMm * p.stretch };
	const pointDiameterMm = 2 * base.pointHalfWidthMm * Math.SQRT2;
	return {
		...base,
		pointStationMm: base.pointStationMm * p.stretch,
		endStationMm: base.endStationMm * p.stretch,
		pointHalfWidthMm: p.diameterMm(pointDiameterMm) / (2 * Math.SQRT2),
	};
}
