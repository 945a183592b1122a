import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import type { PlayerMeasures } from "@/lib/player/measures";
import type { StanceAnswers } from "@/lib/stance/answers";
import { type Pose, solvePose } from "@/lib/stance/pose";
import { standAt } from "@/lib/stance/stand";
import { angleAtDeg, distance, type Vec3 } from "@/lib/stance/vector";

const posed = (
	measures: PlayerMeasures,
	answers: Partial<StanceAnswers> = {},
) => {
	const p = {
		body: must(bodyFrom(measures)),
		answers: { gameId: "snooker" as const, ...answers },
	};
	return { pose: must(solvePose(p)), stand: must(standAt(p)) };
};

const anyPlayer = fc.record({
	statureMm: fc.double({ min: 1150, max: 2050, noNaN: true }),
	sex: fc.constantFrom("female" as const, "male" as const, undefined),
});
const anyStance = fc.record({
	gameId: fc.constantFrom(
		"snooker" as const,
		"english-eight-ball" as const,
		"american-pool" as const,
		"carom" as const,
	),
	stance: fc.constantFrom("side-on" as const, "square" as const, undefined),
	posture: fc.constantFrom("low" as const, "upright" as const, undefined),
	bridgeArm: fc.constantFrom("straight" as const, "bent" as const, undefined),
	glasses: fc.boolean(),
	handed: fc.constantFrom("right" as const, "left" as const),
});

/** Every link of the figure, measured between joints. */
function linkErrors(
	pose: Pose,
	figure: ReturnType<typeof posed>["stand"]["figure"],
) {
	const j = pose.joints;
	const off = (a: Vec3, b: Vec3, mm: number) => Math.abs(distance(a, b) - mm);
	const legs = pose.legs;
	return [
		off(j.hip, j.girdle, figure.trunkMm),
		off(j.girdle, j.neckBase, figure.girdleToNeckMm),
		off(
			j.neckBase,
			j.headPivot,
			Math.hypot(figure.neckForwardMm, figure.neckUpMm),
		),
		off(
			j.headPivot,
			j.chin,
			Math.hypot(figure.chinForwardMm, figure.chinDownMm),
		),
		off(j.headPivot, j.eye, Math.hypot(figure.eyeForwardMm, figure.eyeUpMm)),
		off(j.girdle, j.bridgeShoulder, figure.halfGirdleMm),
		off(j.girdle, j.gripShoulder, figure.halfGirdleMm),
		off(j.bridgeShoulder, j.bridgeElbow, figure.upperArmMm),
		off(j.bridgeElbow, j.bridge, figure.bridgeForearmMm),
		off(j.gripShoulder, j.gripElbow, figure.upperArmMm),
		off(j.gripElbow, j.grip, figure.forearmMm),
		...(legs
			? [
					off(legs.gripHip, legs.bridgeHip, 2 * figure.halfHipMm),
					off(legs.gripHip, legs.gripKnee, figure.thighMm),
					off(legs.gripKnee, legs.gripAnkle, figure.shankMm),
					off(legs.bridgeHip, legs.bridgeKnee, figure.thighMm),
					off(legs.bridgeKnee, legs.bridgeAnkle, figure.shankMm),
				]
			: []),
	];
}

