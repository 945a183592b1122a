import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import type { FittingInput } from "@/lib/advice/input";
import { must } from "@/lib/numerics/outcome";
import { refusalView } from "@/lib/present/notices";
import type { Picture } from "@/lib/present/pose-drawing";
import type { Point } from "@/lib/present/pose-props";
import { poseSubject, poseView } from "@/lib/present/pose-view";
import { METRIC } from "@/tests/support/readers";

const inputOf = (
	player: FittingInput["player"],
	stance: Partial<FittingInput["stance"]> = {},
	rest: Partial<FittingInput> = {},
): FittingInput => ({
	player,
	stance: { gameId: "snooker", ...stance },
	presentCue: {},
	wishes: {},
	...rest,
});
const viewOf = (...given: Parameters<typeof inputOf>) =>
	poseView(must(advise(inputOf(...given))), METRIC);
const plain = (text: string) => text.replaceAll("\u00a0", " ");

const ends = ({ shapes }: Picture, id: string): readonly [Point, Point] => {
	const points = shapes.find((shape) => shape.id === id)?.points;
	const [from, to] = [points?.[0], points?.at(-1)];
	if (from === undefined || to === undefined) throw new Error(`no shape ${id}`);
	return [from, to];
};
/** Length in space of a limb drawn from the side (x, z) and from above (x, y). */
const inSpace = (
	view: ReturnType<typeof viewOf>,
	side: string,
	above: string,
) => {
	const [a, b] = ends(view.pictures[0], side);
	const [c, d] = ends(view.pictures[1], above);
	expect(c[0] - d[0]).toBeCloseTo(a[0] - b[0], 9);
	return Math.hypot(a[0] - b[0], a[1] - b[1], c[1] - d[1]);
};

/** Closed form: a drawing to scale keeps the lengths it was given, Pythagoras over its two views. */
describe("to scale", () => {
	const view = viewOf({
		statureMm: 1780,
		shoulderToElbowMm: 370,
		elbowToGripMm: 350,
		shoulderBreadthMm: 400,
	});
	test("both upper arms have the measured length, joint to joint", () => {
		// 0.925 of the tape's reading, the linkage's own landmark change.
		expect(inSpace(view, "far-upper-arm", "bridge-upper-arm")).toBeCloseTo(
			0.925 * 370,
			6,
		);
		expect(inSpace(view, "near-upper-arm", "grip-upper-arm")).toBeCloseTo(
			0.925 * 370,
			6,
		);
	});
	test("the upright forearm is drawn upright and at its length", () => {
		const [elbow, wrist] = ends(view.pictures[0], "near-forearm");
		expect(elbow[0]).toBeCloseTo(wrist[0], 9);
		const [, grip] = ends(view.pictures[0], "grip-hand");
		expect(grip[1] - elbow[1]).toBeCloseTo(0.945 * 350, 6);
	});
	test("the shoulder line is as broad as measured, seen from above with its rise", () => {
		const { shapes } = view.pictures[1];
		const line = shapes.find(({ id }) => id === "shoulder-line")?.points ?? [];
		const [grip, middle, bridge] = line;
		if (!grip || !middle || !bridge) throw new Error("no shoulder line");
		// Halves of 200 mm raised by 28° and lowered by 5°: their plan lengths.
		expect(Math.hypot(grip[0] - middle[0], grip[1] - middle[1])).toBeCloseTo(
			200 * Math.cos((28 * Math.PI) / 180),
			6,
		);
		expect(
			Math.hypot(bridge[0] - middle[0], bridge[1] - middle[1]),
		).toBeCloseTo(200 * Math.cos((5 * Math.PI) / 180), 6);
	});
	test("both views cover the same stretch of the shot", () => {
		const [side, above] = view.pictures;
		expect(above.box.x).toBe(side.box.x);
		expect(above.box.width).toBe(side.box.width);
	});
	test("the lengths along the cue add up to the cue", () => {
		const advice = must(
			advise(inputOf({ statureMm: 1690 }, { bridgeToGripMm: 1000 })),
		);
		const [side] = poseView(advice, METRIC).pictures;
		const reach = (id: string) => {
			const dimension = side.dimensions.find((d) => d.id === id);
			if (!dimension) throw new Error(id);
			return dimension.to[0] - dimension.from[0];
		};
		expect(reach("bridge") + reach("span") + reach("behind")).toBeCloseTo(
			reach("cue"),
			6,
		);
		// Level dimensions of a cue on its slope: the span's is its cosine.
		const slope = (advice.reach.pose.anglesDeg.cueElevation * Math.PI) / 180;
		expect(reach("span")).toBeCloseTo(1000 * Math.cos(slope), 6);
		expect(reach("cue")).toBeCloseTo(advice.length.value * Math.cos(slope), 6);
	});
});

test("a left-handed player is the mirror image, words and numbers unchanged", () => {
	const answers = [{ statureMm: 1690 }, { stance: "square" as const }] as const;
	const right = viewOf(...answers, { hand: "right" });
	for (const left of [
		viewOf(...answers, { hand: "left" }),
		viewOf(answers[0], { ...answers[1], handed: "left" }),
	])
		for (const [i, picture] of left.pictures.entries()) {
			const twin = right.pictures[i] as Picture;
			expect(picture.shapes.map(({ points }) => points)).toEqual(
				twin.shapes.map(({ points }) => points.map(([x, y]) => [-x, y])),
			);
			expect(picture.labels.map(({ text }) => text)).toEqual(
				twin.labels.map(({ text }) => text),
			);
			expect(picture.box.x + picture.box.width).toBeCloseTo(-twin.box.x, 9);
		}
});

