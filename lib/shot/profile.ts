import {
	accept,
	type Outcome,
	outside,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { pivotLengthMm } from "./deflection";
import { bestMassAtEqualEffortG, equalEffortSpeedFraction } from "./effort";
import { DIME_RADIUS, LEATHER_RESTITUTION, MISCUE_OFFSET } from "./published";
import { centreHitSpeedRatio, offsetHitSpeedRatio } from "./speed";
import { maxOffsetRatioForTip, spinRatio, spinRevPerS } from "./spin";
import { squirtEstimate } from "./tip";

export interface ShotInput {
	readonly gameId: GameId;
	readonly cueMassG: Estimate;
	readonly endMassG: Estimate;
	readonly armMassG: Estimate;
	readonly tipDiameterMm: number;
	/** Default: the smaller coin's radius. */
	readonly domeRadiusMm?: number;
	/** Restitution of the tip; default leather. */
	readonly restitution?: { readonly value: number; readonly sd: number };
	/** Cue speed at contact; default 2 m/s, a firm ordinary shot (judgement). */
	readonly cueSpeedMPerS?: number;
}

/** One contact offset on the ball, of the ball radius, side or height alike for speed and spin. */
export interface OffsetPoint {
	readonly offsetRatio: number;
	/** Within the miscue limit and on the dome. */
	readonly isUsable: boolean;
	/** Midway between the two published models; the spread holds half their gap. */
	readonly ballSpeedMPerS: Estimate;
	/** Restitution-constant speed over efficiency-constant speed, less 1; null where the latter has no answer. */
	readonly modelGapFraction: number | null;
	readonly spinRatio: number;
	readonly spinRevPerS: Estimate;
	/** From the cue's axis; 0 at no offset. */
	readonly squirtDeg: Estimate;
	/** Null at no offset, where it is not defined. */
	readonly pivotLengthMm: Estimate | null;
}

/** Ball speed for one cue weight, others as they are. */
export interface WeightPoint {
	readonly cueMassG: number;
	/** Of the best weight at equal effort; band from the arm's spread. */
	readonly equalEffortFraction: Estimate;
	/** Ball speed over cue speed for a centre hit at equal cue speed. */
	readonly equalSpeedRatio: Estimate;
}

export interface ShotProfile {
	readonly centreSpeedRatio: Estimate;
	readonly bestMassG: Estimate;
	readonly usableOffsetRatio: number;
	readonly offsets: readonly OffsetPoint[];
	readonly weights: readonly WeightPoint[];
}

const DEFAULT_CUE_SPEED = 2;
const OFFSETS = Array.from({ length: 13 }, (_, i) => i / 20);
const WEIGHTS_G = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);

/**
 * What a cue does to its game's ball. Refuses outside: cue 200–1000 g, end mass 1–40 g, arm 50–3000 g,
 * tip 7–14 mm, dome radius 4–25 mm, cue speed 0.1–15 m/s, restitution 0.3–1.
 */
export function shotProfile(input: ShotInput): Outcome<ShotProfile> {
	const cueSpeedMPerS = input.cueSpeedMPerS ?? DEFAULT_CUE_SPEED;
	const restitution = input.restitution ?? LEATHER_RESTITUTION;
	const refusals = [
		outside("cueMassG", input.cueMassG.value, 200, 1000),
		outside("endMassG", input.endMassG.value, 1, 40),
		outside("armMassG", input.armMassG.value, 50, 3000),
		outside("tipDiameterMm", input.tipDiameterMm, 7, 14),
		outside("domeRadiusMm", input.domeRadiusMm ?? DIME_RADIUS.value, 4, 25),
		outside("cueSpeedMPerS", cueSpeedMPerS, 0.1, 15),
		outside("restitutionRatio", restitution.value, 0.3, 1),
	].filter((refusal): refusal is Refusal => refusal !== null);
	if (refusals.length > 0) return refuse(...refusals);
	const shot: Shot = {
		...input,
		cueSpeedMPerS,
		restitution,
		domeRadiusMm: input.domeRadiusMm ?? DIME_RADIUS.value,
	};
	const usableOffsetRatio = Math.min(
		MISCUE_OFFSET.value,
		maxOffsetRatioForTip(shot),
	);
	return accept({
		centreSpeedRatio: speedRatio(shot, 0).estimate,
		bestMassG: bestMass(shot),
		usableOffsetRatio,
		offsets: OFFSETS.map((x) => offsetPoint(shot, x, x <= usableOffsetRatio)),
		weights: WEIGHTS_G.map((massG) => weightPoint(shot, massG)),
	});
}

type Shot = ShotInput &
	Required<Pick<ShotInput, "restitution" | "cueSpeedMPerS" | "domeRadiusMm">>;

const derived = (
	value: number,
	sd: number,
	sources: Estimate["sources"],
): Estimate => ({ value, sd, standing: "derived", sources });

