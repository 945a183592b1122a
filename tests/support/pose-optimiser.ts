/**
 * The conditions of a pose written out afresh with rotation matrices from ml-matrix, and their least
 * squares solution by a general-purpose optimiser, ml-levenberg-marquardt: the independent method the
 * project's own solver is held to and timed against.
 */
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { Matrix } from "ml-matrix";
import type { Stand } from "@/lib/stance/stand";

const RAD = Math.PI / 180;
type V = [number, number, number];
const add = (...vs: V[]): V =>
	vs.reduce((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]);
const far = (a: V, b: V) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Turn about y by `angle`: z tips toward x. */
const pitch = (angle: number, v: V): V =>
	new Matrix([
		[Math.cos(angle), 0, Math.sin(angle)],
		[0, 1, 0],
		[-Math.sin(angle), 0, Math.cos(angle)],
	])
		.mmul(Matrix.columnVector(v))
		.to1DArray() as V;
/** Turn about z by `angle`: x tips toward y. */
const turn = (angle: number, v: V): V =>
	new Matrix([
		[Math.cos(angle), -Math.sin(angle), 0],
		[Math.sin(angle), Math.cos(angle), 0],
		[0, 0, 1],
	])
		.mmul(Matrix.columnVector(v))
		.to1DArray() as V;

/** Five conditions on [θ, x, y, z of the shoulder line's middle, span]; all zero at the pose, mm. */
export function conditions(
	{ figure: f, values: s, at }: Stand,
	q: number[],
): number[] {
	const [theta, x, y, z, span] = q as [number, number, number, number, number];
	const middle: V = [x, y, z];
	const spine = turn(-s.trunkHeadingDeg * RAD, pitch(theta, [0, 0, 1]));
	const half = (rise: number, side: number): V =>
		turn(s.yawDeg * RAD, [
			side * f.halfGirdleMm * Math.cos(rise * RAD),
			0,
			f.halfGirdleMm * Math.sin(rise * RAD),
		]);
	const bridgeShoulder = add(middle, half(s.bridgeShoulderRiseDeg, 1));
	const gripShoulder = add(middle, half(s.gripShoulderRiseDeg, -1));

	// Head on a neck that leans midway between spine and head, and sideways.
	const head = Math.max(
		s.headInclinationDeg * RAD,
		theta - at.neckExtensionMaxDeg * RAD,
	);
	const up = pitch(head, [0, 0, 1]);
	const raw: V = [
		(spine[0] + up[0]) / 2,
		(spine[1] + up[1]) / 2 - Math.tan(s.neckLeanDeg * RAD),
		(spine[2] + up[2]) / 2,
	];
	const size = Math.hypot(...raw);
	const neck = raw.map((c) => c / size) as V;
	const level: V = [
		1 - neck[0] * neck[0],
		-neck[0] * neck[1],
		-neck[0] * neck[2],
	];
	const levelSize = Math.hypot(...level);
	const scaled = (v: V, k: number): V => [v[0] * k, v[1] * k, v[2] * k];
	const chin = add(
		middle,
		scaled(spine, f.girdleToNeckMm),
		scaled(neck, f.neckUpMm),
		scaled(level, f.neckForwardMm / levelSize),
		pitch(head, [f.chinForwardMm, 0, -f.chinDownMm]),
	);

	const bridge: V = [0, 0, at.clothHeightMm + s.bridgeAxisHeightMm];
	const slope = s.elevationDeg * RAD;
	const grip = add(bridge, [
		-span * Math.cos(slope),
		0,
		span * Math.sin(slope),
	]);
	const elbow = add(grip, pitch(-s.forearmTiltDeg * RAD, [0, 0, f.forearmMm]));
	const inside = (180 - s.bridgeElbowDeg) * RAD;
	const chord = Math.hypot(
		f.upperArmMm + f.bridgeForearmMm * Math.cos(inside),
		f.bridgeForearmMm * Math.sin(inside),
	);
	const hip =
		at.support === "seated"
			? s.seatHeightMm + f.hipAboveSeatMm
			: at.stepMm +
				f.hipHeightMm *
					(1 -
						(at.support === "frame" ? 0 : s.legDropRatio) *
							Math.tan(theta / 2) ** 2);
	return [
		z - f.trunkMm * Math.cos(theta) - hip,
		far(bridgeShoulder, bridge) - chord,
		far(gripShoulder, elbow) - f.upperArmMm,
		chin[1],
		chin[2] - (bridge[2] - chin[0] * Math.tan(slope)) - s.chinAboveCueMm,
	];
}

/** The five unknowns found from well off: trunk 12° out, shoulders 60–90 mm out, span 120 mm out. */
export function optimise(stand: Stand): number[] {
	const l = stand.linkage;
	const { girdle } = l.points;
	return levenbergMarquardt(
		{ x: [0, 1, 2, 3, 4], y: [0, 0, 0, 0, 0] },
		(q: number[]) => {
			const r = conditions(stand, q);
			return (i: number) => r[i] as number;
		},
		{
			initialValues: [
				l.theta - 0.2,
				girdle.x - 90,
				girdle.y + 60,
				girdle.z + 80,
				l.spanMm + 120,
			],
			gradientDifference: [1e-6, 1e-4, 1e-4, 1e-4, 1e-4],
			centralDifference: true,
			maxIterations: 400,
			errorTolerance: 1e-18,
			damping: 1e-3,
		},
	).parameterValues as number[];
}
