import type { BenchStage } from "@/lib/build/as-built";
import {
	type ImpliedDensities,
	impliedDensities,
	READING,
} from "@/lib/build/implied-densities";
import type { BilletDensities, CueDesign } from "@/lib/cue/design";
import { weighCue } from "@/lib/cue/mass";
import { accept, type Outcome, refuse } from "@/lib/numerics/outcome";
import type { BuildContent } from "./job-content";

/** A cue on the scale whose weight can be told from its design: the design as it then is, and the readings. */
export interface WeighedCue {
	readonly design: CueDesign;
	readonly massG: number;
	readonly balanceFromButtMm: number;
}

interface Weighing {
	readonly massG?: number | undefined;
	readonly balanceFromButtMm?: number | undefined;
	/** Metal that was really put in. */
	readonly metalMassG?: number | undefined;
}

/**
 * The cue as it was weighed. Before weighting its design has no metal. A finished one is told as it
 * would read with the planned metal in the planned place: the bench puts in what the blank needs, so
 * that the finished weight alone says nothing of the wood. Refusals: "stage-tells-nothing",
 * "not-weighed" without weight and balance, "metal-not-told".
 */
export function weighedCue(
	{ design, addedWeight }: Pick<BuildContent, "design" | "addedWeight">,
	stage: BenchStage,
	{ massG, balanceFromButtMm, metalMassG }: Weighing,
): Outcome<WeighedCue> {
	if (stage !== "before-weighting" && stage !== "finished")
		return refuse({
			code: "stage-tells-nothing",
			field: "stage",
			value: stage,
		});
	if (massG === undefined)
		return refuse({ code: "not-weighed", field: "massG", value: null });
	if (balanceFromButtMm === undefined)
		return refuse({
			code: "not-weighed",
			field: "balanceFromButtMm",
			value: null,
		});
	if (stage === "before-weighting")
		return accept({
			design: { ...design, addedWeight: [], plugs: [] },
			massG,
			balanceFromButtMm,
		});
	const planned = addedWeight.metalMassG;
	if (planned <= 0 && (metalMassG === undefined || metalMassG === 0))
		return accept({ design, massG, balanceFromButtMm });
	if (metalMassG === undefined)
		return refuse({ code: "metal-not-told", field: "metalMassG", value: null });
	if (planned <= 0)
		return refuse({
			code: "metal-not-planned",
			field: "metalMassG",
			value: metalMassG,
		});
	const overG = metalMassG - planned;
	const asPlannedG = massG - overG;
	return accept({
		design,
		massG: asPlannedG,
		balanceFromButtMm:
			(massG * balanceFromButtMm - overG * metalFromButtMm(design)) /
			asPlannedG,
	});
}

/** Centre of the planned metal, by length × section of its pieces. */
function metalFromButtMm({ addedWeight, lengthMm }: CueDesign): number {
	let volume = 0;
	let first = 0;
	for (const slug of addedWeight) {
		const { fromStationMm, toStationMm, diameterMm, annulusInnerMm = 0 } = slug;
		const share =
			(toStationMm - fromStationMm) * (diameterMm ** 2 - annulusInnerMm ** 2);
		volume += share;
		first += share * (lengthMm - (fromStationMm + toStationMm) / 2);
	}
	return first / volume;
}

/** What a weighed cue says of its woods: see impliedDensities. */
export const densitiesSaid = (
	{ design, massG, balanceFromButtMm }: WeighedCue,
	billets: BilletDensities,
	takeAnyway = false,
): Outcome<ImpliedDensities> =>
	impliedDensities({
		design,
		massG: { value: massG },
		balanceFromButtMm: { value: balanceFromButtMm },
		billets,
		takeAnyway,
	});

/** One predicted figure with its spread, and what was read. */
export interface Predicted {
	readonly expected: number;
	/** Of the reading about what was expected: woods, geometry and reading together. */
	readonly sd: number;
	readonly measured: number;
}

export interface Prediction {
	readonly mass: Predicted;
	readonly balance: Predicted;
}

/** Weight and balance as they were worked out when the cue was ordered, and as they came out. */
export function predictionOf({
	design,
	massG,
	balanceFromButtMm,
}: WeighedCue): Prediction {
	const before = weighCue(design);
	return {
		mass: {
			expected: before.massG.value,
			sd: Math.hypot(
				before.massG.sd,
				READING.massSdG,
				READING.geometryMassShare * before.massG.value,
			),
			measured: massG,
		},
		balance: {
			expected: before.balanceFromButtMm.value,
			sd: Math.hypot(
				before.balanceFromButtMm.sd,
				READING.balanceSdMm,
				READING.geometryBalanceMm,
			),
			measured: balanceFromButtMm,
		},
	};
}
