import { checkRules, type RuleFinding } from "@/lib/build/rules";
import {
	accept,
	type Caution,
	type Outcome,
	type Refusal,
} from "@/lib/numerics/outcome";
import type { Body } from "@/lib/player/body";
import type { GripCircle } from "@/lib/player/hand";
import { band90, type Estimate } from "@/lib/reference/estimate";
import type { GameId } from "@/lib/reference/rules";
import { endMassOfDesignG } from "@/lib/shot/endmass";
import { type TipTradeoff, tipTradeoff } from "@/lib/shot/tip";
import type { CueReach } from "@/lib/stance/reach";
import { snapTo } from "@/lib/units/quantity";
import { type Build, buildFor, buildOf } from "./build";
import type { ButtAdvice } from "./butt";
import type { CueChoice } from "./choice";
import { type Figure, surenessOf } from "./figure";
import { needsFor } from "./fitting-needs";
import type { FittingInput } from "./input";
import { FELT, STEP, usualBalanceMm } from "./judgement";
import type { MassNeed } from "./mass";
import { MODEL_VERSION } from "./version";

export interface Advice {
	readonly modelVersion: string;
	readonly input: FittingInput;
	readonly gameId: GameId;
	readonly body: Body;
	readonly grip: GripCircle;
	readonly reach: CueReach;
	readonly length: Figure;
	/** Weight to build to: as needed, or the wood's own where that is already above the need. */
	readonly mass: Figure;
	readonly massNeed: MassNeed;
	readonly butt: ButtAdvice;
	readonly tip: Figure;
	readonly tipTradeoff: TipTradeoff;
	readonly balance: Figure;
	readonly build: Build;
	readonly rules: readonly RuleFinding[];
	readonly cautions: readonly Caution[];
	/** True when the build reaches the weight and breaks no rule. */
	readonly isBuildable: boolean;
}

/**
 * From what is known of a player to a spec, each figure with its evidence and band. Without a choice
 * the figures are the needs themselves, snapped, in the budget's usual build.
 */
export function advise(
	input: FittingInput,
	choice?: CueChoice,
): Outcome<Advice> {
	const { gameId } = input.stance;
	const found = needsFor(input, choice?.request);
	if (!found.ok) return found;
	const needs = found.value;
	const { body, grip, reach, massNeed } = needs;
	const length = withValue(needs.length, choice?.request.lengthMm);
	const tip = withValue(needs.tip, choice?.request.tipDiameterMm);
	const buttFigure = withValue(
		needs.butt.figure,
		choice?.request.buttDiameterMm,
	);
	const lengthMm = length.value;
	const built =
		choice === undefined
			? buildTo({
					input,
					gameId,
					lengthMm,
					tipDiameterMm: tip.value,
					buttDiameterMm: buttFigure.value,
					massNeed,
				})
			: buildChosen({ choice, mass: massNeed.figure, input });
	if (!built.ok) return built;
	const { build, mass, cautions: massCautions } = built.value;

	const balance = balanceFigure(build);
	const finished = build.plan.ok ? build.plan.value.finished : build.design;
	const rules = checkRules(finished, mass.value, gameId);
	return accept({
		modelVersion: MODEL_VERSION,
		input,
		gameId,
		body,
		grip,
		reach,
		length,
		mass,
		massNeed,
		butt: { ...needs.butt, figure: buttFigure },
		tip,
		tipTradeoff: tipTradeoff({
			gameId,
			tipDiameterMm: tip.value,
			domeRadiusMm: build.design.tip.domeRadiusMm,
			endMassG: endMassOfDesignG(build.design),
		}),
		balance,
		build,
		rules,
		cautions: [
			...needs.cautions,
			...massCautions,
			...(build.plan.ok ? build.plan.value.cautions : []),
			...balanceCautions({ balance, gameId, lengthMm }),
		],
		isBuildable: build.plan.ok && rules.every(({ ok }) => ok),
	});
}

/** The need with the value that was picked for it. */
const withValue = (figure: Figure, value: number | undefined): Figure =>
	value === undefined ? figure : { ...figure, value };

