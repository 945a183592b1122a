import {
	type AddedWeightPlan,
	planAddedWeight,
} from "@/lib/build/added-weight";
import { checkRules, type RuleFinding } from "@/lib/build/rules";
import type { CueDesign } from "@/lib/cue/design";
import { cutOffsetMm } from "@/lib/cue/layers";
import {
	type CueMass,
	inertiaAboutStationKgM2,
	weighCue,
} from "@/lib/cue/mass";
import { diameterAtMm } from "@/lib/cue/taper";
import { designFrom } from "@/lib/cue/template";
import { accept, type Outcome, refuse } from "@/lib/numerics/outcome";
import { closureMm } from "@/lib/player/hand";
import type { Estimate } from "@/lib/reference/estimate";
import { endMassOfDesignG } from "@/lib/shot/endmass";
import { type TipTradeoff, tipTradeoff } from "@/lib/shot/tip";
import { AT, CRITERION_COUNT } from "./criteria";
import {
	benchBurdenG,
	type Candidate,
	longestPieceMm,
	type Setting,
} from "./evaluate";
import { giveOf } from "./feel";
import { handFromButtMm } from "./fitting-needs";
import { forgivenessShare } from "./forgiveness";

/** A candidate worked out by the models one cue at a time: what the tables of the scan are held to. */
export interface ReferenceCue {
	readonly row: Float64Array;
	/** Without added weight. */
	readonly design: CueDesign;
	readonly natural: CueMass;
	readonly plan: AddedWeightPlan;
	readonly finished: CueMass;
	readonly inertiaAboutGripKgM2: Estimate;
	readonly giveMmPerN: Estimate;
	readonly tipTradeoff: TipTradeoff;
	readonly rules: readonly RuleFinding[];
}

/** Refuses what `designFrom` and `planAddedWeight` refuse, and "not-in-price-list". */
export function referenceEvaluate(
	{ request, massG, forwardMm }: Candidate,
	setting: Setting,
): Outcome<ReferenceCue> {
	const made = designFrom({ ...request, densities: setting.densities });
	if (!made.ok) return made;
	const design = made.value;
	const natural = weighCue(design);
	const wantedMassG = massG ?? natural.massG.value;
	const wish = { design, wantedMassG, metal: setting.addedMetal };
	const rear = planAddedWeight(wish);
	if (!rear.ok) return rear;
	const planned =
		forwardMm > 0
			? planAddedWeight({
					...wish,
					wantedBalanceFromButtMm:
						rear.value.balanceAfterFromButtMm.value + forwardMm,
				})
			: rear;
	if (!planned.ok) return planned;
	const plan = planned.value;
	const priceMinor = setting.offering.priceMinor(request, plan.metalMassG > 0);
	if (priceMinor === null)
		return refuse({
			code: "not-in-price-list",
			field: "buttWood",
			value: request.buttWood,
		});
	const finished = weighCue(plan.finished);
	const { lengthMm, tipDiameterMm } = request;
	const handMm = handFromButtMm(setting.hand, lengthMm);
	const stationMm = lengthMm - handMm;
	const inertia = inertiaAboutStationKgM2(finished, stationMm);
	const give = giveOf(design, stationMm);
	const trade = tipTradeoff({
		gameId: setting.gameId,
		tipDiameterMm,
		domeRadiusMm: design.tip.domeRadiusMm,
		endMassG: endMassOfDesignG(design),
	});
	const row = new Float64Array(CRITERION_COUNT);
	row[AT.closure] = closureMm({
		circleMm: setting.ringMm,
		diameterMm: diameterAtMm(design, stationMm),
	});
	row[AT.reach] = lengthMm;
	row[AT.weight] = finished.massG.value;
	row[AT.steadiness] = inertia.value;
	row[AT.balance] = finished.balanceFromButtMm.value;
	row[AT.deflection] = trade.squirtDegAtHalf.value;
	row[AT.forgiveness] = forgivenessShare({
		level: setting.level,
		tipDiameterMm,
		domeRadiusMm: design.tip.domeRadiusMm,
	});
	row[AT.tip] = tipDiameterMm;
	row[AT.stiffness] = give.value;
	row[AT.build] = benchBurdenG(
		{ metalG: plan.metalMassG, boreDiameterMm: plan.boreDiameterMm },
		Math.min(
			Number.POSITIVE_INFINITY,
			...design.splice.cuts.map((cut) =>
				cutOffsetMm({ design, cut, stationMm: lengthMm }),
			),
		),
	);
	row[AT.price] = priceMinor;
	row[AT.finish] = setting.offering.finishOf(request);
	row[AT.carrying] = longestPieceMm(request);
	return accept({
		row,
		design,
		natural,
		plan,
		finished,
		inertiaAboutGripKgM2: inertia,
		giveMmPerN: give,
		tipTradeoff: trade,
		rules: checkRules(plan.finished, wantedMassG, setting.gameId),
	});
}
