import { HEAD_SHARES } from "@/lib/stance/assumptions";
import type { Pose } from "@/lib/stance/pose";
import { distance, radians, type Vec3 } from "@/lib/stance/vector";

/** What a drawn pose is made of besides the player's links: shapes, head, cue, seat and frame. */
export type Point = readonly [x: number, y: number];

export type Part =
	| "floor"
	| "table"
	| "cloth"
	| "cushion"
	| "support"
	| "far"
	| "near"
	| "skin"
	| "cue"
	| "butt"
	| "guide";

export interface Shape {
	readonly id: string;
	readonly part: Part;
	readonly points: readonly Point[];
	/** A rounded tube of that width along the points; without it the points enclose an area. */
	readonly widthMm?: number;
	/** Drawn as a smooth curve through the points. */
	readonly smooth?: boolean;
}

export interface Cue {
	readonly lengthMm: number;
	readonly bridgeLengthMm: number;
	readonly tipDiameterMm: number;
	readonly buttDiameterMm: number;
}

/** Where the butt end of a cue lies in the pose, its tip ahead of the bridge by the bridge length. */
export function cueEnds(pose: Pose, cue: Cue): { tip: Vec3; butt: Vec3 } {
	const { bridge } = pose.joints;
	const slope = radians(pose.anglesDeg.cueElevation);
	const at = (ahead: number): Vec3 => ({
		x: bridge.x + ahead * Math.cos(slope),
		y: 0,
		z: bridge.z - ahead * Math.sin(slope),
	});
	return {
		tip: at(cue.bridgeLengthMm),
		butt: at(cue.bridgeLengthMm - cue.lengthMm),
	};
}

/** Chin to crown, mm, from the links the pose was solved with. */
export const headHeightMm = (pose: Pose): number =>
	distance(pose.joints.headPivot, pose.joints.chin) /
	Math.hypot(HEAD_SHARES.chinForward, HEAD_SHARES.chinDown);

/** Outline of a head seen from its right, in shares of chin to crown from the pivot: forward, up. */
export const PROFILE: readonly Point[] = [
	[0.05, 0.65],
	[0.27, 0.57],
	[0.39, 0.4],
	[0.4, 0.18],
	[0.48, 0.02],
	[0.42, -0.07],
	[0.43, -0.2],
	[HEAD_SHARES.chinForward, -HEAD_SHARES.chinDown],
	[0.19, -0.36],
	[0.02, -0.26],
	[-0.12, -0.16],
	[-0.35, -0.06],
	[-0.46, 0.18],
	[-0.4, 0.44],
	[-0.2, 0.61],
];
export const area = (
	id: string,
	part: Part,
	points: readonly Point[],
): Shape => ({
	id,
	part,
	points,
});

/** Shaft and butt, the butt drawn over its usual third. */
export function cueShapes(tip: Point, butt: Point, cue: Cue): Shape[] {
	const [dx, dy] = [butt[0] - tip[0], butt[1] - tip[1]];
	const length = Math.hypot(dx, dy);
	const at = (share: number, side: 1 | -1): Point => {
		const half =
			((1 - share) * cue.tipDiameterMm + share * cue.buttDiameterMm) / 2;
		return [
			tip[0] + share * dx - (side * half * dy) / length,
			tip[1] + share * dy + (side * half * dx) / length,
		];
	};
	return [
		area("shaft", "cue", [at(0, 1), at(1, 1), at(1, -1), at(0, -1)]),
		area("butt", "butt", [at(0.76, 1), at(1, 1), at(1, -1), at(0.76, -1)]),
	];
}

/** Seat, frame or step under the player. */
export function supportsOf(pose: Pose, frame: boolean): Shape[] {
	const { hip } = pose.joints;
	const head = headHeightMm(pose);
	const { seatHeightMm } = pose.style;
	const { legs } = pose;
	if (seatHeightMm > 0)
		return [
			area("seat", "support", [
				[hip.x - 1.1 * head, -seatHeightMm],
				[hip.x + 0.9 * head, -seatHeightMm],
				[hip.x + 0.9 * head, -seatHeightMm + 40],
				[hip.x - 1.1 * head, -seatHeightMm + 40],
			]),
			...(legs ? [footrest(legs.bridgeAnkle, head)] : []),
			area("seat-post", "support", [
				[hip.x - 0.2 * head, -seatHeightMm + 40],
				[hip.x + 0.1 * head, -seatHeightMm + 40],
				[hip.x + 0.3 * head, 0],
				[hip.x - 0.4 * head, 0],
			]),
		];
	if (frame)
		return [
			area("frame", "support", [
				[hip.x + 0.5 * head, -hip.z - 60],
				[hip.x + 0.5 * head + 40, -hip.z - 60],
				[hip.x + 0.5 * head + 40, 0],
				[hip.x + 0.5 * head, 0],
			]),
		];
	if (pose.stepMm > 0)
		return [
			area("step", "support", [
				[hip.x - 2.2 * head, -pose.stepMm],
				[hip.x + 1.6 * head, -pose.stepMm],
				[hip.x + 1.6 * head, 0],
				[hip.x - 2.2 * head, 0],
			]),
		];
	return [];
}

const footrest = (ankle: Vec3, head: number): Shape => {
	const y = -(ankle.z - 0.3 * head);
	return area("footrest", "support", [
		[ankle.x - 0.3 * head, y],
		[ankle.x + 0.8 * head, y],
		[ankle.x + 0.8 * head, y + 20],
		[ankle.x - 0.3 * head, y + 20],
	]);
};
