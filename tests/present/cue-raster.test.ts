import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planAddedWeight } from "@/lib/build/added-weight";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { grainArrows } from "@/lib/cue/grain";
import { materialAt } from "@/lib/cue/material";
import { diameterAtMm } from "@/lib/cue/taper";
import { must } from "@/lib/numerics/outcome";
import { GREY_PALETTE, NATURAL_PALETTE } from "@/lib/present/cue-palette";
import { type CueRender, renderCue } from "@/lib/present/cue-raster";
import type { CueGrain } from "@/lib/present/cue-shading";
import { type CueView, heightForPx } from "@/lib/present/cue-view";
import { anyCue, cue } from "../support/designs";

const NO_GRAIN: CueGrain = { shaft: null, butt: null };
const GRAIN: CueGrain = {
	shaft: { ringSpacingMm: 2, tiltDeg: 0.1 },
	butt: { ringSpacingMm: 1.5, tiltDeg: -0.3, turnDeg: 25 },
};
const SIDE: CueView = { part: "whole", isUnrolled: false, stretch: 4 };
const VIEWS: readonly CueView[] = [
	{ part: "whole", isUnrolled: false, stretch: 1 },
	SIDE,
	{ part: "butt", isUnrolled: false, stretch: 2 },
	{ part: "front", isUnrolled: false, stretch: 2 },
	{ part: "whole", isUnrolled: true, stretch: 1 },
	{ part: "butt", isUnrolled: true, stretch: 1 },
];

const render = (p: {
	design: CueDesign;
	view: CueView;
	angleDeg?: number;
	widthPx?: number;
	grain?: CueGrain;
	palette?: typeof NATURAL_PALETTE;
}): CueRender => {
	const { design, view, widthPx = 700 } = p;
	return renderCue({
		design,
		view,
		widthPx,
		heightPx: heightForPx({ design, view, widthPx }),
		angleDeg: p.angleDeg ?? 0,
		palette: p.palette ?? NATURAL_PALETTE,
		grain: p.grain ?? NO_GRAIN,
	});
};

/**
 * The slow reference: every pixel's centre to a station and an angle by the plain formulas, and
 * `materialAt` there. Nothing is shared with the fast path but the range of stations shown.
 */
function disagreements(design: CueDesign, picture: CueRender): string[] {
	const { frame, surface, legend } = picture;
	const { widthPx, heightPx, fromMm, toMm, view, angleDeg } = frame;
	const mmPerPx = (toMm - fromMm) / widthPx;
	const found: string[] = [];
	for (let i = 0; i < widthPx; i++) {
		const stationMm = fromMm + (i + 0.5) * mmPerPx;
		const rimMm = rimOf(design, stationMm);
		for (let j = 0; j < heightPx; j++) {
			const acrossMm = ((j + 0.5 - heightPx / 2) * mmPerPx) / view.stretch;
			const turnDeg = view.isUnrolled
				? ((j + 0.5) / heightPx) * 360 - 180
				: (Math.asin(acrossMm / rimMm) * 180) / Math.PI;
			const there = Number.isNaN(turnDeg)
				? null
				: materialAt({
						design,
						stationMm,
						angleDeg: angleDeg + turnDeg,
						// A hair inside, so that the rounding of the rim decides nothing.
						radiusMm: rimMm * (1 - 1e-12),
					});
			const code = surface[j * widthPx + i] ?? 0;
			const drawn = code === 0 ? null : legend[code - 1];
			if (drawn?.part !== there?.part || drawn?.material !== there?.material)
				found.push(
					`pixel ${i},${j}: drawn ${drawn?.part}, is ${there?.part} at ${stationMm} mm, ${angleDeg + turnDeg}°`,
				);
		}
	}
	return found;
}

/** The largest radius at which there is anything, by bisection of `materialAt` alone. */
function rimOf(design: CueDesign, stationMm: number): number {
	let low = 0;
	let high = 40;
	for (let step = 0; step < 60; step++) {
		const middle = (low + high) / 2;
		if (materialAt({ design, stationMm, angleDeg: 0, radiusMm: middle }))
			low = middle;
		else high = middle;
	}
	return low;
}

