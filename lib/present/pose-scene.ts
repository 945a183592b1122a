import { BRIDGE_TO_CUSHION_MM } from "@/lib/stance/assumptions";
import type { Pose } from "@/lib/stance/pose";
import { radians, type Vec3 } from "@/lib/stance/vector";
import {
	area,
	type Cue,
	cueEnds,
	cueShapes,
	headHeightMm,
	type Part,
	type Point,
	PROFILE,
	type Shape,
	supportsOf,
} from "./pose-props";

/**
 * A solved pose as flat shapes, true to scale, mm: x along the shot, positive to the right, y down
 * the page. Link lengths come from the pose; thicknesses, head, feet and table furniture are drawing.
 */
export interface Scene {
	/** Extent of the figure and the cue, before room for words. */
	readonly box: {
		readonly left: number;
		readonly right: number;
		readonly top: number;
		readonly bottom: number;
	};
	readonly shapes: readonly Shape[];
}

/** Cushion and rail from nose to outer edge, bed with its frame, mm. For the drawing only. */
const RAIL_MM = 150;
const BED_MM = 190;
const TABLE_SHOWN_MM = 330;
/** What runs out of the picture is drawn to here. */
const BEYOND_MM = 9999;
/** The table's outer edge stays this far from a body whose bridge hand is nearer than usual, mm. */
const CLEAR_OF_BODY_MM = 60;

/** Nose of the near cushion along the shot: at the usual distance, nearer where the body stands there. */
export function cushionNoseMm(pose: Pose): number {
	const standing = pose.style.seatHeightMm === 0;
	const { legs, joints } = pose;
	const front = Math.max(
		joints.hip.x,
		...(standing && legs
			? [legs.bridgeKnee.x, legs.bridgeAnkle.x, legs.gripAnkle.x]
			: []),
	);
	return Math.max(
		-BRIDGE_TO_CUSHION_MM.value,
		Math.min(
			-100,
			front + headHeightMm(pose) * 0.35 + CLEAR_OF_BODY_MM + RAIL_MM,
		),
	);
}

const HEAD_HALF_BREADTH_SHARE = 0.33;

const mean = (a: Point, b: Point): Point => [
	(a[0] + b[0]) / 2,
	(a[1] + b[1]) / 2,
];

/** From the side of the gripping arm. */
export function sideScene(pose: Pose, cue: Cue, frame: boolean): Scene {
	const { joints: j, legs, clothHeightMm, cushionTopMm } = pose;
	const head = headHeightMm(pose);
	const p = (v: Vec3): Point => [v.x, -v.z];
	const tube = (
		id: string,
		part: Part,
		widthShare: number,
		...points: Point[]
	): Shape => ({ id, part, points, widthMm: widthShare * head });
	const { tip, butt } = cueEnds(pose, cue);
	const nose = cushionNoseMm(pose);
	const edge = nose - RAIL_MM;
	const shownTo = Math.max(tip.x + 60, TABLE_SHOWN_MM);
	const foot = (id: string, part: Part, ankle: Vec3): Shape => {
		const y = -(ankle.z - 0.16 * head);
		return tube(
			id,
			part,
			0.24,
			[ankle.x - 0.12 * head, y],
			[ankle.x + 0.62 * head, y],
		);
	};
	const leg = (
		side: "far" | "near",
		hip: Vec3,
		knee: Vec3,
		ankle: Vec3,
	): Shape[] => [
		foot(`${side}-foot`, side, ankle),
		tube(`${side}-shank`, side, 0.4, p(knee), p(ankle)),
		tube(`${side}-thigh`, side, 0.58, p(hip), p(knee)),
	];
	const along = (share: number): Point => {
		const { headInclination } = pose.anglesDeg;
		const [sin, cos] = [
			Math.sin(radians(headInclination)),
			Math.cos(radians(headInclination)),
		];
		const [forward, up] = PROFILE[share] as Point;
		return [
			j.headPivot.x + head * (forward * cos + up * sin),
			-(j.headPivot.z + head * (up * cos - forward * sin)),
		];
	};
	const shapes: Shape[] = [
		area("bed", "table", [
			[edge + 40, -clothHeightMm],
			[BEYOND_MM, -clothHeightMm],
			[BEYOND_MM, -clothHeightMm + BED_MM],
			[edge + 40, -clothHeightMm + BED_MM],
		]),
		area("table-leg", "table", [
			[edge + 110, -clothHeightMm + BED_MM],
			[edge + 230, -clothHeightMm + BED_MM],
			[edge + 205, 0],
			[edge + 135, 0],
		]),
		area("cushion", "cushion", [
			[nose, -cushionTopMm],
			[nose - 45, -clothHeightMm],
			[edge, -clothHeightMm + 60],
			[edge, -cushionTopMm],
		]),
		tube(
			"cloth",
			"cloth",
			0,
			[nose - 20, -clothHeightMm],
			[BEYOND_MM, -clothHeightMm],
		),
		...supportsOf(pose, frame),
		...(legs
			? leg("far", legs.bridgeHip, legs.bridgeKnee, legs.bridgeAnkle)
			: []),
		tube("far-forearm", "far", 0.3, p(j.bridgeElbow), p(j.bridgeWrist)),
		tube("far-upper-arm", "far", 0.36, p(j.bridgeShoulder), p(j.bridgeElbow)),
		area("bridge-hand", "far", [
			[j.bridgeWrist.x - 10, -clothHeightMm - 4],
			[j.bridgeWrist.x - 12, -(j.bridgeWrist.z + 0.12 * head)],
			[-10, -(j.bridge.z + 0.05 * head)],
			[0.07 * head, -(j.bridge.z - 4)],
			[0.32 * head, -clothHeightMm - 4],
		]),
		tube(
			"neck",
			"near",
			0.44,
			mean(p(j.girdle), p(j.neckBase)),
			p(j.headPivot),
		),
		...(legs
			? [
					foot("near-foot", "near", legs.gripAnkle),
					tube("near-shank", "near", 0.4, p(legs.gripKnee), p(legs.gripAnkle)),
					tube("near-thigh", "near", 0.6, p(legs.gripHip), p(legs.gripKnee)),
				]
			: []),
		tube("trunk", "near", 0.86, p(j.hip), p(j.girdle)),
		{
			id: "head",
			part: "skin",
			points: PROFILE.map((_, i) => along(i)),
			smooth: true,
		},
		tube("eye", "near", 0.07, p(j.eye), p({ ...j.eye, x: j.eye.x + 1 })),
		...cueShapes(p(tip), p(butt), cue),
		tube("near-upper-arm", "near", 0.38, p(j.gripShoulder), p(j.gripElbow)),
		tube("near-forearm", "near", 0.31, p(j.gripElbow), p(j.gripWrist)),
		tube("grip-hand", "skin", 0.34, p(j.gripWrist), p(j.grip)),
		tube("floor", "floor", 0, [-BEYOND_MM, 0], [BEYOND_MM, 0]),
	];
	return { box: boxOf(shapes, shownTo), shapes };
}

