import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planAddedWeight } from "@/lib/build/added-weight";
import type { CueDesign } from "@/lib/cue/design";
import { materialAt } from "@/lib/cue/material";
import { outlineRadiusMm } from "@/lib/cue/taper";
import { must } from "@/lib/numerics/outcome";
import { cuePicture } from "@/lib/present/cue-picture";
import {
	type CueView,
	frameFor,
	heightForPx,
	stationAtPx,
} from "@/lib/present/cue-view";
import { cueWords, seenAlong, viewWords } from "@/lib/present/cue-words";
import { pointMarks } from "@/lib/present/point-marks";
import { METRIC } from "@/tests/support/readers";
import { anyCue, cue } from "../support/designs";

const WHOLE: CueView = { part: "whole", isUnrolled: false, stretch: 4 };
const frameOf = (design: CueDesign, view = WHOLE, widthPx = 1000) =>
	frameFor({
		design,
		view,
		angleDeg: 0,
		widthPx,
		heightPx: heightForPx({ design, view, widthPx }),
	});
const drawn = (design: CueDesign, view = WHOLE, widthPx = 1000) =>
	cuePicture({
		design,
		frame: frameOf(design, view, widthPx),
		reader: METRIC,
		balanceFromButtMm: 430,
	});
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const weighted = must(
	planAddedWeight({
		design: cue({ buttWood: "black-walnut" }),
		wantedMassG: 560,
	}),
).finished;

describe("outline", () => {
	test("runs along the turned surface, tip left, within a tenth of a pixel", () => {
		const design = cue();
		const { outline, frame } = drawn(design);
		const points = outline
			.slice(1, -1)
			.split("L")
			.map((pair) => pair.split(" ").map(Number));
		expect(points.length).toBeGreaterThan(200);
		for (const [i, [x = 0, y = 0]] of points.entries()) {
			const [nextX = 0, nextY = 0] = points[(i + 1) % points.length] ?? [];
			// Halfway along each chord, where it is farthest from the curve.
			const stationMm = stationAtPx(frame, (x + nextX) / 2);
			const radiusPx =
				outlineRadiusMm(design, Math.min(stationMm, design.lengthMm)) *
				frame.pxAcross;
			const below = Math.abs(
				Math.abs((y + nextY) / 2 - frame.heightPx / 2) - radiusPx,
			);
			const chordPx = Math.hypot(nextX - x, nextY - y);
			const off = chordPx === 0 ? 0 : (below * Math.abs(nextX - x)) / chordPx;
			if (
				Math.sign(y - frame.heightPx / 2) ===
				Math.sign(nextY - frame.heightPx / 2)
			)
				expect(off, `at ${stationMm} mm`).toBeLessThan(0.1);
		}
	});
});

describe("marks", () => {
	test("stand where their parts are, measured from the butt end", () => {
		const texts = drawn(weighted).marks.map(({ text }) => plain(text));
		expect(texts).toContain("Joint 438 mm");
		expect(texts).toContain("Balance 430 mm");
		expect(texts.some((text) => /^Points 69\d mm$/.test(text))).toBe(true);
		expect(texts.some((text) => /^Brass Ø\d.* × \d+ mm$/.test(text))).toBe(
			true,
		);
	});
	test("a leader starts on the cue's lower edge", () => {
		const { marks, frame } = drawn(weighted);
		for (const { x, fromY } of marks)
			expect(fromY - frame.heightPx / 2).toBeCloseTo(
				outlineRadiusMm(weighted, stationAtPx(frame, x)) * frame.pxAcross,
				1,
			);
	});
	test("the points named are where the butt's wood first shows on the surface", () => {
		fc.assert(
			fc.property(anyCue, (design) => {
				const points = pointMarks(design).find(
					({ place }) => place === "points" || place === "buttWood",
				);
				if (!points) throw new Error("a cue without points");
				const buttSeenAt = (stationMm: number) =>
					[0, 90, 180, 270].some((angleDeg) => {
						const there = materialAt({
							design,
							stationMm,
							angleDeg,
							radiusMm: outlineRadiusMm(design, stationMm),
						});
						return there !== null && !["shaft", "joint"].includes(there.part);
					});
				expect(buttSeenAt(points.stationMm - 1)).toBe(false);
				// Past a joint's collar, where one stands there.
				expect(buttSeenAt(points.stationMm + 3)).toBe(true);
			}),
			{ numRuns: 60, seed: 5 },
		);
	});
	test("no leader runs through its own text", () => {
		for (const widthPx of [330, 640, 1000])
			for (const { x, textX, toY, textY } of drawn(weighted, WHOLE, widthPx)
				.marks)
				expect(toY).toBeLessThanOrEqual(
					x > textX && x < textX + 60 ? textY - 15 : textY,
				);
	});
	test("only what is in view is marked", () => {
		expect(
			drawn(weighted, { part: "front", isUnrolled: false, stretch: 2 }).marks,
		).toEqual([]);
	});
	test("on a phone's width nothing leaves the picture", () => {
		const { marks, frame } = drawn(weighted, WHOLE, 330);
		expect(marks.length).toBeGreaterThanOrEqual(4);
		for (const { textX } of marks) {
			expect(textX).toBeGreaterThanOrEqual(0);
			expect(textX).toBeLessThan(frame.widthPx);
		}
	});
	test("ends and span tell thickness and length", () => {
		const { ends, span } = drawn(cue());
		expect(ends.map(({ text }) => plain(text))).toEqual([
			"Tip Ø9.5 mm",
			"Butt Ø29.0 mm",
		]);
		expect(plain(span)).toBe("1460 mm");
		const butt = drawn(cue(), { part: "butt", isUnrolled: false, stretch: 2 });
		expect(plain(butt.ends[0]?.text ?? "")).toMatch(/^Ø1\d\.\d mm$/);
	});
});

