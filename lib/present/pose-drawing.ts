import type { Advice } from "@/lib/advice/advise";
import type { Figure } from "@/lib/advice/figure";
import type { Estimate } from "@/lib/reference/estimate";
import type { Pose } from "@/lib/stance/pose";
import type { Vec3 } from "@/lib/stance/vector";
import type { Reader } from "@/lib/words/reader";
import { formatAngle, formatLength } from "./figures";
import { mirrored } from "./pose-mirror";
import { type Cue, cueEnds, type Point, type Shape } from "./pose-props";
import { aboveScene, type Scene, sideScene } from "./pose-scene";

/** A length on the drawing between two points, mm of the drawing. `measured`: read at the table. */
export interface Dimension {
	readonly id: string;
	readonly from: Point;
	readonly to: Point;
	/** Thin lines from what is measured to the ends of the dimension. */
	readonly extensions: readonly (readonly [Point, Point])[];
	readonly text: string;
	readonly textAt: Point;
	readonly anchor: Label["anchor"];
	readonly measured: boolean;
}

export interface Label {
	readonly id: string;
	readonly at: Point;
	readonly anchor: "start" | "middle" | "end";
	/** What it is; left out where there is no room for words. */
	readonly word: string;
	readonly text: string;
	/** Thin lines that show what the words are about. */
	readonly guides: readonly (readonly [Point, Point])[];
}

export interface Picture {
	readonly id: "side" | "above";
	readonly title: string;
	readonly alternative: string;
	readonly box: {
		readonly x: number;
		readonly y: number;
		readonly width: number;
		readonly height: number;
	};
	readonly shapes: readonly Shape[];
	readonly dimensions: readonly Dimension[];
	readonly labels: readonly Label[];
}

/** Whose pose it is, and the cue in it: an advice is one. */
export interface PoseSubject extends Pick<Advice, "body" | "reach"> {
	readonly input: Pick<Advice["input"], "player" | "hand" | "stance">;
	readonly length: Pick<Figure, "value" | "basis">;
	readonly tip: Pick<Figure, "value">;
	readonly butt: { readonly figure: Pick<Figure, "value"> };
}

/** A pose of a right-handed player, the cue in it, and what they came from. */
export interface Posed {
	readonly pose: Pose;
	readonly cue: Cue;
	readonly subject: PoseSubject;
	readonly behind: Estimate;
	readonly reader: Reader;
}

/** Both pictures of a pose at one scale; mirrored for a left-handed player. */
export function picturesOf(
	posed: Posed,
	left: boolean,
): readonly [side: Picture, above: Picture] {
	const shown = sameScale([sidePicture(posed), abovePicture(posed)]);
	return left ? [mirrored(shown[0]), mirrored(shown[1])] : shown;
}

/** Room round the figure, mm: words to the sides, the chain of lengths below. */
const ROOM_MM = { side: 60, word: 300, overWords: 220, below: 400 } as const;