const make = (change: Partial<CueRequest>): CueDesign => cue(change);
const weighted = (design: CueDesign): CueDesign =>
	must(planAddedWeight({ design, wantedMassG: 590 })).finished;

const CUES: readonly (readonly [string, CueDesign])[] = [
	["hand-spliced", make({})],
	["machine-spliced", make({ splice: "machine-four-point" })],
	["plain butt", make({ splice: "plain", layout: "centre" })],
	[
		"eight points with veneers, a front wedge, wedges all round, an end piece",
		make({
			splicing: {
				points: {
					planeAngleDeg: 0.9,
					veneers: [
						{ wood: "sugar-maple", thicknessMm: 0.6 },
						{ wood: "purpleheart", thicknessMm: 0.5 },
					],
				},
				pointsBetween: { wood: "indian-rosewood" },
				allRound: { wood: "zebrano", count: 6, pointFromButtMm: 150 },
				frontWedge: {
					wood: "olive",
					faceAngleDeg: 10,
					pointFromButtMm: 240,
					veneers: [{ wood: "sugar-maple", thicknessMm: 0.7 }],
				},
			},
			fittings: { endPieceMm: 60 },
		}),
	],
	["weighted", weighted(make({ buttWood: "black-walnut" }))],
];

describe("against materialAt, every pixel of the picture", () => {
	test.each(CUES)("%s", (_, design) => {
		for (const view of VIEWS)
			for (const angleDeg of [0, 17, 45, 133, 290])
				expect(
					disagreements(
						design,
						render({ design, view, angleDeg, widthPx: 260 }),
					),
					`${JSON.stringify(view)} at ${angleDeg}°`,
				).toEqual([]);
	});
	test("at the size of a page, 1,600 pixels wide", () => {
		const [, design] = CUES[3] ?? [];
		if (!design) throw new Error("no such cue");
		const picture = render({ design, view: SIDE, angleDeg: 33, widthPx: 1600 });
		expect(disagreements(design, picture)).toEqual([]);
		const shown = new Set(picture.surface);
		expect(shown.size).toBeGreaterThan(8);
	});
	test("any cue, any turn", () => {
		fc.assert(
			fc.property(
				anyCue,
				fc.constantFrom(...VIEWS),
				fc.double({ min: 0, max: 360, noNaN: true }),
				(design, view, angleDeg) => {
					expect(
						disagreements(
							design,
							render({ design, view, angleDeg, widthPx: 120 }),
						),
					).toEqual([]);
				},
			),
			{ numRuns: 60, seed: 20 },
		);
	});
	test("the reference would notice a turn of half a degree", () => {
		const [, design] = CUES[0] ?? [];
		if (!design) throw new Error("no such cue");
		const picture = render({ design, view: SIDE, angleDeg: 30, widthPx: 700 });
		const turned = { ...picture, frame: { ...picture.frame, angleDeg: 30.5 } };
		expect(disagreements(design, turned).length).toBeGreaterThan(10);
	});
});

describe("turning", () => {
	const design = make({ splice: "machine-four-point" });
	test("a quarter turn of four equal points changes nothing", () => {
		const here = render({ design, view: SIDE, angleDeg: 20 });
		const there = render({ design, view: SIDE, angleDeg: 110 });
		expect(there.surface).toEqual(here.surface);
		expect(there.rgba).toEqual(here.rgba);
	});
	test("the unrolled surface moves up by the turn", () => {
		const view: CueView = { part: "whole", isUnrolled: true, stretch: 1 };
		const one = { ...design, splice: { ...design.splice } };
		const at = (angleDeg: number) =>
			renderCue({
				design: one,
				view,
				angleDeg,
				widthPx: 300,
				heightPx: 360,
				palette: NATURAL_PALETTE,
				grain: GRAIN,
			});
		const still = at(0);
		const turned = at(50);
		const row = 300;
		expect(turned.surface.slice(0, 310 * row)).toEqual(
			still.surface.slice(50 * row),
		);
	});
	test("front and back mirror each other where the cue does", () => {
		const plain = make({});
		const front = render({ design: plain, view: SIDE, angleDeg: 0 });
		const { widthPx, heightPx } = front.frame;
		const materialOf = (pixel: number) =>
			front.legend[(front.surface[pixel] ?? 0) - 1]?.material;
		for (let j = 0; j < heightPx; j++)
			for (let i = 0; i < widthPx; i += 7)
				expect(materialOf(j * widthPx + i)).toBe(
					materialOf((heightPx - 1 - j) * widthPx + i),
				);
	});
});

