import { outside, type Refusal } from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import type { LayoutId, SpliceId, TaperPoint } from "./design";
import { TAPER_LIMITS } from "./taper";

/** What a player can read off the own cue with a tape, a scale and a slide gauge. */
export interface PresentCue {
	readonly lengthMm: number;
	readonly massG: number;
	readonly balanceFromButtMm: number;
	readonly tipDiameterMm: number;
	/** At least three, one of them at the butt end. */
	readonly diameters: readonly {
		readonly fromButtMm: number;
		readonly diameterMm: number;
	}[];
	/** Where known; otherwise the usual ones are all weighed up. */
	readonly shaftWood?: WoodId;
	readonly buttWood?: WoodId;
	readonly splice?: SpliceId;
	readonly layout?: LayoutId;
	/** The middle of the grip hand, for the inertia about it. */
	readonly gripFromButtMm?: number;
}

/** Every reading outside what the project builds. */
export function refusalsOf(present: PresentCue): readonly Refusal[] {
	const { lengthMm, tipDiameterMm, diameters } = present;
	const refusals: (Refusal | null)[] = [
		outside("lengthMm", lengthMm, ...TAPER_LIMITS.lengthMm),
		outside("tipDiameterMm", tipDiameterMm, ...TAPER_LIMITS.tipDiameterMm),
		outside("massG", present.massG, 200, 1000),
		outside(
			"balanceFromButtMm",
			present.balanceFromButtMm,
			0.1 * lengthMm,
			0.6 * lengthMm,
		),
		outside("diameters", diameters.length, 3, 12),
		outside("gripFromButtMm", present.gripFromButtMm ?? 0, 0, lengthMm / 2),
	];
	const sorted = fromTip(present);
	const butt = sorted[sorted.length - 1];
	if (butt) {
		refusals.push(
			outside("diameters.butt.fromButtMm", lengthMm - butt.stationMm, 0, 20),
			outside(
				"diameters.butt.diameterMm",
				butt.diameterMm,
				tipDiameterMm + TAPER_LIMITS.minGrowthMm,
				TAPER_LIMITS.buttDiameterMm[1],
			),
		);
	}
	let last = { stationMm: 0, diameterMm: tipDiameterMm };
	for (const [i, point] of sorted.entries()) {
		refusals.push(
			outside(
				`diameters.${i}.fromButtMm`,
				lengthMm - point.stationMm,
				0,
				lengthMm - last.stationMm - 1,
			),
			outside(
				`diameters.${i}.diameterMm`,
				point.diameterMm,
				last.diameterMm,
				40,
			),
		);
		last = point;
	}
	return refusals.filter((refusal) => refusal !== null);
}

const fromTip = (present: PresentCue): readonly TaperPoint[] =>
	present.diameters
		.map(({ fromButtMm, diameterMm }) => ({
			stationMm: present.lengthMm - fromButtMm,
			diameterMm,
		}))
		.sort((a, b) => a.stationMm - b.stationMm);

/** Through the tip and the readings; a butt reading just short of the end is carried to it. */
export function taperOf(present: PresentCue): readonly TaperPoint[] {
	const points = fromTip(present);
	const butt = points[points.length - 1];
	const before = points[points.length - 2];
	if (!butt || !before) throw new RangeError("diameters were not checked");
	const slope =
		(butt.diameterMm - before.diameterMm) / (butt.stationMm - before.stationMm);
	return [
		{ stationMm: 0, diameterMm: present.tipDiameterMm },
		...points.slice(0, -1),
		{
			stationMm: present.lengthMm,
			diameterMm: butt.diameterMm + slope * (present.lengthMm - butt.stationMm),
		},
	];
}
