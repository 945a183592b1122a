import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import { BODY_LENGTHS } from "@/lib/player/populations";
import { type Figure, figureFrom } from "@/lib/stance/figure";
import {
	bridgeChordMm,
	placeAt,
	type Situation,
	type StyleValues,
	solveLinkage,
} from "@/lib/stance/linkage";
import { situationOf, styleOf, valuesOf } from "@/lib/stance/style";

const figureOf = (measures: Parameters<typeof bodyFrom>[0]): Figure => {
	const body = must(bodyFrom(measures));
	return figureFrom(BODY_LENGTHS.map((name) => body[name].value));
};
const adult = figureOf({ statureMm: 1750 });
const at: Situation = situationOf({ gameId: "snooker" });
const usual: StyleValues = valuesOf(styleOf({ gameId: "snooker" }, 1750));

/** Everything in the plane of the cue: one line through both shoulders and the shot, nothing tilted. */
const planar: StyleValues = {
	...usual,
	yawDeg: 0,
	trunkHeadingDeg: 0,
	neckLeanDeg: 0,
	gripShoulderRiseDeg: 0,
	bridgeShoulderRiseDeg: 0,
	elevationDeg: 0,
};

describe("planar special cases in closed form", () => {
	test("level shoulders in line with a level cue: three right triangles in a row", () => {
		const l = solveLinkage(adult, planar, at);
		const { girdle, bridge, chin } = l.points;
		const rise = girdle.z - bridge.z;
		const chord = bridgeChordMm(adult, planar.bridgeElbowDeg);
		const ahead = Math.sqrt(chord ** 2 - rise ** 2);
		const behind = Math.sqrt(
			adult.upperArmMm ** 2 - (adult.forearmMm - rise) ** 2,
		);
		expect(l.spanMm).toBeCloseTo(ahead + 2 * adult.halfGirdleMm + behind, 9);
		expect(chin.y).toBeCloseTo(0, 12);
		expect(girdle.y).toBeCloseTo(0, 12);
	});

	test("straight arm: the chord is upper arm and forearm laid end to end", () => {
		expect(bridgeChordMm(adult, 180)).toBeCloseTo(
			adult.upperArmMm + adult.bridgeForearmMm,
			9,
		);
		expect(bridgeChordMm(adult, 90)).toBeCloseTo(
			Math.hypot(adult.upperArmMm, adult.bridgeForearmMm),
			9,
		);
	});

	test("shoulders exactly a forearm above the cue: upper arm level, adding its whole length", () => {
		// Raise the chin until the grip shoulder stands forearm-high over the axis.
		let low = 0;
		let high = 400;
		for (let i = 0; i < 80; i++) {
			const chinAboveCueMm = (low + high) / 2;
			const l = solveLinkage(adult, { ...planar, chinAboveCueMm }, at);
			if (l.points.gripShoulder.z - l.points.bridge.z < adult.forearmMm)
				low = chinAboveCueMm;
			else high = chinAboveCueMm;
		}
		const l = solveLinkage(adult, { ...planar, chinAboveCueMm: low }, at);
		expect(l.armLiftRatio).toBeCloseTo(0, 6);
		expect(l.points.gripShoulder.x - l.points.grip.x).toBeCloseTo(
			adult.upperArmMm,
			6,
		);
	});

	test("upright trunk: chin height is the standing chin's, less head and neck bent", () => {
		const style = { ...planar, headInclinationDeg: 0 };
		const p = placeAt(adult, style, at, 0);
		const body = must(bodyFrom({ statureMm: 1750 }));
		expect(p.points.chin.z).toBeCloseTo(body.chinHeightMm.value, 9);
		expect(p.points.eye.z).toBeCloseTo(body.eyeHeightMm.value, 9);
		expect(p.points.girdle.z).toBeCloseTo(body.shoulderHeightMm.value, 9);
		expect(p.points.hip.z).toBeCloseTo(body.hipHeightMm.value, 9);
	});
});

describe("span grows with every segment", () => {
	const figures = [1250, 1400, 1550, 1650, 1750, 1850, 1950].map(
		(statureMm) => [statureMm, figureOf({ statureMm })] as const,
	);
	test.each(figures)("at %i mm", (statureMm, figure) => {
		const style = valuesOf(styleOf({ gameId: "snooker" }, statureMm));
		const span = (f: Figure) => solveLinkage(f, style, at).spanMm;
		const base = span(figure);
		for (const name of [
			"upperArmMm",
			"bridgeForearmMm",
			"halfGirdleMm",
		] as const)
			expect(span({ ...figure, [name]: figure[name] + 5 })).toBeGreaterThan(
				base + 0.3,
			);
		// Both forearms together: the bridge arm gains more than the lifted elbow gives back.
		expect(
			span({
				...figure,
				forearmMm: figure.forearmMm + 5,
				bridgeForearmMm: figure.bridgeForearmMm + 5,
			}),
		).toBeGreaterThan(base);
	});
});

test("each condition out of reach shows as a ratio over 1 or a trunk at its end", () => {
	const lowTable = { ...at, clothHeightMm: 100, trunkMaxDeg: 10 };
	expect(solveLinkage(adult, usual, lowTable).trunk).toBe("limit");
	expect(solveLinkage(adult, usual, lowTable).bridgeReachRatio).toBeGreaterThan(
		1,
	);
	const highTable = { ...at, clothHeightMm: 1500 };
	const under = solveLinkage(adult, usual, highTable);
	expect(under.trunk).toBe("highest");
	expect(under.chinAboveCueMm).toBeLessThan(0);
	const stubby = { ...adult, upperArmMm: 60 };
	expect(solveLinkage(stubby, usual, at).armLiftRatio).toBeGreaterThan(1);
});
