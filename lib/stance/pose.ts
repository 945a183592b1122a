import type { Outcome } from "@/lib/numerics/outcome";
import type { Body } from "@/lib/player/body";
import type { StanceAnswers } from "./answers";
import { CUSHION_HEIGHT_MM } from "./assumptions";
import { type Legs, legsUnder } from "./legs";
import { bridgeChordMm, type StyleValues } from "./linkage";
import { type Stand, standAt } from "./stand";
import {
	along,
	angleAtDeg,
	degrees,
	distance,
	middleJoint,
	minus,
	norm,
	radians,
	unit,
	type Vec3,
	vec,
} from "./vector";

type Upper =
	| "hip"
	| "girdle"
	| "neckBase"
	| "headPivot"
	| "chin"
	| "eye"
	| "bridgeShoulder"
	| "bridgeElbow"
	| "bridgeWrist"
	| "bridge"
	| "gripShoulder"
	| "gripElbow"
	| "gripWrist"
	| "grip";

/** A condition the pose does not meet, with the number reached and its bound. */
export interface Shortfall {
	readonly code:
		| "chin-below-cue"
		| "chin-above-cue"
		| "elbow-cannot-rise"
		| "grip-hand-out-of-reach"
		| "neck-at-limit"
		| "span-not-reached";
	readonly value: number;
	readonly bound: number;
	readonly unit: "mm" | "deg" | "ratio";
}

/**
 * A solved pose at contact. Origin on the floor under the bridge hand; x along the shot, y to the left
 * of the shot, z up, mm. A left-handed player is the mirror image in y.
 */
export interface Pose {
	readonly joints: Readonly<Record<Upper, Vec3>>;
	readonly legs: Legs | null;
	readonly spanMm: number;
	readonly stepMm: number;
	readonly clothHeightMm: number;
	readonly cushionTopMm: number;
	readonly chinAboveCueMm: number;
	readonly anglesDeg: {
		readonly cueElevation: number;
		readonly trunkInclination: number;
		readonly headInclination: number;
		/** Head less trunk; negative is bent back. */
		readonly neck: number;
		readonly shoulderYaw: number;
		/** Shoulder line off square to the spine. */
		readonly sideBend: number;
		readonly bridgeElbow: number;
		readonly gripElbow: number;
		readonly gripUpperArmRise: number;
		readonly forearmTilt: number;
	};
	readonly style: StyleValues;
	readonly shortfalls: readonly Shortfall[];
	/** Links and contacts not met, root sum of squares, mm. */
	readonly residualMm: number;
	/** Every link and contact holds, whatever limits shaped the pose. */
	readonly converged: boolean;
}

export function solvePose(p: {
	body: Body;
	answers: StanceAnswers;
}): Outcome<Pose> {
	const stand = standAt(p);
	return stand.ok
		? { ok: true, value: poseOf(stand.value, p.answers.handed ?? "right") }
		: stand;
}

/** Share of hand length from wrist to the groove of the bridge, and to the middle of the grip. Assumed. */
const WRIST_TO_BRIDGE_SHARE = 0.46;
const WRIST_TO_GRIP_SHARE = 0.36;
/** A link or contact counts as held within this, mm. */
const HELD_MM = 1e-9;

