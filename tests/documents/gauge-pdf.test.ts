import { NextRequest } from "next/server";
import { beforeAll, describe, expect, test } from "vitest";
import { GET } from "@/app/gauges/ring/route";
import {
	CONE_SPAN_RAD,
	circlePages,
	fromApexMm,
	MARGIN_MM,
	onCone,
	PAPERS,
	type PaperId,
	RING_GAUGE,
	RULER_ROOM_MM,
	rulerTicks,
} from "@/lib/documents/gauge-layout";
import { renderRingGauge } from "@/lib/documents/gauge-pdf";
import { today } from "@/lib/records/settings/loaders";
import { saveSetting } from "@/lib/records/settings/mutations";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { METRIC, reading } from "@/tests/support/readers";
import { temporaryDatabase } from "../support/database";
import { type PdfPage, type PdfPath, pdfPages } from "../support/pdf-paths";
import { lettersOf, readPdf } from "./support/pdf";

const extent = ({ points }: PdfPath, axis: 0 | 1) => {
	const along = points.map((point) => point[axis]);
	return Math.max(...along) - Math.min(...along);
};
/** Full circles: curves whose four quarter points span as far across as down. */
const circlesOn = (page: PdfPage) =>
	page.paths.filter(
		(path) =>
			path.isCurved &&
			extent(path, 0) > 10 &&
			Math.abs(extent(path, 0) - extent(path, 1)) < 0.01,
	);

/** A point is 1/72 in by ISO 32000: what the file says is what an honest printer prints. */
describe.each([
	["a4", 210, 297],
	["letter", 215.9, 279.4],
] as const)("%s", (paperId, widthMm, heightMm) => {
	let pages: PdfPage[];
	beforeAll(async () => {
		pages = pdfPages(await renderRingGauge(paperId, METRIC));
	});

	test("has the paper's size on each page", () => {
		expect(pages).toHaveLength(3);
		for (const page of pages) {
			expect(page.widthMm).toBeCloseTo(widthMm, 3);
			expect(page.heightMm).toBeCloseTo(heightMm, 3);
		}
	});
	test("every circle from 15 to 50 mm in steps of 1 is there at true size", () => {
		const diameters = pages.flatMap((page) =>
			circlesOn(page).map((circle) => extent(circle, 0)),
		);
		expect(diameters).toHaveLength(36);
		for (const [i, diameter] of diameters.sort((a, b) => a - b).entries())
			expect(Math.abs(diameter - (15 + i))).toBeLessThan(0.005);
	});
	test("on each page the long ticks of the ruler are 10 mm apart up to 100, and 1 in up to 4", () => {
		for (const page of pages) {
			const upright = page.paths.filter(
				(path) =>
					path.points.length === 2 &&
					extent(path, 0) < 1e-6 &&
					Math.abs(extent(path, 1) - 5) < 1e-3,
			);
			const xs = upright
				.map(({ points }) => (points[0] as readonly [number, number])[0])
				.sort((a, b) => a - b);
			const fromZero = xs.map((x) => x - (xs[0] as number));
			for (const at of [10, 20, 50, 100, 25.4, 50.8, 76.2, 101.6])
				expect(
					fromZero.some((x) => Math.abs(x - at) < 0.005),
					`${at} mm`,
				).toBe(true);
		}
	});
	test("each arc of the cone is π times its diameter, measured along the printed line", () => {
		const arcs = (pages[0] as PdfPage).paths.filter(
			({ points, isCurved }) => !isCurved && points.length === 49,
		);
		const lengths = arcs
			.map(({ points }) =>
				points
					.slice(1)
					.reduce(
						(sum, [x, y], i) =>
							sum +
							Math.hypot(
								x - (points[i] as readonly [number, number])[0],
								y - (points[i] as readonly [number, number])[1],
							),
						0,
					),
			)
			.sort((a, b) => a - b);
		// Every half millimetre from 15 to 50; 48 chords fall short of an arc by 1.2e-5 of it.
		expect(lengths).toHaveLength(71);
		for (const [i, length] of lengths.entries())
			expect(Math.abs(length / Math.PI - (15 + i / 2))).toBeLessThan(0.005);
	});
});