test("any body and stance gives a drawing of finite numbers that holds the whole figure", () => {
	fc.assert(
		fc.property(
			fc.integer({ min: 1000, max: 2200 }),
			fc.constantFrom({}, { seated: true }, { standingFrame: true }),
			fc.constantFrom("low", "upright", undefined),
			fc.constantFrom(undefined, 600, 900, 1300),
			(statureMm, support, posture, bridgeToGripMm) => {
				const advice = advise(
					inputOf({ statureMm }, { ...support, posture, bridgeToGripMm }),
				);
				if (!advice.ok) {
					for (const refusal of advice.refusals)
						expect(refusalView(refusal, METRIC).text).toMatch(/\d/);
					return;
				}
				const view = poseView(advice.value, METRIC);
				for (const { box, shapes } of view.pictures) {
					expect(Number.isFinite(box.width * box.height)).toBe(true);
					for (const { part, points } of shapes) {
						expect(points.flat().every(Number.isFinite)).toBe(true);
						if (part !== "near" && part !== "far" && part !== "skin") continue;
						for (const [x, y] of points) {
							expect(x).toBeGreaterThanOrEqual(box.x);
							expect(x).toBeLessThanOrEqual(box.x + box.width);
							expect(y).toBeGreaterThanOrEqual(box.y);
							expect(y).toBeLessThanOrEqual(box.y + box.height);
						}
					}
				}
			},
		),
		{ numRuns: 60 },
	);
});

describe("words", () => {
	test("the text alternative says what the pictures show", () => {
		const { summary, pictures } = viewOf(
			{ statureMm: 1780 },
			{ bridgeToGripMm: 1080 },
			{ hand: "left" },
		);
		for (const part of [
			"left-handed",
			"trunk leans",
			"1080 mm",
			"shoulder line",
		])
			expect(plain(summary)).toContain(part);
		for (const { alternative } of pictures) expect(alternative).toMatch(/\d°/);
	});
	test("what was measured is told from what is estimated", () => {
		const { pictures, numbers } = viewOf(
			{ statureMm: 1780 },
			{ bridgeToGripMm: 1080 },
		);
		expect(
			pictures[0].dimensions.map(({ id, measured }) => [id, measured]),
		).toEqual([
			["bridge", false],
			["span", true],
			["behind", false],
			["cue", false],
			["cloth", false],
		]);
		expect(numbers.find(({ label }) => label === "Bridge elbow")?.origin).toBe(
			"Fitted to the measured span",
		);
	});
	test("an impossible pose shows its numbers", () => {
		expect(
			viewOf({ statureMm: 1780 }, { standingFrame: true }).shortfalls.map(
				plain,
			),
		).toEqual([
			expect.stringMatching(
				/^Bent as far as possible the chin stays \d+ mm above the cue, not 15 mm\.$/,
			),
		]);
		expect(
			plain(
				viewOf({ statureMm: 1780 }, { bridgeToGripMm: 1690 }).shortfalls.join(
					" ",
				),
			),
		).toMatch(/No pose of this body gives the measured 1690 mm/);
	});
	test("a pose no cue can be built for is still drawn", () => {
		const input = inputOf({}, { bridgeToGripMm: 1690 });
		const { pictures, shortfalls } = poseView(must(poseSubject(input)), METRIC);
		expect(pictures[0].dimensions.map(({ id }) => id)).toContain("cue");
		expect(plain(shortfalls.join(" "))).toMatch(/measured 1690 mm/);
	});
	test("a table out of the bridge arm's reach is refused with height, table and ratio", () => {
		const refused = advise(
			inputOf(
				{ statureMm: 900 },
				{ clothHeightMm: 950, seated: true, bridgeElbowMaxDeg: 60 },
			),
		);
		if (refused.ok) throw new Error("expected a refusal");
		expect(
			plain(refused.refusals.map((r) => refusalView(r, METRIC).text).join()),
		).toMatch(/90 cm.*950 mm.*times as long/);
	});
	test("seated and in a frame at once is named", () => {
		const refused = advise(inputOf({}, { seated: true, standingFrame: true }));
		if (refused.ok) throw new Error("expected a refusal");
		expect(refused.refusals.map((r) => refusalView(r, METRIC).text)).toEqual([
			"No pose: seated and in a standing frame at once. Choose one.",
		]);
	});
});

describe("holding the pose", () => {
	const everything = (view: ReturnType<typeof viewOf>) =>
		[...view.posture.cautions, ...view.posture.holds].join(" ");
	test("times come with the deferral, and nothing is called safe", () => {
		for (const view of [
			viewOf({ statureMm: 1780 }),
			viewOf({ statureMm: 1780 }, { posture: "upright" }),
			viewOf({ statureMm: 1250, ageYears: 8 }),
			viewOf({ statureMm: 1780 }, { seated: true }),
		]) {
			expect(everything(view)).toMatch(/stand up between shots/i);
			expect(everything(view)).toMatch(/physiotherapist or doctor/);
			expect(everything(view)).not.toMatch(/\bsafe/i);
		}
	});
	test("a junior is told whose limits they are", () => {
		expect(everything(viewOf({ statureMm: 1500, ageYears: 13 }))).toMatch(
			/responsible adult/,
		);
		expect(everything(viewOf({ statureMm: 1780, ageYears: 40 }))).not.toMatch(
			/responsible adult/,
		);
	});
	test("a printed row of ISO 11226: a trunk at 50° has 1 min 45 s", async () => {
		// 11226 as summarised: 50° 1:45. The limit of the body holds the trunk there.
		const view = viewOf({ statureMm: 1780 }, { trunkMaxDeg: 50 });
		expect(view.posture.holds[0]).toMatch(
			/^Trunk from upright 50°.*1 min 4[45] s/,
		);
	});
});