export function poseOf(stand: Stand, handed: "right" | "left"): Pose {
	const { figure, linkage, values, at } = stand;
	const { points } = linkage;
	const bridgeElbow =
		middleJoint({
			from: points.bridgeShoulder,
			to: points.bridge,
			firstMm: figure.upperArmMm,
			secondMm: figure.bridgeForearmMm,
			toward: vec(0, 1, -0.6),
		}) ??
		along(
			points.bridgeShoulder,
			unit(minus(points.bridge, points.bridgeShoulder)),
			figure.upperArmMm,
		);
	const toward = (from: Vec3, to: Vec3, mm: number) =>
		along(from, unit(minus(to, from)), mm);
	const joints: Record<Upper, Vec3> = {
		...points,
		bridgeElbow,
		bridgeWrist: toward(
			points.bridge,
			bridgeElbow,
			WRIST_TO_BRIDGE_SHARE * figure.handMm,
		),
		gripWrist: toward(
			points.grip,
			points.gripElbow,
			WRIST_TO_GRIP_SHARE * figure.handMm,
		),
	};
	const rise = minus(points.gripElbow, points.gripShoulder);
	const residualMm = residualOf(stand, joints);
	const shortfalls = shortfallsOf(stand);
	const legs = legsUnder(points.hip, figure, at, values.yawDeg);
	const mirror = (v: Vec3): Vec3 =>
		handed === "right" ? v : vec(v.x, -v.y, v.z);
	const mirrored = <T extends object>(all: T): T =>
		Object.fromEntries(
			Object.entries(all).map(([name, v]) => [name, mirror(v as Vec3)]),
		) as T;
	return {
		joints: mirrored(joints),
		legs: legs && mirrored(legs),
		spanMm: linkage.spanMm,
		stepMm: at.stepMm,
		clothHeightMm: at.clothHeightMm,
		cushionTopMm: at.clothHeightMm + CUSHION_HEIGHT_MM,
		chinAboveCueMm: linkage.chinAboveCueMm,
		anglesDeg: {
			cueElevation: values.elevationDeg,
			trunkInclination: degrees(linkage.theta),
			headInclination: linkage.headInclinationDeg,
			neck: linkage.headInclinationDeg - degrees(linkage.theta),
			shoulderYaw: values.yawDeg,
			sideBend:
				angleAtDeg(points.girdle, points.bridgeShoulder, points.neckBase) - 90,
			bridgeElbow: angleAtDeg(
				bridgeElbow,
				points.bridgeShoulder,
				points.bridge,
			),
			gripElbow: angleAtDeg(points.gripElbow, points.gripShoulder, points.grip),
			gripUpperArmRise: degrees(Math.asin(rise.z / norm(rise))),
			forearmTilt: values.forearmTiltDeg,
		},
		style: values,
		shortfalls,
		residualMm,
		converged: residualMm < HELD_MM && stand.fit?.converged !== false,
	};
}

/** Measured on the joints alone, not on how they were found. */
function residualOf(stand: Stand, joints: Record<Upper, Vec3>): number {
	const { figure, linkage, values } = stand;
	const j = joints;
	const off = (a: Vec3, b: Vec3, mm: number) => distance(a, b) - mm;
	const slope = Math.tan(radians(values.elevationDeg));
	const axisAt = (x: number) => j.bridge.z - x * slope;
	return Math.hypot(
		off(j.girdle, j.hip, figure.trunkMm),
		off(j.girdle, j.neckBase, figure.girdleToNeckMm),
		off(
			j.neckBase,
			j.headPivot,
			Math.hypot(figure.neckUpMm, figure.neckForwardMm),
		),
		off(
			j.headPivot,
			j.chin,
			Math.hypot(figure.chinForwardMm, figure.chinDownMm),
		),
		off(j.girdle, j.bridgeShoulder, figure.halfGirdleMm),
		off(j.girdle, j.gripShoulder, figure.halfGirdleMm),
		off(j.bridgeShoulder, j.bridgeElbow, figure.upperArmMm),
		off(j.bridgeElbow, j.bridge, figure.bridgeForearmMm),
		off(
			j.bridgeShoulder,
			j.bridge,
			bridgeChordMm(figure, values.bridgeElbowDeg),
		),
		off(j.gripShoulder, j.gripElbow, figure.upperArmMm),
		off(j.gripElbow, j.grip, figure.forearmMm),
		j.grip.y,
		j.grip.z - axisAt(j.grip.x),
		j.chin.y,
		linkage.trunk === "free"
			? j.chin.z - axisAt(j.chin.x) - values.chinAboveCueMm
			: 0,
	);
}

function shortfallsOf({ linkage, values, at, fit }: Stand): Shortfall[] {
	const found: Shortfall[] = [];
	if (linkage.trunk !== "free")
		found.push({
			code: linkage.trunk === "highest" ? "chin-below-cue" : "chin-above-cue",
			value: linkage.chinAboveCueMm,
			bound: values.chinAboveCueMm,
			unit: "mm",
		});
	if (linkage.armLiftRatio > 1)
		found.push({
			code:
				linkage.points.gripElbow.z > linkage.points.gripShoulder.z
					? "elbow-cannot-rise"
					: "grip-hand-out-of-reach",
			value: linkage.armLiftRatio,
			bound: 1,
			unit: "ratio",
		});
	if (linkage.neckLimited)
		found.push({
			code: "neck-at-limit",
			value: degrees(linkage.theta) - linkage.headInclinationDeg,
			bound: at.neckExtensionMaxDeg,
			unit: "deg",
		});
	if (fit && !fit.converged)
		found.push({
			code: "span-not-reached",
			value: linkage.spanMm,
			bound: linkage.spanMm - fit.residualMm,
			unit: "mm",
		});
	return found;
}
