import type { Pose } from "@/lib/stance/pose";
import { type Vec3, vec } from "@/lib/stance/vector";
import type { Picture } from "./pose-drawing";
import type { Point } from "./pose-props";

/** The mirror image, words kept: a left-handed player. */
export function mirrored(picture: Picture): Picture {
	const turn = ([x, y]: Point): Point => [-x, y];
	const both = (
		lines: readonly (readonly [Point, Point])[],
	): (readonly [Point, Point])[] =>
		lines.map(([from, to]) => [turn(from), turn(to)] as const);
	const ANCHORS = { start: "end", middle: "middle", end: "start" } as const;
	return {
		...picture,
		box: { ...picture.box, x: -picture.box.x - picture.box.width },
		shapes: picture.shapes.map((shape) => ({
			...shape,
			points: shape.points.map(turn),
		})),
		dimensions: picture.dimensions.map((dimension) => ({
			...dimension,
			from: turn(dimension.from),
			to: turn(dimension.to),
			textAt: turn(dimension.textAt),
			anchor: ANCHORS[dimension.anchor],
			extensions: both(dimension.extensions),
		})),
		labels: picture.labels.map((label) => ({
			...label,
			at: turn(label.at),
			anchor: ANCHORS[label.anchor],
			guides: both(label.guides),
		})),
	};
}

/** The pose as a right-handed player would take it. */
export function rightHanded(pose: Pose, isMirrored: boolean): Pose {
	if (!isMirrored) return pose;
	const turn = <T extends object>(all: T): T =>
		Object.fromEntries(
			Object.entries(all).map(([name, v]: [string, Vec3]) => [
				name,
				vec(v.x, -v.y, v.z),
			]),
		) as T;
	return {
		...pose,
		joints: turn(pose.joints),
		legs: pose.legs && turn(pose.legs),
	};
}
