import DxfParser, { type ILineEntity, type IPolylineEntity } from "dxf-parser";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { advise } from "@/lib/advice/advise";
import { type SpecContent, specFrom } from "@/lib/advice/spec";
import { dxfText } from "@/lib/documents/dxf";
import { profileDxf } from "@/lib/documents/profile-dxf";
import { buildFromSpec } from "@/lib/workshop/job-content";
import { anyInput } from "../support/inputs";
import { richSpec, specWith, usualSpec } from "./support/specs";

/** What the file holds: four decimals of a millimetre. */
const WRITTEN_MM = 0.000051;

/** An independent reader of the format. */
function read(content: SpecContent) {
	const text = profileDxf({
		title: "SPEC 12 REVISION 3",
		build: buildFromSpec(content),
	});
	const drawing = new DxfParser().parseSync(text);
	if (drawing === null) throw new Error("the reader gives nothing");
	const on = (layer: string) =>
		drawing.entities.filter((entity) => entity.layer === layer);
	const [profile] = on("PROFILE") as IPolylineEntity[];
	if (profile === undefined) throw new Error("no profile");
	return { text, drawing, on, profile, points: profile.vertices };
}

const radiusAt = (points: { x: number; y: number }[], x: number): number => {
	const i = points.findIndex((point) => point.x >= x - WRITTEN_MM);
	const [before, at] = [points[i - 1], points[i]];
	if (at === undefined) throw new Error(`nothing at ${x}`);
	if (before === undefined || at.x <= x + WRITTEN_MM) return at.y;
	return before.y + ((at.y - before.y) * (x - before.x)) / (at.x - before.x);
};