describe("layout", () => {
	test.each(Object.keys(PAPERS) as PaperId[])(
		"%s: circles keep clear of each other, the margins and the ruler",
		(paperId) => {
			const { widthMm, heightMm } = PAPERS[paperId];
			for (const circles of circlePages(PAPERS[paperId]))
				for (const [i, a] of circles.entries()) {
					const r = a.diameterMm / 2;
					expect(a.xMm - r).toBeGreaterThanOrEqual(MARGIN_MM - 1e-9);
					expect(a.xMm + r).toBeLessThanOrEqual(widthMm - MARGIN_MM + 1e-9);
					expect(a.yMm + r).toBeLessThanOrEqual(
						heightMm - MARGIN_MM - RULER_ROOM_MM + 1e-9,
					);
					for (const b of circles.slice(i + 1))
						expect(Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm)).toBeGreaterThan(
							r + b.diameterMm / 2,
						);
				}
		},
	);
	/** A cone of half-angle α unrolls to a sector of 2π·sin α: slant d/(2 sin α) times that is πd. */
	test("the unrolled cone closes at every diameter", () => {
		for (const d of [RING_GAUGE.fromMm, 28.5, RING_GAUGE.toMm])
			expect(fromApexMm(d) * CONE_SPAN_RAD).toBeCloseTo(Math.PI * d, 12);
	});
	test("the cone fits the narrower paper between its margins", () => {
		const { xMm } = onCone(RING_GAUGE.toMm, CONE_SPAN_RAD / 2);
		expect(2 * xMm).toBeLessThan(210 - 2 * MARGIN_MM);
	});
	test("ticks of a ruler", () => {
		const ticks = rulerTicks({ lengthMm: 100, stepMm: 1, ranks: [10, 5] });
		expect(ticks).toHaveLength(101);
		expect(ticks[100]).toEqual({ atMm: 100, rank: 0 });
		expect(ticks[55]?.rank).toBe(1);
		expect(ticks[7]?.rank).toBe(2);
	});
});

test("says in German what it says in English, on the same pages", async () => {
	const [english, german] = await Promise.all(
		[METRIC, reading("metric", "de")].map(async (reader) =>
			(await readPdf(await renderRingGauge("a4", reader))).map(
				({ letters }) => letters,
			),
		),
	);
	expect(english?.[0]).toContain(
		lettersOf("Ring gauge: a cone to roll up (A4)"),
	);
	expect(german).toHaveLength(english?.length ?? 0);
	expect(german?.[0]).toContain(
		lettersOf("Ringlehre: ein Kegel zum Rollen (A4)"),
	);
	for (const page of german ?? [])
		expect(page).toContain(
			lettersOf("Mit 100 % drucken, „tatsächliche Größe“"),
		);
});

describe("the address", () => {
	temporaryDatabase();

	const get = (query: string) =>
		GET(new NextRequest(`http://localhost/gauges/ring${query}`));
	test("gives A4 where no paper is named, and a PDF", async () => {
		const response = await get("");
		expect(response.headers.get("content-type")).toBe("application/pdf");
		const bytes = new Uint8Array(await response.arrayBuffer());
		expect(new TextDecoder().decode(bytes.subarray(0, 5))).toBe("%PDF-");
		expect(pdfPages(bytes)[0]?.heightMm).toBeCloseTo(297, 2);
	});
	test("gives the paper the workshop has set where none is named", async () => {
		const saved = await saveSetting({
			kind: "header",
			content: { ...DEFAULT_SETTINGS.header, paper: "letter" },
			editedFrom: 0,
			validFrom: today(),
			by: "Bench",
			requestKey: crypto.randomUUID(),
		});
		expect(saved.ok).toBe(true);
		const bytes = new Uint8Array(await (await get("")).arrayBuffer());
		expect(pdfPages(bytes)[0]?.heightMm).toBeCloseTo(279.4, 2);
		const named = new Uint8Array(await (await get("?paper=a4")).arrayBuffer());
		expect(pdfPages(named)[0]?.heightMm).toBeCloseTo(297, 2);
	});
	test.each(["?paper=a3", "?paper=", "?paper=constructor"])(
		"%s is refused, naming what it can be",
		async (query) => {
			const response = await get(query);
			expect(response.status).toBe(400);
			expect(await response.text()).toMatch(/a4 or letter/);
		},
	);
});