function buildChosen({
	choice,
	mass,
	input,
}: {
	choice: CueChoice;
	mass: Figure;
	input: FittingInput;
}): Outcome<{ build: Build; mass: Figure; cautions: Caution[] }> {
	const build = buildOf(choice, input.workshop);
	if (!build.ok) return build;
	const { natural } = build.value;
	return accept({
		build: build.value,
		mass: {
			...mass,
			value: choice.wantedMassG ?? snapTo(natural.massG.value, mass.step),
		},
		cautions: [],
	});
}

/**
 * Builds to the weight needed. A weight nobody wished for gives way to the wood: where the build is
 * already heavier, or has no room for the metal, the nearest weight it can be had at is advised and a
 * caution says so. A wish stays as it is, refusal and all.
 */
function buildTo({
	massNeed,
	...need
}: {
	input: FittingInput;
	gameId: GameId;
	lengthMm: number;
	tipDiameterMm: number;
	buttDiameterMm: number;
	massNeed: MassNeed;
}): Outcome<{ build: Build; mass: Figure; cautions: Caution[] }> {
	const mass = massNeed.figure;
	const built = buildFor({ ...need, massG: mass.value });
	if (!built.ok) return built;
	const { plan, natural, request } = built.value;
	if (plan.ok || mass.basis === "wish")
		return accept({ build: built.value, mass, cautions: [] });
	const nearest = nearestMass(plan.refusals, mass.step);
	if (nearest === null)
		return accept({ build: built.value, mass, cautions: [] });
	const rebuilt = buildFor({
		...need,
		input: {
			...need.input,
			wishes: { ...need.input.wishes, buttWood: request.buttWood },
		},
		massG: nearest.massG,
	});
	if (!rebuilt.ok) return rebuilt;
	const { sd } = natural.massG;
	return accept({
		build: rebuilt.value,
		mass: {
			...mass,
			value: nearest.massG,
			sd,
			band: band90({ value: nearest.massG, sd }),
			sureness: surenessOf({ sd, feltDifference: FELT.massG }),
		},
		cautions: [
			{
				code: nearest.code,
				facts: {
					wantedG: mass.exact,
					naturalMassG: natural.massG.value,
					nearestG: nearest.massG,
					buttWood: request.buttWood,
				},
			},
		],
	});
}

/** The bench's nearest step inside what a refused plan says can be had. */
function nearestMass(
	refusals: readonly Refusal[],
	step: number,
): { code: string; massG: number } | null {
	for (const { code, facts } of refusals) {
		const nearestMassG = facts?.nearestMassG;
		if (typeof nearestMassG !== "number") continue;
		if (code === "weight-below-natural")
			return {
				code: "mass-raised-to-wood",
				massG: Math.ceil(nearestMassG / step) * step,
			};
		if (code === "weight-above-bore")
			return {
				code: "mass-lowered-to-bore",
				massG: Math.floor(nearestMassG / step) * step,
			};
	}
	return null;
}

function balanceFigure({ plan, natural }: Build): Figure {
	const estimate: Estimate = plan.ok
		? plan.value.balanceAfterFromButtMm
		: natural.balanceFromButtMm;
	return {
		value: snapTo(estimate.value, STEP.balanceMm),
		exact: estimate.value,
		sd: estimate.sd,
		band: band90(estimate),
		step: STEP.balanceMm,
		basis: "derived",
		sureness: surenessOf({ sd: estimate.sd, feltDifference: FELT.balanceMm }),
		evidence: [
			{
				code: plan.ok ? "balance-of-build" : "balance-natural",
				value: estimate.value,
				sd: estimate.sd,
				basis: "derived",
				sources: estimate.sources,
				shareFraction: 1,
			},
		],
	};
}

/** No usual window is known here for carom; a millimetre past its edge is not worth a notice. */
function balanceCautions({
	balance,
	gameId,
	lengthMm,
}: {
	balance: Figure;
	gameId: GameId;
	lengthMm: number;
}): Caution[] {
	const { min, max } = usualBalanceMm(lengthMm);
	const { exact } = balance;
	if (gameId === "carom" || (exact >= min - 1 && exact <= max + 1)) return [];
	return [
		{
			code: "balance-outside-usual",
			facts: { balanceFromButtMm: balance.exact, lowMm: min, highMm: max },
		},
	];
}