/** Root sum of the changes that each input's own standard deviation makes. */
function spreadOf(
	f: (values: readonly number[]) => number,
	inputs: readonly { readonly value: number; readonly sd: number }[],
): number {
	const values = inputs.map((input) => input.value);
	return Math.hypot(
		...inputs.map((input, i) => {
			const moved = (sign: number): number =>
				f(values.map((v, j) => (i === j ? v + sign * input.sd : v)));
			return (moved(1) - moved(-1)) / 2;
		}),
	);
}

function speedRatio(
	shot: Shot,
	offsetRatio: number,
): { estimate: Estimate; gap: number | null } {
	const ball = GAMES[shot.gameId].cueBall.massG;
	const both = ([cueMassG, ballMassG, e]: readonly number[]) =>
		offsetHitSpeedRatio({
			cueMassG: cueMassG as number,
			ballMassG: ballMassG as number,
			restitutionRatio: Math.min(1, e as number),
			offsetRatio,
		});
	const inputs = [shot.cueMassG, ball, shot.restitution];
	const here = both(inputs.map((input) => input.value));
	const high = here.constantRestitution;
	const low = here.constantEfficiency ?? high;
	const spread = spreadOf((values) => both(values).constantRestitution, inputs);
	return {
		estimate: derived((high + low) / 2, Math.hypot(spread, (high - low) / 2), [
			"alciatore-a30",
			"kim-2022",
			ball.source,
		]),
		gap: here.constantEfficiency === null ? null : high / low - 1,
	};
}

function bestMass(shot: Shot): Estimate {
	const ball = GAMES[shot.gameId].cueBall.massG;
	const best = ([ballMassG, armMassG]: readonly number[]): number =>
		bestMassAtEqualEffortG({
			ballMassG: ballMassG as number,
			armMassG: armMassG as number,
		});
	const inputs = [ball, shot.armMassG];
	return derived(
		best(inputs.map((input) => input.value)),
		spreadOf(best, inputs),
		["shepard-1997", ball.source, ...shot.armMassG.sources],
	);
}

function offsetPoint(
	shot: Shot,
	offsetRatio: number,
	isUsable: boolean,
): OffsetPoint {
	const ball = GAMES[shot.gameId].cueBall;
	const { estimate, gap } = speedRatio(shot, offsetRatio);
	const ballSpeedMPerS = derived(
		estimate.value * shot.cueSpeedMPerS,
		estimate.sd * shot.cueSpeedMPerS,
		estimate.sources,
	);
	const perSpeed = spinRevPerS({
		offsetRatio,
		ballSpeedMPerS: 1,
		ballDiameterMm: ball.diameterMm.value,
	});
	const squirt = squirtEstimate({
		offsetRatio,
		ballMassG: ball.massG,
		endMassG: shot.endMassG,
	});
	return {
		offsetRatio,
		isUsable,
		ballSpeedMPerS,
		modelGapFraction: gap,
		spinRatio: spinRatio(offsetRatio),
		spinRevPerS: derived(
			perSpeed * ballSpeedMPerS.value,
			perSpeed * ballSpeedMPerS.sd,
			ballSpeedMPerS.sources,
		),
		squirtDeg: squirt,
		pivotLengthMm: offsetRatio === 0 ? null : pivot(shot, offsetRatio, squirt),
	};
}

/** At small angles the length is a constant over the angle, so its relative spread is the angle's. */
function pivot(shot: Shot, offsetRatio: number, squirt: Estimate): Estimate {
	const ballDiameterMm = GAMES[shot.gameId].cueBall.diameterMm.value;
	const value = pivotLengthMm({
		offsetRatio,
		squirtDeg: squirt.value,
		ballDiameterMm,
		domeRadiusMm: shot.domeRadiusMm,
	});
	return derived(
		value,
		((value + ballDiameterMm / 2) * squirt.sd) / squirt.value,
		["alciatore-b1", ...squirt.sources],
	);
}

function weightPoint(shot: Shot, cueMassG: number): WeightPoint {
	const ball = GAMES[shot.gameId].cueBall.massG;
	const fraction = ([ballMassG, armMassG]: readonly number[]): number =>
		equalEffortSpeedFraction({
			cueMassG,
			ballMassG: ballMassG as number,
			armMassG: armMassG as number,
		});
	const ratio = ([ballMassG, e]: readonly number[]): number =>
		centreHitSpeedRatio({
			cueMassG,
			ballMassG: ballMassG as number,
			restitutionRatio: Math.min(1, e as number),
		});
	const arm = [ball, shot.armMassG];
	const tip = [ball, shot.restitution];
	return {
		cueMassG,
		equalEffortFraction: derived(
			fraction(arm.map((input) => input.value)),
			spreadOf(fraction, arm),
			["shepard-1997", ...shot.armMassG.sources],
		),
		equalSpeedRatio: derived(
			ratio(tip.map((input) => input.value)),
			spreadOf(ratio, tip),
			["alciatore-a30", ball.source],
		),
	};
}
