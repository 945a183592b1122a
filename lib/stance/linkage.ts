import { rootBetween } from "@/lib/numerics/roots";
import type { Figure } from "./figure";
import {
	along,
	degrees,
	dot,
	minus,
	plus,
	radians,
	times,
	unit,
	type Vec3,
	vec,
} from "./vector";

/** Style of a stance as plain numbers; typical values and spreads are in assumptions.ts. */
export interface StyleValues {
	readonly yawDeg: number;
	readonly bridgeElbowDeg: number;
	readonly chinAboveCueMm: number;
	readonly headInclinationDeg: number;
	readonly gripShoulderRiseDeg: number;
	readonly bridgeShoulderRiseDeg: number;
	readonly trunkHeadingDeg: number;
	readonly neckLeanDeg: number;
	readonly forearmTiltDeg: number;
	readonly legDropRatio: number;
	readonly elevationDeg: number;
	readonly bridgeAxisHeightMm: number;
	/** Seat above the floor; used only when seated. */
	readonly seatHeightMm: number;
}

/** What surrounds the player, and what the player cannot do. */
export interface Situation {
	readonly clothHeightMm: number;
	readonly support: "standing" | "seated" | "frame";
	readonly stepMm: number;
	readonly trunkMaxDeg: number;
	readonly neckExtensionMaxDeg: number;
}

/** Where everything stands at one inclination of the trunk, chin not yet brought to its height. */
export interface Placement {
	readonly headInclinationDeg: number;
	readonly neckLimited: boolean;
	readonly chinAboveCueMm: number;
	readonly hipHeightMm: number;
	readonly spanMm: number;
	/** Bridge shoulder to groove, across and down only, over the chord of the bent arm; above 1 out of reach. */
	readonly bridgeReachRatio: number;
	/** Grip shoulder to the elbow's line over the upper arm; above 1 the elbow cannot rise over the hand. */
	readonly armLiftRatio: number;
	readonly points: {
		readonly hip: Vec3;
		readonly girdle: Vec3;
		readonly neckBase: Vec3;
		readonly headPivot: Vec3;
		readonly chin: Vec3;
		readonly eye: Vec3;
		readonly bridgeShoulder: Vec3;
		readonly gripShoulder: Vec3;
		readonly bridge: Vec3;
		readonly gripElbow: Vec3;
		readonly grip: Vec3;
	};
}

/** The neck's inclination stands midway between trunk and head. Assumed. */
const NECK_SHARE_OF_HEAD = 0.5;

/** Shoulder to groove of a bridge arm bent to that elbow angle, mm: cosine rule. */
export function bridgeChordMm(figure: Figure, elbowDeg: number): number {
	const { upperArmMm: a, bridgeForearmMm: b } = figure;
	return Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(radians(elbowDeg)));
}

/**
 * Places a right-handed player whose trunk is inclined by θ. Origin on the floor under the bridge
 * hand, x along the shot, y to the bridge side, z up. In turn:
 *   across — the chin stands over the cue (y = 0);
 *   along — bridge shoulder to groove is the chord of the bridge arm;
 *   span — grip shoulder to the elbow over the hand is the upper arm, elbow behind the shoulder.
 * Where a distance is too long for its link the nearest point is taken and its ratio exceeds 1.
 */