describe("the profile, as an independent DXF reader sees it", () => {
	test.each([
		["usual", usualSpec],
		["rich", richSpec],
		["one piece", () => specWith({ layout: "one-piece", splice: "plain" })],
	])("%s: the sheet's dimensions", (_, make) => {
		const content = make();
		const { profile, points, on, drawing } = read(content);
		const { lengthMm } = content.design;
		expect(drawing.header.$ACADVER).toBe("AC1009");
		expect(profile.type).toBe("POLYLINE");
		expect(profile.shape).toBe(true); // closed, along the axis
		const xs = points.map(({ x }) => x);
		expect(Math.min(...xs)).toBe(0);
		expect(Math.abs(Math.max(...xs) - lengthMm)).toBeLessThan(WRITTEN_MM);
		expect(points.at(0)).toMatchObject({ x: 0, y: 0 });
		expect(points.at(-1)?.y).toBe(0);
		const edgeMm = lengthMm - content.design.buttEndRadiusMm;
		const onTaper = content.stations.filter(
			({ stationMm }) => stationMm < edgeMm,
		);
		expect(onTaper.length).toBeGreaterThan(12);
		for (const { fromButtMm, diameterMm } of onTaper)
			expect(
				Math.abs(2 * radiusAt(points, fromButtMm) - diameterMm),
				`${fromButtMm} mm from the butt end`,
			).toBeLessThan(2 * WRITTEN_MM);
		const stations = on("STATIONS").filter(
			({ type }) => type === "LINE",
		) as ILineEntity[];
		expect(
			stations.map(({ vertices: [from, to] }) => [
				from?.x,
				(to?.y ?? 0) - (from?.y ?? 0),
			]),
		).toEqual(
			content.stations.map(({ fromButtMm, diameterMm }) => [
				expect.closeTo(fromButtMm, 3),
				expect.closeTo(diameterMm, 3),
			]),
		);
		const [mirror] = on("MIRROR") as IPolylineEntity[];
		expect(mirror?.vertices.map(({ x, y }) => [x, y === 0 ? 0 : -y])).toEqual(
			points.map(({ x, y }) => [x, y]),
		);
	});

	test("metal, plug, joint and ferrule stand where the sheet has them", () => {
		const content = usualSpec();
		const { on } = read(content);
		const boxes = (on("WEIGHT") as IPolylineEntity[]).map(({ vertices }) => {
			const xs = vertices.map(({ x }) => x);
			const ys = vertices.map(({ y }) => y);
			return {
				from: Math.min(...xs),
				to: Math.max(...xs),
				across: Math.max(...ys) - Math.min(...ys),
			};
		});
		const { addedWeight, design } = content;
		const { jointSlug } = addedWeight;
		if (jointSlug === null)
			throw new Error("a slug behind the joint is wanted");
		const jointFrom = design.lengthMm - jointSlug.fromStationMm;
		for (const [from, to, across] of [
			[0, addedWeight.slugFromButtMm, addedWeight.boreDiameterMm],
			[
				addedWeight.slugFromButtMm,
				addedWeight.boreDepthMm,
				addedWeight.boreDiameterMm,
			],
			[jointFrom - jointSlug.slugLengthMm, jointFrom, jointSlug.diameterMm],
		])
			expect(boxes).toContainEqual({
				from: expect.closeTo(from ?? 0, 3),
				to: expect.closeTo(to ?? 0, 3),
				across: expect.closeTo(across ?? 0, 3),
			});
		const lines = on("FITTINGS").filter(
			({ type }) => type === "LINE",
		) as ILineEntity[];
		const xs = lines.map(({ vertices }) => vertices[0]?.x);
		for (const stationMm of [
			design.tip.heightMm,
			design.tip.heightMm + design.ferrule.lengthMm,
			(design.joint?.stationMm ?? 0) - (design.joint?.collarMm ?? 0),
			(design.joint?.stationMm ?? 0) + (design.joint?.collarMm ?? 0),
		])
			expect(xs).toContainEqual(expect.closeTo(design.lengthMm - stationMm, 3));
	});

	test("a straight taper is a cone: on its line everywhere, and of its volume", () => {
		const content = specWith({ taperShape: "straight", layout: "one-piece" });
		const { points } = read(content);
		const { lengthMm, buttEndRadiusMm, tip } = content.design;
		const [tipMm, buttMm] = [
			content.request.tipDiameterMm,
			content.request.buttDiameterMm,
		];
		const cone = (x: number) => buttMm + ((tipMm - buttMm) * x) / lengthMm;
		const onCone = points.filter(
			({ x }) => x > buttEndRadiusMm && x < lengthMm - tip.heightMm,
		);
		expect(onCone.length).toBeGreaterThan(100);
		for (const { x, y } of onCone)
			expect(Math.abs(2 * y - cone(x))).toBeLessThan(4 * WRITTEN_MM);
		// Revolved: the sum of frusta against the closed form of the whole frustum. What the edge and
		// the dome take off stays under a box round each.
		const revolvedMm3 = points.slice(1).reduce((sum, at, i) => {
			const before = points[i] ?? at;
			return (
				sum +
				(Math.PI / 3) *
					(at.x - before.x) *
					(at.y ** 2 + at.y * before.y + before.y ** 2)
			);
		}, 0);
		const wholeMm3 =
			((Math.PI * lengthMm) / 12) * (tipMm ** 2 + tipMm * buttMm + buttMm ** 2);
		const takenMm3 = wholeMm3 - revolvedMm3;
		expect(takenMm3).toBeGreaterThan(0);
		expect(takenMm3).toBeLessThan(
			Math.PI *
				((buttMm / 2) ** 2 - (buttMm / 2 - buttEndRadiusMm) ** 2) *
				buttEndRadiusMm +
				Math.PI * (tipMm / 2) ** 2 * tip.heightMm,
		);
	});

	test("the dome and the edge are arcs of their radii", () => {
		const content = usualSpec();
		const { points } = read(content);
		const { lengthMm, buttEndRadiusMm: edgeMm, tip } = content.design;
		const onDome = points.filter(({ x }) => x > lengthMm - 1);
		expect(onDome.length).toBeGreaterThan(10);
		for (const { x, y } of onDome)
			expect(Math.hypot(x - (lengthMm - tip.domeRadiusMm), y)).toBeCloseTo(
				tip.domeRadiusMm,
				3,
			);
		const edge = points.filter(({ x, y }) => x < edgeMm && y > 0);
		expect(edge.length).toBeGreaterThan(10);
		// The edge follows the taper, which falls by some hundredths of a millimetre along it.
		for (const { x, y } of edge)
			expect(
				Math.hypot(x - edgeMm, y - (content.figures.butt.value / 2 - edgeMm)),
			).toBeCloseTo(edgeMm, 1);
	});

	test("words name the job and say what x is", () => {
		const { text, drawing } = read(usualSpec());
		expect(text).toMatch(/^999\r\nSPEC 12 REVISION 3, models /);
		const words = drawing.entities.flatMap((entity) =>
			entity.type === "TEXT"
				? [(entity as unknown as { text: string }).text]
				: [],
		);
		expect(words).toContain("SPEC 12 REVISION 3");
		expect(words).toContain(
			"MILLIMETRES, FULL SIZE. X FROM THE BUTT END, TIP AT THE RIGHT",
		);
		expect(words.filter((one) => one.includes("%%c")).length).toBeGreaterThan(
			12,
		);
	});

	test("plain ASCII, pairs of lines, every layer and line type declared", () => {
		const { text, drawing } = read(richSpec());
		expect(text).toMatch(/^[\x20-\x7e\r\n]+$/);
		const lines = text.split("\r\n");
		expect(lines.pop()).toBe("");
		expect(lines.length % 2).toBe(0);
		for (let i = 0; i < lines.length; i += 2)
			expect(lines[i]).toMatch(/^ *\d{1,3}$/);
		expect(lines.slice(-2)).toEqual(["  0", "EOF"]);
		const layers = drawing.tables.layer?.layers ?? {};
		const types = drawing.tables.lineType?.lineTypes ?? {};
		for (const { layer } of drawing.entities)
			expect(Object.keys(layers)).toContain(layer);
		for (const [, type] of text.matchAll(/ {2}6\r\n([A-Z]+)\r\n/g))
			expect(Object.keys(types)).toContain(type);
		// Release 12 has neither the light polyline nor splines.
		expect(new Set(drawing.entities.map(({ type }) => type))).toEqual(
			new Set(["POLYLINE", "LINE", "TEXT"]),
		);
	});

	test("any fitting that freezes gives a profile that rises from tip to butt edge", () => {
		let made = 0;
		fc.assert(
			fc.property(anyInput, (input) => {
				const advice = advise(input);
				const spec = advice.ok ? specFrom(advice.value, null) : advice;
				if (!spec.ok) return;
				made++;
				const { points } = read(spec.value);
				const xs = points.map(({ x }) => x);
				expect(xs).toEqual([...xs].sort((a, b) => a - b));
				const onTaper = points.filter(
					({ x }) => x >= spec.value.design.buttEndRadiusMm,
				);
				for (const [i, { y }] of onTaper.entries())
					expect(y).toBeLessThanOrEqual(
						(onTaper[i - 1]?.y ?? Number.POSITIVE_INFINITY) + WRITTEN_MM,
					);
			}),
			{ numRuns: 30, seed: 6 },
		);
		expect(made).toBeGreaterThan(8);
	});
});

describe("the writer refuses", () => {
	const at = { xMm: 0, yMm: 0 };
	const layers = [{ name: "A", colour: 7, lineType: "CONTINUOUS" }] as const;
	test.each(["é", "a\nb", "½"])(
		"a text that is not a line of ASCII: %j",
		(text) => {
			expect(() =>
				dxfText({
					comments: [],
					layers,
					entities: [
						{ kind: "text", layer: "A", at, heightMm: 3, angleDeg: 0, text },
					],
				}),
			).toThrow(/ASCII/);
		},
	);
	test("a layer that is not declared", () => {
		expect(() =>
			dxfText({
				comments: [],
				layers,
				entities: [{ kind: "line", layer: "B", from: at, to: at }],
			}),
		).toThrow("no layer B");
	});
});
