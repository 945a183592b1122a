import type { SheetStation } from "@/lib/build/stations";
import type { CueDesign } from "@/lib/cue/design";
import { sleevesOf } from "@/lib/cue/layers";
import { domeDepthMm, outlineRadiusMm } from "@/lib/cue/taper";
import type { BuildContent } from "@/lib/workshop/job-content";
import { decimal } from "./decimal";
import { type DxfEntity, type DxfPoint, dxfText } from "./dxf";

const LAYERS = [
	// Half the turned outline, closed along the axis: what a lathe follows and a modeller revolves.
	{ name: "PROFILE", colour: 7, lineType: "CONTINUOUS" },
	{ name: "MIRROR", colour: 7, lineType: "CONTINUOUS" },
	{ name: "AXIS", colour: 8, lineType: "CENTER" },
	{ name: "STATIONS", colour: 5, lineType: "CONTINUOUS" },
	{ name: "FITTINGS", colour: 3, lineType: "DASHED" },
	{ name: "WEIGHT", colour: 1, lineType: "DASHED" },
	{ name: "TEXT", colour: 7, lineType: "CONTINUOUS" },
] as const;

/** No chord leaves the taper by a thousandth of a millimetre at this step. */
const STEP_MM = 10;
/** Nor the tip's dome or the butt's edge with this many chords. */
const TURN_CHORDS = 24;
const TEXT_MM = 3;
/** Two stations nearer than this have their words on either side of the cue. */
const TEXT_ROOM_MM = 5;

/**
 * The turned outline of a frozen build with its stations, fittings and added weight, full size in mm.
 * x is the distance from the butt end, the tip at the right; the axis is y = 0. At each station of the
 * sheet the outline has a vertex with the stored diameter.
 */
export function profileDxf(p: {
	/** "SPEC 12 REVISION 1": capitals of the drawing's own alphabet. */
	title: string;
	build: BuildContent;
}): string {
	const { title, build } = p;
	const { design, stations } = build;
	const half = halfOutline(design, stations);
	const entities: DxfEntity[] = [
		{ kind: "polyline", layer: "PROFILE", points: half, isClosed: true },
		{
			kind: "polyline",
			layer: "MIRROR",
			points: half.map(({ xMm, yMm }) => ({ xMm, yMm: -yMm })),
			isClosed: false,
		},
		line("AXIS", { xMm: -15, yMm: 0 }, { xMm: design.lengthMm + 15, yMm: 0 }),
		...stationEntities(stations),
		...bodyEntities(design),
		...titleEntities(title, build),
	];
	return dxfText({
		comments: [
			`${title}, models ${build.modelVersion}`,
			"Millimetres, full size. x from the butt end, the tip at the right, y = 0 on the axis.",
			"PROFILE half the turned outline, closed along the axis; MIRROR the other half.",
		],
		layers: LAYERS,
		entities,
	});
}

type LayerName = (typeof LAYERS)[number]["name"];

const line = (layer: LayerName, from: DxfPoint, to: DxfPoint): DxfEntity => ({
	kind: "line",
	layer,
	from,
	to,
});

const text = (p: {
	layer: LayerName;
	at: DxfPoint;
	text: string;
	heightMm?: number;
	angleDeg?: number;
}): DxfEntity => ({
	kind: "text",
	heightMm: TEXT_MM,
	angleDeg: 0,
	...p,
});

/** From the axis at the butt end round the edge, along the taper and over the dome to the crown. */
function halfOutline(
	design: CueDesign,
	stations: readonly SheetStation[],
): readonly DxfPoint[] {
	const { lengthMm, buttEndRadiusMm } = design;
	const domeMm = domeDepthMm(design);
	const edgeMm = lengthMm - buttEndRadiusMm;
	const stored = new Map(
		stations
			.filter(({ stationMm }) => stationMm > domeMm && stationMm < edgeMm)
			.map(({ stationMm, diameterMm }) => [stationMm, diameterMm / 2]),
	);
	const shares = Array.from(
		{ length: TURN_CHORDS + 1 },
		(_, i) => i / TURN_CHORDS,
	);
	// Equal angles round the edge, equal heights over the dome, where the outline is steepest.
	const turned = [
		...(buttEndRadiusMm > 0
			? shares.map(
					(share) => edgeMm + buttEndRadiusMm * Math.cos((Math.PI / 2) * share),
				)
			: [lengthMm]),
		...shares.map((share) => domeMm * share * share),
	];
	const along = Array.from(
		{ length: Math.floor((edgeMm - domeMm) / STEP_MM) },
		(_, i) => domeMm + (i + 1) * STEP_MM,
	).filter((stationMm) => stationMm < edgeMm);
	return [
		{ xMm: 0, yMm: 0 },
		...apart([...stored.keys(), ...turned, ...along])
			.sort((a, b) => b - a)
			.map((stationMm) => ({
				xMm: lengthMm - stationMm,
				yMm: stored.get(stationMm) ?? outlineRadiusMm(design, stationMm),
			})),
	];
}