describe("what is inside", () => {
	test("pin and weight are drawn to their own size", () => {
		const { hidden, frame } = drawn(weighted);
		expect(hidden.map(({ part }) => part)).toContain("joint");
		const slug = weighted.addedWeight[0];
		const body = hidden.find(({ part }) => part === "added weight");
		if (!slug || !body) throw new Error("no weight drawn");
		expect(body.width).toBeCloseTo(
			(slug.toStationMm - slug.fromStationMm) * frame.pxPerMm,
			1,
		);
		expect(body.height).toBeCloseTo(slug.diameterMm * frame.pxAcross, 1);
	});
	test("laid flat there is no inside, but there are meridians", () => {
		const flat = drawn(weighted, {
			part: "whole",
			isUnrolled: true,
			stretch: 1,
		});
		expect(flat.hidden).toEqual([]);
		expect(flat.meridians.map(({ text }) => text)).toEqual([
			"0°",
			"90°",
			"180°",
			"270°",
		]);
	});
});

describe("in words", () => {
	test("the stretches along a meridian follow each other and agree with the material there", () => {
		fc.assert(
			fc.property(
				anyCue,
				fc.double({ min: 0, max: 360, noNaN: true }),
				(design, angleDeg) => {
					const stretches = seenAlong(design, angleDeg);
					expect(stretches[0]).toMatchObject({ part: "tip", fromStationMm: 0 });
					expect(stretches.at(-1)?.toStationMm).toBe(design.lengthMm);
					for (const [i, one] of stretches.entries()) {
						if (i > 0)
							expect(one.fromStationMm).toBe(stretches[i - 1]?.toStationMm);
						const middle = (one.fromStationMm + one.toStationMm) / 2;
						expect(
							materialAt({
								design,
								angleDeg,
								stationMm: middle,
								radiusMm: outlineRadiusMm(design, middle),
							}),
						).toMatchObject({ part: one.part, material: one.material });
					}
				},
			),
			{ numRuns: 40, seed: 8 },
		);
	});
	test("the cue is told in sentences with its own figures", () => {
		expect(
			plain(
				cueWords({ design: cue(), reader: METRIC, balanceFromButtMm: 431 }),
			),
		).toBe(
			"A cue 1460 mm long, 9.5 mm thick at the tip and 29.0 mm at the butt. Three-quarter joint. Shaft of white ash, butt of gaboon ebony: hand-spliced, four rounded points (from the butt end: points 694 mm). It balances 431 mm from the butt end.",
		);
	});
	test.each([
		[{ part: "whole", isUnrolled: false, stretch: 1, angleDeg: 0 }, /to scale/],
		[
			{ part: "butt", isUnrolled: false, stretch: 3, angleDeg: 450 },
			/butt, enlarged, thickness drawn 3 times.* 90° faces you/,
		],
		[
			{ part: "whole", isUnrolled: true, stretch: 1, angleDeg: -30 },
			/laid flat.* 330° in the middle/,
		],
	] as const)("%j", (view, words) => {
		expect(viewWords(view, METRIC)).toMatch(words);
	});
});