describe("any player in any stance", () => {
	test("every link keeps its length to 1e-9 mm", () => {
		fc.assert(
			fc.property(anyPlayer, anyStance, (measures, answers) => {
				const { pose, stand } = posed(measures, answers);
				expect(Math.max(...linkErrors(pose, stand.figure))).toBeLessThan(1e-9);
				expect(pose.residualMm).toBeLessThan(1e-9);
				expect(pose.converged).toBe(true);
			}),
			{ numRuns: 200, seed: 21 },
		);
	});

	test("chin over the cue at its height, hand on the cue, elbow over the hand", () => {
		fc.assert(
			fc.property(anyPlayer, anyStance, (measures, answers) => {
				const { pose } = posed(measures, answers);
				const { chin, bridge, grip, gripElbow } = pose.joints;
				expect(chin.y).toBeCloseTo(0, 9);
				const slope = Math.tan((pose.anglesDeg.cueElevation * Math.PI) / 180);
				const axis = (x: number) => bridge.z - x * slope;
				expect(chin.z - axis(chin.x)).toBeCloseTo(pose.chinAboveCueMm, 8);
				expect(grip.z).toBeCloseTo(axis(grip.x), 8);
				expect(gripElbow.x).toBeCloseTo(grip.x, 8);
				expect(gripElbow.y).toBeCloseTo(grip.y, 8);
				expect(gripElbow.z).toBeGreaterThan(grip.z);
				expect(distance(bridge, grip)).toBeCloseTo(pose.spanMm, 8);
			}),
			{ numRuns: 100, seed: 22 },
		);
	});

	test("left-handed is the mirror image", () => {
		fc.assert(
			fc.property(anyPlayer, anyStance, (measures, answers) => {
				const right = posed(measures, { ...answers, handed: "right" }).pose;
				const left = posed(measures, { ...answers, handed: "left" }).pose;
				expect(left.spanMm).toBe(right.spanMm);
				expect(left.anglesDeg).toEqual(right.anglesDeg);
				for (const [name, p] of Object.entries(right.joints)) {
					const q = left.joints[name as keyof Pose["joints"]];
					expect(q.x).toBe(p.x);
					expect(q.y).toBeCloseTo(-p.y, 12);
					expect(q.z).toBe(p.z);
				}
			}),
			{ numRuns: 40, seed: 23 },
		);
	});

	test("the cue clears the cushion, the player stands behind it, feet on the floor", () => {
		fc.assert(
			fc.property(anyPlayer, anyStance, (measures, answers) => {
				const { pose } = posed(measures, answers);
				expect(pose.joints.grip.z).toBeGreaterThan(pose.cushionTopMm);
				expect(pose.joints.hip.x).toBeLessThan(-400);
				const legs = pose.legs;
				expect(legs).not.toBeNull();
				if (legs) {
					expect(legs.gripAnkle.z - pose.stepMm).toBeGreaterThan(0);
					expect(legs.gripAnkle.z - pose.stepMm).toBeLessThan(110);
					expect(legs.bridgeAnkle.x).toBeGreaterThan(legs.gripAnkle.x);
				}
			}),
			{ numRuns: 100, seed: 24 },
		);
	});

	test("angles said are angles drawn", () => {
		fc.assert(
			fc.property(anyPlayer, anyStance, (measures, answers) => {
				const { pose } = posed(measures, answers);
				const j = pose.joints;
				const up = { ...j.hip, z: j.hip.z + 100 };
				expect(angleAtDeg(j.hip, up, j.girdle)).toBeCloseTo(
					pose.anglesDeg.trunkInclination,
					6,
				);
				expect(
					angleAtDeg(j.bridgeElbow, j.bridgeShoulder, j.bridge),
				).toBeCloseTo(pose.style.bridgeElbowDeg, 6);
				expect(pose.anglesDeg.neck).toBeCloseTo(
					pose.anglesDeg.headInclination - pose.anglesDeg.trunkInclination,
					9,
				);
			}),
			{ numRuns: 60, seed: 25 },
		);
	});
});

describe("what a body cannot do is an answer with numbers", () => {
	test("trunk limited to 45°: the chin stays up, and says by how much", () => {
		const { pose } = posed({ statureMm: 1750 }, { trunkMaxDeg: 45 });
		expect(pose.anglesDeg.trunkInclination).toBeCloseTo(45, 9);
		expect(pose.shortfalls).toEqual([
			{
				code: "chin-above-cue",
				value: pose.chinAboveCueMm,
				bound: 15,
				unit: "mm",
			},
		]);
		expect(pose.chinAboveCueMm).toBeGreaterThan(200);
		expect(pose.converged).toBe(true);
	});

	test("a neck that bends back 30° only: the head goes down with the trunk", () => {
		const { pose } = posed({ statureMm: 1800 }, { neckExtensionMaxDeg: 30 });
		expect(pose.anglesDeg.neck).toBeCloseTo(-30, 6);
		expect(pose.shortfalls.map((s) => s.code)).toContain("neck-at-limit");
	});

	test("a bridge elbow that opens to 100° only shortens the span", () => {
		const free = posed({ statureMm: 1750 }).pose.spanMm;
		const { pose } = posed({ statureMm: 1750 }, { bridgeElbowMaxDeg: 100 });
		expect(pose.anglesDeg.bridgeElbow).toBeCloseTo(100, 6);
		expect(pose.spanMm).toBeLessThan(free - 60);
	});

	test("a child too small for the table gets the height of a step, and no more than needed", () => {
		const { pose } = posed({ statureMm: 1080, ageYears: 6 });
		expect(pose.stepMm).toBeGreaterThan(20);
		expect(pose.stepMm).toBeLessThan(200);
		expect(posed({ statureMm: 1250, ageYears: 8 }).pose.stepMm).toBe(0);
		expect(posed({ statureMm: 1040, ageYears: 5 }).pose.stepMm).toBeGreaterThan(
			pose.stepMm,
		);
	});

	test("a table too high to reach is refused with the ratio", () => {
		const outcome = solvePose({
			body: must(bodyFrom({ statureMm: 1750 })),
			answers: {
				gameId: "snooker",
				seated: true,
				clothHeightMm: 600,
				trunkMaxDeg: 5,
				bridgeElbowMaxDeg: 60,
			},
		});
		expect(outcome).toMatchObject({
			ok: false,
			refusals: [{ code: "bridge-out-of-reach", max: 1 }],
		});
	});

	test("seated and in a standing frame at once is refused", () => {
		const outcome = solvePose({
			body: must(bodyFrom({})),
			answers: { gameId: "snooker", seated: true, standingFrame: true },
		});
		expect(outcome).toMatchObject({
			ok: false,
			refusals: [{ field: "standingFrame" }],
		});
	});
});

