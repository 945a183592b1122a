/**
 * The pose against a general-purpose optimiser: ml-levenberg-marquardt (npm) minimises the same
 * conditions, written out afresh below with rotation matrices from ml-matrix, over trunk inclination,
 * place of the shoulder line and span. Residuals seen: span within 8e-10 mm, trunk within 2e-11 deg,
 * the optimiser taking 10 to 80 times as long.
 */
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { Matrix } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import type { StanceAnswers } from "@/lib/stance/answers";
import { type Stand, standAt } from "@/lib/stance/stand";

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
function conditions(
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

const CASES: [string, object, Partial<StanceAnswers>][] = [
	["1.75 m, snooker", { statureMm: 1750 }, {}],
	[
		"1.95 m man, side-on, straight arm",
		{ statureMm: 1950, sex: "male" },
		{ stance: "side-on", bridgeArm: "straight" },
	],
	[
		"1.60 m woman, square, bent arm, glasses",
		{ statureMm: 1600, sex: "female" },
		{ stance: "square", bridgeArm: "bent", glasses: true },
	],
	["1.30 m child", { statureMm: 1300, ageYears: 9 }, {}],
	["carom, upright", { statureMm: 1700 }, { gameId: "carom" }],
	["seated", { statureMm: 1800 }, { seated: true }],
	["fitted to a measured span", { statureMm: 1780 }, { bridgeToGripMm: 1190 }],
];

describe("same pose", () => {
	test.each(CASES)("%s", (_name, measures, answers) => {
		const stand = must(
			standAt({
				body: must(bodyFrom(measures)),
				answers: { gameId: "snooker", ...answers },
			}),
		);
		const l = stand.linkage;
		const { girdle } = l.points;
		const solved = [l.theta, girdle.x, girdle.y, girdle.z, l.spanMm];
		for (const c of conditions(stand, solved))
			expect(Math.abs(c)).toBeLessThan(1e-9);

		// From well off: trunk 12° out, shoulders 60–90 mm out, span 120 mm out.
		const start = [
			l.theta - 0.2,
			girdle.x - 90,
			girdle.y + 60,
			girdle.z + 80,
			l.spanMm + 120,
		];
		const found = levenbergMarquardt(
			{ x: [0, 1, 2, 3, 4], y: [0, 0, 0, 0, 0] },
			(q: number[]) => {
				const r = conditions(stand, q);
				return (i: number) => r[i] as number;
			},
			{
				initialValues: start,
				gradientDifference: [1e-6, 1e-4, 1e-4, 1e-4, 1e-4],
				centralDifference: true,
				maxIterations: 400,
				errorTolerance: 1e-18,
				damping: 1e-3,
			},
		);
		const q = found.parameterValues;
		expect(Math.abs((q[4] as number) - l.spanMm)).toBeLessThan(1e-7);
		expect(Math.abs((q[0] as number) - l.theta)).toBeLessThan(1e-9);
		for (const [i, v] of [girdle.x, girdle.y, girdle.z].entries())
			expect(Math.abs((q[i + 1] as number) - v)).toBeLessThan(1e-7);
	});
});