/** Without those that the file could not tell from one before them. */
function apart(stationsMm: readonly number[]): number[] {
	const kept: number[] = [];
	for (const stationMm of stationsMm)
		if (!kept.some((one) => Math.abs(one - stationMm) < 0.001))
			kept.push(stationMm);
	return kept;
}

/** A line across the cue at each station of the sheet, as long as the diameter there, and its words. */
function stationEntities(stations: readonly SheetStation[]): DxfEntity[] {
	let before = Number.NEGATIVE_INFINITY;
	let side = 1;
	return stations.flatMap(({ stationMm, fromButtMm, diameterMm }) => {
		const radiusMm = diameterMm / 2;
		side = stationMm - before < TEXT_ROOM_MM ? -side : 1;
		before = stationMm;
		return [
			line(
				"STATIONS",
				{ xMm: fromButtMm, yMm: -radiusMm },
				{ xMm: fromButtMm, yMm: radiusMm },
			),
			text({
				layer: "STATIONS",
				at: { xMm: fromButtMm + TEXT_MM / 2, yMm: side > 0 ? 20 : -50 },
				angleDeg: 90,
				text: `${decimal(fromButtMm, 1)}: %%c${decimal(diameterMm, 2)}`,
			}),
		];
	});
}

/** Pins, tenon, plug and slugs as the rectangles they show in section; what reaches the surface by its ends. */
function bodyEntities(design: CueDesign): DxfEntity[] {
	return sleevesOf(design).flatMap((body) => {
		const layer: LayerName =
			body.part === "added weight" || body.part === "plug"
				? "WEIGHT"
				: "FITTINGS";
		const [from, to] = [body.fromStationMm, body.toStationMm].map(
			(stationMm) => design.lengthMm - stationMm,
		) as [number, number];
		const across = (stationMm: number): DxfEntity => {
			const xMm = design.lengthMm - stationMm;
			const yMm = outlineRadiusMm(design, stationMm);
			return line(layer, { xMm, yMm: -yMm }, { xMm, yMm });
		};
		const box = (yMm: number): DxfEntity => ({
			kind: "polyline",
			layer,
			isClosed: true,
			points: [
				{ xMm: from, yMm },
				{ xMm: to, yMm },
				{ xMm: to, yMm: -yMm },
				{ xMm: from, yMm: -yMm },
			],
		});
		return [
			...[body.innerRadiusMm, body.outerRadiusMm]
				.filter((radiusMm) => radiusMm > 0 && Number.isFinite(radiusMm))
				.map(box),
			...(Number.isFinite(body.outerRadiusMm)
				? []
				: [body.fromStationMm, body.toStationMm]
						.filter((stationMm) => stationMm > 0)
						.map(across)),
		];
	});
}

function titleEntities(
	title: string,
	{ design, targets }: BuildContent,
): DxfEntity[] {
	const lines = [
		title,
		"MILLIMETRES, FULL SIZE. X FROM THE BUTT END, TIP AT THE RIGHT",
		`LENGTH ${decimal(design.lengthMm, 1)}  BUTT %%c${decimal(targets.butt.value, 2)}  TIP %%c${decimal(targets.tip.value, 2)}`,
	];
	return lines.map((words, i) =>
		text({
			layer: "TEXT",
			at: { xMm: 0, yMm: 75 - 8 * i },
			heightMm: 5,
			text: words,
		}),
	);
}