/** From above: the shot runs to the right, the bridge side of a right-handed player is up. */
export function aboveScene(pose: Pose, cue: Cue): Scene {
	const { joints: j } = pose;
	const head = headHeightMm(pose);
	const p = (v: Vec3): Point => [v.x, -v.y];
	const tube = (
		id: string,
		part: Part,
		widthShare: number,
		...points: Point[]
	): Shape => ({ id, part, points, widthMm: widthShare * head });
	const { tip, butt } = cueEnds(pose, cue);
	const nose = cushionNoseMm(pose);
	const shownTo = Math.max(tip.x + 60, TABLE_SHOWN_MM);
	const { headInclination } = pose.anglesDeg;
	const alongShot = PROFILE.map(
		([forward, up]) =>
			j.headPivot.x +
			head *
				(forward * Math.cos(radians(headInclination)) +
					up * Math.sin(radians(headInclination))),
	);
	const [back, front] = [Math.min(...alongShot), Math.max(...alongShot)];
	const crown = Array.from({ length: 16 }, (_, i): Point => {
		const turn = (i * Math.PI) / 8;
		return [
			(back + front) / 2 + ((front - back) / 2) * Math.cos(turn),
			-j.headPivot.y + HEAD_HALF_BREADTH_SHARE * head * Math.sin(turn),
		];
	});
	const half = BEYOND_MM;
	const shapes: Shape[] = [
		area("cloth-above", "cloth", [
			[nose, -half],
			[BEYOND_MM, -half],
			[BEYOND_MM, half],
			[nose, half],
		]),
		area("cushion-above", "cushion", [
			[nose - RAIL_MM, -half],
			[nose, -half],
			[nose, half],
			[nose - RAIL_MM, half],
		]),
		tube("shot", "guide", 0, [-BEYOND_MM, 0], [BEYOND_MM, 0]),
		tube("trunk-above", "near", 1.05, p(j.hip), p(j.girdle)),
		tube(
			"bridge-upper-arm",
			"near",
			0.36,
			p(j.bridgeShoulder),
			p(j.bridgeElbow),
		),
		tube("bridge-forearm", "near", 0.3, p(j.bridgeElbow), p(j.bridgeWrist)),
		tube("bridge-hand-above", "skin", 0.32, p(j.bridgeWrist), [0.1 * head, 0]),
		...cueShapes(p(tip), p(butt), cue),
		tube("grip-hand-above", "skin", 0.34, p(j.grip), [j.grip.x + 1, 0]),
		tube("grip-upper-arm", "near", 0.38, p(j.gripShoulder), p(j.gripElbow)),
		tube(
			"shoulder-line",
			"near",
			0.46,
			p(j.gripShoulder),
			p(j.girdle),
			p(j.bridgeShoulder),
		),
		{ id: "head-above", part: "skin", points: crown, smooth: true },
	];
	return { box: boxOf(shapes, shownTo), shapes };
}

/** Extent of the player, the cue and what holds them; the table runs out of the picture. */
function boxOf(shapes: readonly Shape[], right: number): Scene["box"] {
	const OPEN: readonly Part[] = ["floor", "guide", "table", "cloth", "cushion"];
	const inside = shapes.filter(({ part }) => !OPEN.includes(part));
	const ends = (axis: 0 | 1) =>
		inside.flatMap(({ points, widthMm = 0 }) =>
			points.flatMap((point) => [
				point[axis] - widthMm / 2,
				point[axis] + widthMm / 2,
			]),
		);
	return {
		left: Math.min(...ends(0)),
		right: Math.max(right, ...ends(0)),
		top: Math.min(...ends(1)),
		bottom: Math.max(...ends(1)),
	};
}