function sidePicture({ pose, cue, subject, behind, reader }: Posed): Picture {
	const { say } = reader;
	const { reach, input } = subject;
	const { joints: j, anglesDeg } = pose;
	const scene = sideScene(pose, cue, input.stance.standingFrame === true);
	const { tip, butt } = cueEnds(pose, cue);
	const mm = (value: number) => formatLength(value, reader);
	const link = (
		id: string,
		from: Vec3,
		to: Vec3,
		text: string,
		measured: boolean,
		y: number,
	): Dimension => ({
		id,
		from: [from.x, y],
		to: [to.x, y],
		extensions: [
			[
				[from.x, -from.z],
				[from.x, y + 25],
			],
			[
				[to.x, -to.z],
				[to.x, y + 25],
			],
		],
		text,
		textAt: [(from.x + to.x) / 2, y],
		anchor: "middle",
		measured,
	});
	const clothX = scene.box.right - 40;
	const wasRead = (estimate: Estimate) => estimate.standing === "measured";
	return picture({
		id: "side",
		title: say("pose.side"),
		alternative: say("pose.sideText", {
			trunk: formatAngle(anglesDeg.trunkInclination, reader, 0),
			chin: mm(pose.chinAboveCueMm),
			forearm: formatAngle(Math.abs(anglesDeg.forearmTilt), reader, 0),
		}),
		scene,
		above: ROOM_MM.overWords,
		below: ROOM_MM.below,
		dimensions: [
			link(
				"bridge",
				j.bridge,
				tip,
				mm(cue.bridgeLengthMm),
				wasRead(reach.bridgeLengthMm),
				130,
			),
			link(
				"span",
				j.grip,
				j.bridge,
				mm(pose.spanMm),
				wasRead(reach.bridgeToGripMm),
				130,
			),
			link("behind", butt, j.grip, mm(behind.value), false, 130),
			link(
				"cue",
				butt,
				tip,
				say("pose.word.cue", { length: mm(cue.lengthMm) }),
				false,
				300,
			),
			{
				id: "cloth",
				from: [clothX, 0],
				to: [clothX, -pose.clothHeightMm],
				extensions: [],
				text: mm(pose.clothHeightMm),
				textAt: [clothX, -pose.clothHeightMm / 2],
				anchor: "end",
				measured: input.stance.clothHeightMm !== undefined,
			},
		],
		labels: [
			{
				id: "trunk",
				at: [j.hip.x - 190, -(j.hip.z + 60)],
				anchor: "end",
				word: say("pose.word.trunk"),
				text: `${formatAngle(anglesDeg.trunkInclination, reader, 0)}`,
				guides: [
					[
						[j.hip.x, -j.hip.z],
						[j.hip.x, -(j.hip.z + 330)],
					],
				],
			},
			{
				id: "forearm",
				at: [j.gripElbow.x - 90, -(j.gripElbow.z + 90)],
				anchor: "end",
				word: say("pose.word.forearm"),
				text: `${formatAngle(anglesDeg.forearmTilt, reader, 0)}`,
				guides: [
					[
						[j.grip.x, -j.grip.z],
						[j.grip.x, -(j.gripElbow.z + 110)],
					],
				],
			},
			{
				id: "chin",
				at: [j.chin.x + 190, -(j.chin.z + 90)],
				anchor: "start",
				word: say("pose.word.chin"),
				text: `${mm(pose.chinAboveCueMm)}`,
				guides: [
					[
						[j.chin.x, -j.chin.z],
						[j.chin.x + 180, -(j.chin.z + 100)],
					],
				],
			},
			...(pose.stepMm > 0
				? [
						{
							id: "step",
							at: [j.hip.x - 60, 70] as const,
							anchor: "middle" as const,
							word: say("pose.word.step"),
							text: `${mm(pose.stepMm)}`,
							guides: [],
						},
					]
				: []),
		],
	});
}

function abovePicture({ pose, cue, reader }: Posed): Picture {
	const { joints: j, anglesDeg } = pose;
	const scene = aboveScene(pose, cue);
	const yaw = formatAngle(anglesDeg.shoulderYaw, reader, 0);
	const elbow = formatAngle(anglesDeg.bridgeElbow, reader, 0);
	return picture({
		id: "above",
		title: reader.say("pose.above"),
		alternative: reader.say("pose.aboveText", { yaw, elbow }),
		scene,
		above: ROOM_MM.overWords,
		below: ROOM_MM.side,
		dimensions: [],
		labels: [
			{
				id: "shoulders",
				at: [j.bridgeShoulder.x - 60, -(j.bridgeShoulder.y + 110)],
				anchor: "end",
				word: reader.say("pose.word.shoulders"),
				text: yaw,
				guides: [
					[
						[j.gripShoulder.x, -j.gripShoulder.y],
						[j.bridgeShoulder.x, -j.bridgeShoulder.y],
					],
				],
			},
			{
				id: "bridge-elbow",
				at: [j.bridgeElbow.x + 20, -(j.bridgeElbow.y + 110)],
				anchor: "start",
				word: reader.say("pose.word.elbow"),
				text: elbow,
				guides: [],
			},
		],
	});
}

function picture({
	scene,
	above,
	below,
	...rest
}: Omit<Picture, "box" | "shapes"> & {
	scene: Scene;
	/** Room over and under the figure, mm. */
	above: number;
	below: number;
}): Picture {
	const { left, right, top, bottom } = scene.box;
	const x = Math.min(
		left - ROOM_MM.side,
		...rest.labels.map(({ at, anchor }) =>
			anchor === "end" ? at[0] - ROOM_MM.word : at[0],
		),
		...rest.dimensions.map(({ textAt }) => textAt[0] - ROOM_MM.word / 2),
	);
	const y = top - above;
	return {
		...rest,
		shapes: scene.shapes,
		box: {
			x,
			y,
			width: right + ROOM_MM.side - x,
			height: Math.max(bottom, 0) + below - y,
		},
	};
}

/** Both pictures over the same stretch of the shot, so that they stand at one scale. */
function sameScale([side, above]: readonly [Picture, Picture]): readonly [
	Picture,
	Picture,
] {
	const x = Math.min(side.box.x, above.box.x);
	const right = Math.max(...[side, above].map(({ box }) => box.x + box.width));
	const over = (one: Picture): Picture => ({
		...one,
		box: { ...one.box, x, width: right - x },
	});
	return [over(side), over(above)];
}
