import type { Caution } from "@/lib/numerics/outcome";
import {
	HEAD_LIMITS,
	type HoldLimits,
	NECK_LIMITS,
	TRUNK_LIMITS,
} from "@/lib/reference/posture";
import type { Pose } from "./pose";

/**
 * Where an angle lies by ISO 11226. None of these says that a posture does no harm: the limits were
 * written for healthy adult workers, not for juniors or sport.
 */
export type HoldZone = "no-limit-printed" | "time-limited" | "past-limit";

export interface Hold {
	readonly angleDeg: number;
	readonly zone: HoldZone;
	/** Longest holding time, s; null where none is printed or none is accepted. */
	readonly longestS: number | null;
	/** Below the range: bent back, which the standard accepts only with support. */
	readonly bentBack: boolean;
}

/** t = longest − (longest − shortest)·(θ − free)/(limit − free), minutes; every printed row lies on it. */
export function holdOf(limits: HoldLimits, angleDeg: number): Hold {
	const { freeToDeg, limitDeg, longestMin, shortestMin } = limits;
	const hold = (zone: HoldZone, longestS: number | null): Hold => ({
		angleDeg,
		zone,
		longestS,
		bentBack: angleDeg < 0,
	});
	if (angleDeg < 0 || angleDeg > limitDeg) return hold("past-limit", null);
	if (angleDeg < freeToDeg) return hold("no-limit-printed", null);
	const minutes =
		longestMin -
		((longestMin - shortestMin) * (angleDeg - freeToDeg)) /
			(limitDeg - freeToDeg);
	return hold("time-limited", 60 * minutes);
}

export interface PostureNotice {
	readonly trunk: Hold;
	readonly head: Hold;
	readonly neckDeg: number;
	readonly neckZone: HoldZone;
	/** Shoulder line off square to the spine, deg; the standard accepts none. */
	readonly sideBendDeg: number;
	/** Shortest of the printed times, s; null where no time is printed. */
	readonly shortestHoldS: number | null;
	readonly cautions: readonly Caution[];
}

/** Side bend below this is within what the model can tell from none, deg. Assumed. */
const ASYMMETRY_DEG = 5;

/** Hold times of a pose, as data for a notice. `junior`: the limits do not cover the player at all. */
export function postureNotice(p: {
	anglesDeg: Pose["anglesDeg"];
	junior: boolean;
}): PostureNotice {
	const { trunkInclination, headInclination, neck, sideBend } = p.anglesDeg;
	const trunk = holdOf(TRUNK_LIMITS, trunkInclination);
	const head = holdOf(HEAD_LIMITS, headInclination);
	const neckZone: HoldZone =
		neck < NECK_LIMITS.minDeg || neck > NECK_LIMITS.maxDeg
			? "past-limit"
			: "no-limit-printed";
	const times = [trunk.longestS, head.longestS].filter(
		(t): t is number => t !== null,
	);
	const past =
		trunk.zone === "past-limit" ||
		head.zone === "past-limit" ||
		neckZone === "past-limit";
	const cautions: Caution[] = [];
	if (past)
		cautions.push({
			code: "posture-past-static-limits",
			facts: {
				trunkDeg: trunkInclination,
				trunkLimitDeg: TRUNK_LIMITS.limitDeg,
				neckDeg: neck,
			},
		});
	else if (times.length > 0)
		cautions.push({
			code: "posture-time-limited",
			facts: { trunkDeg: trunkInclination, longestS: Math.min(...times) },
		});
	if (Math.abs(sideBend) > ASYMMETRY_DEG)
		cautions.push({
			code: "posture-asymmetric",
			facts: { sideBendDeg: sideBend },
		});
	if (p.junior) cautions.push({ code: "posture-limits-exclude-juniors" });
	cautions.push({ code: "stand-up-between-shots" });
	return {
		trunk,
		head,
		neckDeg: neck,
		neckZone,
		sideBendDeg: sideBend,
		shortestHoldS: times.length > 0 && !past ? Math.min(...times) : null,
		cautions,
	};
}
