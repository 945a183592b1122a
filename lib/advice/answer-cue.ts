import {
	type AddedWeightPlan,
	planAddedWeight,
} from "@/lib/build/added-weight";
import {
	type ImpliedDensities,
	impliedDensities,
} from "@/lib/build/implied-densities";
import { checkRules, type RuleFinding } from "@/lib/build/rules";
import { type SheetStation, sheetStations } from "@/lib/build/stations";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { type Grain, type GrainPicture, grainArrows } from "@/lib/cue/grain";
import {
	type CueMass,
	inertiaAboutStationKgM2,
	weighCue,
} from "@/lib/cue/mass";
import { type Season, type YearSwing, yearSwing } from "@/lib/cue/moisture";
import { diameterAtMm } from "@/lib/cue/taper";
import { designFrom } from "@/lib/cue/template";
import { bendingOf, type CueBending } from "@/lib/mechanics/bending";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import type { GameId } from "@/lib/reference/rules";
import { feltArmMassG } from "@/lib/shot/effort";
import { endMassOfDesignG } from "@/lib/shot/endmass";
import { type ShotProfile, shotProfile } from "@/lib/shot/profile";

export interface CueQuestion {
	readonly cue: CueRequest;
	readonly gameId: GameId;
	readonly wantedMassG?: number;
	readonly wantedBalanceFromButtMm?: number;
	readonly gripFromButtMm: number;
	readonly measured?: {
		readonly massG: number;
		readonly balanceFromButtMm: number;
	};
	readonly seasons?: readonly Season[];
	readonly grain?: Grain;
}

export interface CueAnswer {
	/** With the metal in it, where a weight was wanted. */
	readonly design: CueDesign;
	readonly mass: CueMass;
	readonly inertiaAboutGripKgM2: Estimate;
	readonly plan: AddedWeightPlan | null;
	readonly stations: readonly SheetStation[];
	readonly rules: readonly RuleFinding[];
	readonly bending: CueBending;
	readonly endMassG: Estimate;
	readonly year: YearSwing | null;
	readonly grain: GrainPicture | null;
	/** Densities the measured weight and balance imply: give them back as `cue.densities`. */
	readonly implied: ImpliedDensities | null;
}

/** Everything the models say of one cue. */
export function answerCue(question: CueQuestion): Outcome<CueAnswer> {
	const { gameId, gripFromButtMm, seasons, grain, measured } = question;
	const built = buildOf(question);
	if (!built.ok) return built;
	const { design, plan } = built.value;
	const mass = weighCue(design);
	const bending = bendingOf({ design, gripFromButtMm });
	if (!bending.ok) return bending;
	const year = seasons === undefined ? null : yearSwing(design, seasons);
	if (year !== null && !year.ok) return year;
	const arrows = grain === undefined ? null : grainArrows({ design, grain });
	if (arrows !== null && !arrows.ok) return arrows;
	const implied =
		measured === undefined
			? null
			: impliedDensities({
					design,
					massG: { value: measured.massG },
					balanceFromButtMm: { value: measured.balanceFromButtMm },
				});
	if (implied !== null && !implied.ok) return implied;
	return accept({
		design,
		mass,
		inertiaAboutGripKgM2: inertiaAboutStationKgM2(
			mass,
			design.lengthMm - gripFromButtMm,
		),
		plan,
		stations: sheetStations(design, {}),
		rules: checkRules(design, mass.massG.value, gameId),
		bending: bending.value,
		endMassG: endMassOfDesignG(design),
		year: year?.value ?? null,
		grain: arrows?.value ?? null,
		implied: implied?.value ?? null,
	});
}

function buildOf({
	cue,
	wantedMassG,
	wantedBalanceFromButtMm,
}: CueQuestion): Outcome<{ design: CueDesign; plan: AddedWeightPlan | null }> {
	const design = designFrom(cue);
	if (!design.ok) return design;
	if (wantedMassG === undefined)
		return accept({ design: design.value, plan: null });
	const plan = planAddedWeight({
		design: design.value,
		wantedMassG,
		...(wantedBalanceFromButtMm === undefined
			? {}
			: { wantedBalanceFromButtMm }),
	});
	return plan.ok
		? accept({ design: plan.value.finished, plan: plan.value })
		: plan;
}

export interface ShotQuestion {
	readonly cue: CueRequest;
	readonly gameId: GameId;
	/** Finished weight; the cue's natural weight where it is left out. */
	readonly cueMassG?: number;
	readonly bodyMassKg?: number;
	readonly sex?: "female" | "male";
	readonly domeRadiusMm?: number;
	readonly restitutionRatio?: number;
	readonly cueSpeedMPerS?: number;
}

/** What one cue does to its game's ball. */
export function answerShot(
	question: ShotQuestion,
): Outcome<ShotProfile & { readonly endMassG: Estimate }> {
	const design = designFrom(question.cue);
	if (!design.ok) return design;
	const { cueMassG, restitutionRatio } = question;
	const endMassG = endMassOfDesignG(design.value);
	const profile = shotProfile({
		gameId: question.gameId,
		cueMassG:
			cueMassG === undefined
				? weighCue(design.value).massG
				: {
						value: cueMassG,
						sd: 0,
						standing: "measured",
						sources: ["measured-here"],
					},
		endMassG,
		armMassG: feltArmMassG({
			bodyMassKg: question.bodyMassKg,
			sex: question.sex,
		}),
		tipDiameterMm: diameterAtMm(design.value, 0),
		domeRadiusMm: question.domeRadiusMm,
		...(restitutionRatio === undefined
			? {}
			: { restitution: { value: restitutionRatio, sd: 0 } }),
		cueSpeedMPerS: question.cueSpeedMPerS,
	});
	return profile.ok ? accept({ ...profile.value, endMassG }) : profile;
}