describe("rings", () => {
	/** Straight taper, so that the published geometry of flat rings in a cone holds along the whole cue. */
	const design = make({ taperShape: "straight", splice: "plain" });
	/** Black rings on white, no light and no seams: a pixel's darkness is the ring's alone. */
	const BLACK_ON_WHITE = {
		tones: {
			...NATURAL_PALETTE.tones,
			"white-ash": { ground: [255, 255, 255], ring: [0, 0, 0], gloss: 0 },
		},
		seam: { rgb: [0, 0, 0], strength: 0 },
	} as const;
	const darkness = (picture: CueRender, i: number, j: number) => {
		const at = 4 * (j * picture.frame.widthPx + i);
		return 255 - (picture.rgba[at] ?? 0);
	};
	const unrolled = (grain: CueGrain) =>
		renderCue({
			design,
			view: { part: "whole", isUnrolled: true, stretch: 1 },
			angleDeg: 0,
			widthPx: 3000,
			heightPx: 721,
			palette: BLACK_ON_WHITE,
			grain,
		});
	/** Stations of the lines along one row of the shaft, each the middle of a dark run of pixels. */
	function linesAlong(picture: CueRender, j: number): number[] {
		const { frame } = picture;
		const mmPerPx = (frame.toMm - frame.fromMm) / frame.widthPx;
		const first = Math.ceil(16 / mmPerPx);
		const last = Math.floor(joinMm / mmPerPx);
		const found: number[] = [];
		let sum = 0;
		let weight = 0;
		let isWhole = false;
		for (let i = first; i < last; i++) {
			const here = darkness(picture, i, j);
			if (here > 0) {
				sum += here * (i + 0.5) * mmPerPx;
				weight += here;
				continue;
			}
			// A run that the first or last pixel cuts has no middle.
			if (weight > 0 && isWhole) found.push(sum / weight);
			sum = 0;
			weight = 0;
			isWhole = true;
		}
		return found;
	}
	const joinMm =
		design.splice.base.kind === "tenon" ? design.splice.base.joinStationMm : 0;

	test.each([
		[2, 0],
		[1.3, 0],
		[2, 0.15],
		[2, -0.9],
	])(
		"spacing %d mm, tilt %d°: arrows stand where grainArrows counts them, front and back",
		(ringSpacingMm, tiltDeg) => {
			const grain = { ringSpacingMm, tiltDeg };
			const picture = unrolled({ shaft: grain, butt: null });
			const counted = must(grainArrows({ design, grain }));
			// The middle row is the front; the first row's centre is a quarter of a degree off the back.
			for (const [face, row] of [
				["front", 360],
				["back", 0],
			] as const) {
				const arrows = counted[face].arrows.map(({ stationMm }) => stationMm);
				const nearest = linesAlong(picture, row).map((stationMm) => ({
					stationMm,
					offMm: Math.min(...arrows.map((at) => Math.abs(at - stationMm))),
				}));
				expect(nearest.length, face).toBeGreaterThanOrEqual(arrows.length - 2);
				expect(nearest.length, face).toBeLessThanOrEqual(arrows.length);
				expect(nearest.length, face).toBeGreaterThan(0);
				for (const { offMm } of nearest) expect(offMm, face).toBeLessThan(0.5);
			}
		},
	);
	test("away from the front the line is the hyperbola y² = r² − x_k² of a plane through a cone", () => {
		const ringSpacingMm = 2;
		const picture = unrolled({
			shaft: { ringSpacingMm, tiltDeg: 0 },
			butt: null,
		});
		let checked = 0;
		for (const turnDeg of [12, 25, 40]) {
			const j = 360 + 2 * turnDeg;
			for (const stationMm of linesAlong(picture, j)) {
				const angle = (((j + 0.5) * 360) / 721 - 180) * (Math.PI / 180);
				const radiusMm = diameterAtMm(design, stationMm) / 2;
				const yMm = radiusMm * Math.sin(angle);
				const planeMm = Math.sqrt(radiusMm ** 2 - yMm ** 2);
				const off = planeMm / ringSpacingMm;
				expect(Math.abs(off - Math.round(off))).toBeLessThan(0.004);
				checked++;
			}
		}
		expect(checked).toBeGreaterThanOrEqual(8);
	});
	test("turned, the rings turn with the cue", () => {
		const grain = { ringSpacingMm: 2, tiltDeg: 0, turnDeg: 90 };
		const at = (angleDeg: number, turnDeg: number) =>
			render({
				design,
				view: SIDE,
				angleDeg,
				grain: { shaft: { ...grain, turnDeg }, butt: null },
			});
		const here = at(30, 90);
		const there = at(0, 60);
		const { heightPx, widthPx } = here.frame;
		for (let j = 0; j < heightPx; j++)
			for (let i = 20; i < 0.6 * widthPx; i += 3)
				expect(
					Math.abs(darkness(here, i, j) - darkness(there, i, j)),
				).toBeLessThanOrEqual(1);
	});
});