export function placeAt(
	figure: Figure,
	style: StyleValues,
	at: Situation,
	theta: number,
): Placement {
	const slope = radians(style.elevationDeg);
	const bridge = vec(0, 0, at.clothHeightMm + style.bridgeAxisHeightMm);
	const heading = radians(style.trunkHeadingDeg);
	const spine = vec(
		Math.sin(theta) * Math.cos(heading),
		-Math.sin(theta) * Math.sin(heading),
		Math.cos(theta),
	);
	const hipHeightMm = hipHeight(figure, style, at, theta);

	// Head and neck, from the middle of the shoulder line.
	const askedHead = radians(style.headInclinationDeg);
	const leastHead = theta - radians(at.neckExtensionMaxDeg);
	const head = Math.max(askedHead, leastHead);
	const headUp = vec(Math.sin(head), 0, Math.cos(head));
	const headForward = vec(Math.cos(head), 0, -Math.sin(head));
	const neckUp = unit(
		vec(
			spine.x + NECK_SHARE_OF_HEAD * (headUp.x - spine.x),
			spine.y * (1 - NECK_SHARE_OF_HEAD) - Math.tan(radians(style.neckLeanDeg)),
			spine.z + NECK_SHARE_OF_HEAD * (headUp.z - spine.z),
		),
	);
	const neckForward = unit(along(vec(1, 0, 0), neckUp, -neckUp.x));
	const neckBase = times(spine, figure.girdleToNeckMm);
	const headPivot = along(
		along(neckBase, neckUp, figure.neckUpMm),
		neckForward,
		figure.neckForwardMm,
	);
	const inHead = (forward: number, up: number) =>
		along(along(headPivot, headForward, forward), headUp, up);
	const chin = inHead(figure.chinForwardMm, -figure.chinDownMm);

	// Shoulder line.
	const yaw = radians(style.yawDeg);
	const half = (riseDeg: number, sign: 1 | -1): Vec3 => {
		const level = sign * figure.halfGirdleMm * Math.cos(radians(riseDeg));
		return vec(
			level * Math.cos(yaw),
			level * Math.sin(yaw),
			figure.halfGirdleMm * Math.sin(radians(riseDeg)),
		);
	};
	const toBridgeShoulder = half(style.bridgeShoulderRiseDeg, 1);

	const chord = bridgeChordMm(figure, style.bridgeElbowDeg);
	const girdleY = -chin.y;
	const girdleZ = hipHeightMm + figure.trunkMm * Math.cos(theta);
	const across = girdleY + toBridgeShoulder.y;
	const above = girdleZ + toBridgeShoulder.z - bridge.z;
	const sideways2 = across ** 2 + above ** 2;
	const girdle = vec(
		-toBridgeShoulder.x - Math.sqrt(Math.max(0, chord ** 2 - sideways2)),
		girdleY,
		girdleZ,
	);
	const gripShoulder = plus(girdle, half(style.gripShoulderRiseDeg, -1));

	// The elbow runs along a line parallel to the cue: |k + s·d| = upper arm, the root behind.
	const tilt = radians(style.forearmTiltDeg);
	const handToElbow = vec(
		-figure.forearmMm * Math.sin(tilt),
		0,
		figure.forearmMm * Math.cos(tilt),
	);
	const cueBackward = vec(-Math.cos(slope), 0, Math.sin(slope));
	const k = minus(plus(bridge, handToElbow), gripShoulder);
	const kd = dot(k, cueBackward);
	const off2 = Math.max(0, dot(k, k) - kd ** 2);
	const spanMm = -kd + Math.sqrt(Math.max(0, figure.upperArmMm ** 2 - off2));
	const grip = along(bridge, cueBackward, spanMm);

	return {
		headInclinationDeg: degrees(head),
		neckLimited: leastHead > askedHead,
		chinAboveCueMm:
			girdleZ + chin.z - bridge.z + (girdle.x + chin.x) * Math.tan(slope),
		hipHeightMm,
		spanMm,
		bridgeReachRatio: Math.sqrt(sideways2) / chord,
		armLiftRatio: Math.sqrt(off2) / figure.upperArmMm,
		points: {
			hip: along(girdle, spine, -figure.trunkMm),
			girdle,
			neckBase: plus(girdle, neckBase),
			headPivot: plus(girdle, headPivot),
			chin: plus(girdle, chin),
			eye: plus(girdle, inHead(figure.eyeForwardMm, figure.eyeUpMm)),
			bridgeShoulder: plus(girdle, toBridgeShoulder),
			gripShoulder,
			bridge,
			gripElbow: plus(grip, handToElbow),
			grip,
		},
	};
}

function hipHeight(
	figure: Figure,
	style: StyleValues,
	at: Situation,
	theta: number,
): number {
	if (at.support === "seated")
		return style.seatHeightMm + figure.hipAboveSeatMm;
	const drop = at.support === "frame" ? 0 : style.legDropRatio;
	return at.stepMm + figure.hipHeightMm * (1 - drop * Math.tan(theta / 2) ** 2);
}

export interface Linkage extends Placement {
	/** Trunk from upright, rad. */
	readonly theta: number;
	/** free: the chin is at its height; highest: upright and still below; limit: bent as far as allowed. */
	readonly trunk: "free" | "highest" | "limit";
}

/** The inclination at which the chin stands at its height over the cue, and everything with it. */
export function solveLinkage(
	figure: Figure,
	style: StyleValues,
	at: Situation,
): Linkage {
	const most = radians(at.trunkMaxDeg);
	const above = (theta: number) =>
		placeAt(figure, style, at, theta).chinAboveCueMm - style.chinAboveCueMm;
	const solved = (theta: number, trunk: Linkage["trunk"]): Linkage => ({
		...placeAt(figure, style, at, theta),
		theta,
		trunk,
	});
	const atRest = above(0);
	if (atRest < 0) return solved(0, "highest");
	if (above(most) > 0) return solved(most, "limit");
	const root = rootBetween({ f: above, from: 0, to: most, tolerance: 1e-13 });
	if (!root.converged)
		throw new RangeError(
			`trunk inclination not found: ${root.atFrom} mm to ${root.atTo} mm`,
		);
	return solved(root.root, "free");
}
