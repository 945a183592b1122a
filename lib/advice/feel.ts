import type { CueDesign } from "@/lib/cue/design";
import { inertiaAboutStationKgM2, weighCue } from "@/lib/cue/mass";
import { fitPresentCue, type PresentCueFit } from "@/lib/cue/present-cue";
import type { PresentCue as CueReading } from "@/lib/cue/present-reading";
import { growthCurve } from "@/lib/cue/taper";
import { woodSpread } from "@/lib/mechanics/bending";
import { droopClampedAt } from "@/lib/mechanics/droop";
import { beamProfileOf } from "@/lib/mechanics/profile";
import { accept, type Caution, type Outcome } from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import { buildFor } from "./build";
import { type FittingNeeds, handFromButtMm } from "./fitting-needs";
import type { PresentCue } from "./input";

/** What a cue feels like in the hand: how hard to turn about the grip, where it balances, how its tip gives. */
export interface Feel {
	readonly basis: "present-cue" | "usual-build";
	readonly inertiaAboutGripKgM2: Estimate;
	readonly giveMmPerN: Estimate;
	readonly balanceFromButtMm: Estimate;
	readonly massG: number;
	readonly cautions: readonly Caution[];
}

/** What a slide gauge read at the butt and an even taper leave open in an inertia, as a share. Assumed. */
const TAPER_SPREAD = 0.02;

/**
 * The feel to aim at: the present cue's where its length, weight and balance are known, otherwise that
 * of the usual build to the needs. A present cue that no usual build explains is left aside, and said.
 */
export function feelFor(
	needs: FittingNeeds,
	reading: CueReading | null = readingOf(needs),
): Outcome<Feel> {
	if (reading) {
		const fit = fitPresentCue(reading);
		if (fit.ok) return accept(presentFeel(reading, fit.value));
		const usual = usualFeel(needs);
		if (!usual.ok) return usual;
		const [refusal] = fit.refusals;
		return accept({
			...usual.value,
			cautions: [
				...usual.value.cautions,
				{
					code: "present-cue-not-explained",
					facts: { field: refusal?.field ?? "", value: refusal?.value ?? "" },
				},
			],
		});
	}
	return usualFeel(needs);
}

/** The present cue as far as it was read: without gauge readings an even taper between tip and butt stands in. */
export function readingOf(needs: FittingNeeds): CueReading | null {
	const { presentCue } = needs.input;
	const { lengthMm, massG, balanceFromButtMm } = presentCue;
	if (
		lengthMm === undefined ||
		massG === undefined ||
		balanceFromButtMm === undefined
	)
		return null;
	const tipMm = presentCue.tipDiameterMm ?? needs.tip.value;
	const buttMm = presentCue.buttDiameterMm ?? needs.butt.figure.value;
	return {
		lengthMm,
		massG,
		balanceFromButtMm,
		tipDiameterMm: tipMm,
		diameters:
			gaugedDiameters(presentCue) ?? evenDiameters({ tipMm, buttMm, lengthMm }),
		gripFromButtMm: handFromButtMm(needs.hand, lengthMm),
	};
}

/** The three gauge readings, where all were taken. */
function gaugedDiameters({
	buttDiameterMm,
	diameterAt300Mm,
	diameterAt700Mm,
}: PresentCue): CueReading["diameters"] | null {
	if (
		buttDiameterMm === undefined ||
		diameterAt300Mm === undefined ||
		diameterAt700Mm === undefined
	)
		return null;
	return [
		{ fromButtMm: 0, diameterMm: buttDiameterMm },
		{ fromButtMm: 300, diameterMm: diameterAt300Mm },
		{ fromButtMm: 700, diameterMm: diameterAt700Mm },
	];
}

function evenDiameters(p: {
	tipMm: number;
	buttMm: number;
	lengthMm: number;
}): CueReading["diameters"] {
	const grown = growthCurve("even");
	return [0, 0.2, 0.4, 0.6, 0.8].map((share) => ({
		fromButtMm: share * p.lengthMm,
		diameterMm: p.tipMm + (p.buttMm - p.tipMm) * grown.at(1 - share),
	}));
}

function presentFeel(reading: CueReading, fit: PresentCueFit): Feel {
	const { inertiaAboutGripKgM2, design } = fit;
	if (inertiaAboutGripKgM2 === null)
		throw new RangeError("presentFeel: the reading has no grip point");
	return {
		basis: "present-cue",
		inertiaAboutGripKgM2: {
			...inertiaAboutGripKgM2,
			sd: Math.hypot(
				inertiaAboutGripKgM2.sd,
				TAPER_SPREAD * inertiaAboutGripKgM2.value,
			),
		},
		giveMmPerN: giveOf(
			{ ...design, addedWeight: [], plugs: [] },
			design.lengthMm - (reading.gripFromButtMm ?? 0),
		),
		balanceFromButtMm: {
			value: reading.balanceFromButtMm,
			sd: 3,
			standing: "measured",
			sources: ["measured-here"],
		},
		massG: reading.massG,
		cautions: fit.cautions,
	};
}

function usualFeel(needs: FittingNeeds): Outcome<Feel> {
	const lengthMm = needs.length.value;
	const built = buildFor({
		input: needs.input,
		gameId: needs.gameId,
		lengthMm,
		buttDiameterMm: needs.butt.figure.value,
		tipDiameterMm: needs.tip.value,
		massG: needs.massNeed.figure.value,
	});
	if (!built.ok) return built;
	const { plan, design } = built.value;
	const finished = plan.ok ? plan.value.finished : design;
	const mass = weighCue(finished);
	const stationMm = lengthMm - handFromButtMm(needs.hand, lengthMm);
	return accept({
		basis: "usual-build",
		inertiaAboutGripKgM2: inertiaAboutStationKgM2(mass, stationMm),
		giveMmPerN: giveOf(design, stationMm),
		balanceFromButtMm: mass.balanceFromButtMm,
		massG: mass.massG.value,
		cautions: [],
	});
}

/** Sideways give of the tip, clamped at the hand, of the cue without metal in its butt. */
export function giveOf(design: CueDesign, clampStationMm: number): Estimate {
	const { tipGiveMmPerN } = droopClampedAt({
		profile: beamProfileOf(design),
		axis: "x",
		clampStationMm,
	});
	const { modulusCv, sources } = woodSpread(design);
	return {
		value: tipGiveMmPerN,
		sd: tipGiveMmPerN * modulusCv,
		standing: "derived",
		sources,
	};
}