describe("what the eye gets", () => {
	const design = make({});
	const picture = render({ design, view: SIDE, widthPx: 1600, grain: GRAIN });
	const { widthPx, heightPx } = picture.frame;
	const alpha = (i: number, j: number) =>
		picture.rgba[4 * (j * widthPx + i) + 3] ?? 0;
	test("covers as many pixels as the cue's outline has area", () => {
		let covered = 0;
		for (let k = 3; k < picture.rgba.length; k += 4)
			covered += (picture.rgba[k] ?? 0) / 255;
		let areaMm2 = 0;
		for (let k = 0; k < 20_000; k++) {
			const stationMm = ((k + 0.5) / 20_000) * design.lengthMm;
			areaMm2 += (2 * rimOf(design, stationMm) * design.lengthMm) / 20_000;
		}
		const { pxPerMm, pxAcross } = picture.frame;
		expect(covered / (areaMm2 * pxPerMm * pxAcross)).toBeCloseTo(1, 3);
	});
	test("edges are soft, inside is full, outside is clear", () => {
		const column = Array.from({ length: heightPx }, (_, j) => alpha(900, j));
		const partial = column.filter((a) => a > 0 && a < 255);
		expect(partial.length).toBeLessThanOrEqual(2);
		expect(column[Math.floor(heightPx / 2)]).toBe(255);
		expect(column[0]).toBe(0);
	});
	test("light falls from above", () => {
		const red = (j: number) => picture.rgba[4 * (j * widthPx + 500)] ?? 0;
		const lit = Array.from({ length: heightPx }, (_, j) => j).filter(
			(j) => alpha(500, j) === 255,
		);
		const upper = lit[Math.floor(lit.length * 0.2)] ?? 0;
		const lower = lit[Math.floor(lit.length * 0.95)] ?? 0;
		expect(red(upper)).toBeGreaterThan(1.3 * red(lower));
	});
	test("in one ink every pixel is grey, and woods still differ", () => {
		const grey = render({ design, view: SIDE, palette: GREY_PALETTE });
		const levels = new Set<number>();
		for (let k = 0; k < grey.rgba.length; k += 4) {
			const [r = 0, g = 0, b = 0, a = 0] = grey.rgba.slice(k, k + 4);
			if (a === 0) continue;
			expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeLessThanOrEqual(1);
			levels.add(r);
		}
		expect(levels.size).toBeGreaterThan(20);
	});
	test("sizes that cannot hold the cue are refused by name and number", () => {
		expect(() =>
			renderCue({
				design,
				view: SIDE,
				angleDeg: 0,
				widthPx: 1600,
				heightPx: 40,
				palette: NATURAL_PALETTE,
				grain: NO_GRAIN,
			}),
		).toThrow(/heightPx must hold 127.* got 40 px/);
		expect(() => render({ design, view: SIDE, widthPx: 20 })).toThrow(
			/widthPx must be 100 to 4000, got 20/,
		);
		expect(() =>
			render({ design, view: { ...SIDE, stretch: Number.NaN } }),
		).toThrow(/heightPx|stretch/);
	});
});
