import { LEG_SHARES } from "./assumptions";
import type { Figure } from "./figure";
import type { Situation } from "./linkage";
import { along, middleJoint, radians, times, type Vec3, vec } from "./vector";

export interface Legs {
	readonly gripHip: Vec3;
	readonly bridgeHip: Vec3;
	readonly gripKnee: Vec3;
	readonly bridgeKnee: Vec3;
	readonly gripAnkle: Vec3;
	readonly bridgeAnkle: Vec3;
}

/** Share of the straight back leg's reach that the bent front leg steps forward. Assumed. */
const FRONT_STEP_SHARE = 0.6;
/** Back foot this far off the line opposite to the shot, front foot off the shot, deg. Assumed. */
const BACK_FOOT_DEG = 15;
const FRONT_FOOT_DEG = 35;

/**
 * Legs under a pose, for its picture: back leg straight, front knee bent, feet flat; or knees at a
 * right angle in a seat. Thigh and shank keep their lengths; null where the hips stand too low for a
 * straight back leg to be drawn.
 */
export function legsUnder(
	hip: Vec3,
	figure: Figure,
	at: Situation,
	yawDeg: number,
): Legs | null {
	// The pelvis turns half-way from the shoulders to square.
	const turn = radians((yawDeg + 90) / 2);
	const across = vec(Math.cos(turn), Math.sin(turn), 0);
	const gripHip = along(hip, across, -figure.halfHipMm);
	const bridgeHip = along(hip, across, figure.halfHipMm);
	const { thighMm, shankMm } = figure;
	if (at.support === "seated") {
		const facing = vec(Math.sin(turn), -Math.cos(turn), 0);
		const down = vec(0, 0, -shankMm);
		const knee = (from: Vec3) => along(from, facing, thighMm);
		return {
			gripHip,
			bridgeHip,
			gripKnee: knee(gripHip),
			bridgeKnee: knee(bridgeHip),
			gripAnkle: along(knee(gripHip), down, 1),
			bridgeAnkle: along(knee(bridgeHip), down, 1),
		};
	}
	const ankleZ = at.stepMm + LEG_SHARES.ankle * figure.hipHeightMm;
	const leg = thighMm + shankMm;
	const reach2 = leg ** 2 - (hip.z - ankleZ) ** 2;
	if (!(reach2 >= 0)) return null;
	const reach = Math.sqrt(reach2);
	const foot = (from: Vec3, deg: number, far: number): Vec3 =>
		vec(
			from.x + far * Math.cos(radians(deg)),
			from.y + far * Math.sin(radians(deg)),
			ankleZ,
		);
	const gripAnkle = foot(gripHip, 180 + BACK_FOOT_DEG, reach);
	const bridgeAnkle = foot(bridgeHip, FRONT_FOOT_DEG, FRONT_STEP_SHARE * reach);
	const bridgeKnee = middleJoint({
		from: bridgeHip,
		to: bridgeAnkle,
		firstMm: thighMm,
		secondMm: shankMm,
		toward: vec(1, 0.3, 0),
	});
	if (bridgeKnee === null) return null;
	const straight = times(
		vec(
			gripAnkle.x - gripHip.x,
			gripAnkle.y - gripHip.y,
			gripAnkle.z - gripHip.z,
		),
		1 / leg,
	);
	return {
		gripHip,
		bridgeHip,
		gripKnee: along(gripHip, straight, thighMm),
		bridgeKnee,
		gripAnkle,
		bridgeAnkle,
	};
}