describe("seated and framed players are served", () => {
	test("seated: hips over the seat, thighs level, a shorter span", () => {
		const { pose, stand } = posed({ statureMm: 1750 }, { seated: true });
		expect(pose.joints.hip.z).toBeCloseTo(510 + stand.figure.hipAboveSeatMm, 9);
		expect(pose.legs?.gripKnee.z).toBeCloseTo(pose.joints.hip.z, 9);
		expect(pose.spanMm).toBeLessThan(posed({ statureMm: 1750 }).pose.spanMm);
	});

	test("standing frame: legs straight, trunk at the frame's limit", () => {
		const { pose } = posed({ statureMm: 1750 }, { standingFrame: true });
		expect(pose.joints.hip.z).toBeCloseTo(
			must(bodyFrom({ statureMm: 1750 })).hipHeightMm.value,
			9,
		);
		expect(pose.anglesDeg.trunkInclination).toBeCloseTo(60, 9);
	});
});

test("a tall player in a frame opens the bridge arm and is served", () => {
	for (const statureMm of [1900, 2000, 2100]) {
		const { pose } = posed(
			{ statureMm },
			{ standingFrame: true, gameId: "american-pool" },
		);
		expect(pose.converged).toBe(true);
		expect(pose.anglesDeg.bridgeElbow).toBeLessThanOrEqual(176.000001);
		expect(pose.spanMm).toBeGreaterThan(700);
	}
	const stiff = posed(
		{ statureMm: 1900 },
		{ standingFrame: true, trunkMaxDeg: 42 },
	).pose;
	expect(stiff.anglesDeg.bridgeElbow).toBeGreaterThan(
		posed({ statureMm: 1900 }, { standingFrame: true }).pose.anglesDeg
			.bridgeElbow,
	);
});

test("a trunk too stiff for the grip hand to come down to the cue is said so, with the ratio", () => {
	const { pose } = posed(
		{ statureMm: 1950 },
		{ gameId: "american-pool", trunkMaxDeg: 30, bridgeArm: "straight" },
	);
	expect(pose.converged).toBe(false);
	const s = pose.shortfalls.find((x) => x.code === "grip-hand-out-of-reach");
	expect(s?.value).toBeGreaterThan(1);
	expect(s?.bound).toBe(1);
});

test("glasses keep the head more upright", () => {
	const plain = posed({ statureMm: 1780 }).pose;
	const glasses = posed({ statureMm: 1780 }, { glasses: true }).pose;
	expect(glasses.anglesDeg.headInclination).toBeLessThan(
		plain.anglesDeg.headInclination,
	);
	expect(glasses.joints.eye.z).toBeGreaterThan(plain.joints.eye.z);
});

test("an upright stance of a small player goes as high as height allows", () => {
	const { pose } = posed(
		{ statureMm: 1150, ageYears: 7 },
		{ posture: "upright" },
	);
	expect(pose.chinAboveCueMm).toBeLessThan(200);
	expect(pose.chinAboveCueMm).toBeGreaterThanOrEqual(15);
	expect(pose.converged).toBe(true);
});
