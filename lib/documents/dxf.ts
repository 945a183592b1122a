import { decimal } from "./decimal";

/** Drawing entities in mm, y up. What R12 readers of every age know: no splines, no light polylines. */
export type DxfEntity = { readonly layer: string } & (
	| {
			readonly kind: "polyline";
			readonly points: readonly DxfPoint[];
			readonly isClosed: boolean;
	  }
	| { readonly kind: "line"; readonly from: DxfPoint; readonly to: DxfPoint }
	| {
			readonly kind: "text";
			readonly at: DxfPoint;
			readonly heightMm: number;
			readonly angleDeg: number;
			readonly text: string;
	  }
);

export interface DxfPoint {
	readonly xMm: number;
	readonly yMm: number;
}

export interface DxfLayer {
	readonly name: string;
	/** Index in the format's own palette; 7 is the ink of the screen. */
	readonly colour: number;
	readonly lineType: "CONTINUOUS" | "CENTER" | "DASHED";
}

export interface DxfDrawing {
	/** Read by people who open the file as text. */
	readonly comments: readonly string[];
	readonly layers: readonly DxfLayer[];
	readonly entities: readonly DxfEntity[];
}

type Pair = readonly [code: number, value: string];

const DECIMALS = 4;
const number = (code: number, value: number): Pair => [
	code,
	decimal(value, DECIMALS),
];
const point = ({ xMm, yMm }: DxfPoint, code = 10): Pair[] => [
	number(code, xMm),
	number(code + 10, yMm),
	number(code + 20, 0),
];

/** Pattern of each line type: pen down positive, pen up negative, mm. */
const LINE_TYPES = {
	CONTINUOUS: { words: "Solid line", dashesMm: [] },
	CENTER: { words: "Long and short dashes", dashesMm: [32, -6, 6, -6] },
	DASHED: { words: "Dashes", dashesMm: [8, -4] },
} as const;

/**
 * A drawing as an ASCII drawing exchange file of release 12 (AC1009): pairs of a group code and a
 * value, a line each. Throws RangeError for a layer that is not declared or a text beyond ASCII, which
 * release 12 has no certain way to write.
 */
export function dxfText({ comments, layers, entities }: DxfDrawing): string {
	const names = new Set(layers.map(({ name }) => name));
	for (const { layer } of entities)
		if (!names.has(layer)) throw new RangeError(`no layer ${layer}`);
	const pairs: Pair[] = [
		...comments.map((comment): Pair => [999, ascii(comment)]),
		...section("HEADER", header(entities)),
		...section("TABLES", [
			...table("LTYPE", Object.entries(LINE_TYPES).map(lineType)),
			...table("LAYER", layers.map(layerEntry)),
			...table("STYLE", [TEXT_STYLE]),
		]),
		...section("ENTITIES", entities.flatMap(entityPairs)),
		[0, "EOF"],
	];
	return pairs
		.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`)
		.join("");
}

const section = (name: string, content: readonly Pair[]): Pair[] => [
	[0, "SECTION"],
	[2, name],
	...content,
	[0, "ENDSEC"],
];

const table = (name: string, entries: readonly (readonly Pair[])[]): Pair[] => [
	[0, "TABLE"],
	[2, name],
	[70, String(entries.length)],
	...entries.flat(),
	[0, "ENDTAB"],
];

function header(entities: readonly DxfEntity[]): Pair[] {
	const all = entities.flatMap(cornersOf);
	const xs = all.map(({ xMm }) => xMm);
	const ys = all.map(({ yMm }) => yMm);
	const low = { xMm: Math.min(...xs), yMm: Math.min(...ys) };
	const high = { xMm: Math.max(...xs), yMm: Math.max(...ys) };
	return [
		[9, "$ACADVER"],
		[1, "AC1009"],
		[9, "$EXTMIN"],
		...point(low),
		[9, "$EXTMAX"],
		...point(high),
		[9, "$LUNITS"],
		[70, "2"],
		[9, "$LUPREC"],
		[70, String(DECIMALS)],
	];
}

function cornersOf(entity: DxfEntity): readonly DxfPoint[] {
	if (entity.kind === "polyline") return entity.points;
	return entity.kind === "line" ? [entity.from, entity.to] : [entity.at];
}

function lineType([name, { words, dashesMm }]: [
	string,
	{ readonly words: string; readonly dashesMm: readonly number[] },
]): Pair[] {
	const lengthMm = dashesMm.reduce((sum, dash) => sum + Math.abs(dash), 0);
	return [
		[0, "LTYPE"],
		[2, name],
		[70, "64"],
		[3, words],
		[72, "65"],
		[73, String(dashesMm.length)],
		number(40, lengthMm),
		...dashesMm.map((dash) => number(49, dash)),
	];
}

const layerEntry = ({ name, colour, lineType }: DxfLayer): Pair[] => [
	[0, "LAYER"],
	[2, name],
	[70, "64"],
	[62, String(colour)],
	[6, lineType],
];

const TEXT_STYLE: readonly Pair[] = [
	[0, "STYLE"],
	[2, "STANDARD"],
	[70, "64"],
	number(40, 0),
	number(41, 1),
	number(50, 0),
	[71, "0"],
	number(42, 3),
	[3, "txt"],
	[4, ""],
];

function entityPairs(entity: DxfEntity): Pair[] {
	const layer: Pair = [8, entity.layer];
	switch (entity.kind) {
		case "line":
			return [
				[0, "LINE"],
				layer,
				...point(entity.from),
				...point(entity.to, 11),
			];
		case "text":
			return [
				[0, "TEXT"],
				layer,
				...point(entity.at),
				number(40, entity.heightMm),
				[1, ascii(entity.text)],
				number(50, entity.angleDeg),
			];
		case "polyline":
			return [
				[0, "POLYLINE"],
				layer,
				[66, "1"],
				...point({ xMm: 0, yMm: 0 }),
				[70, entity.isClosed ? "1" : "0"],
				...entity.points.flatMap((one): Pair[] => [
					[0, "VERTEX"],
					layer,
					...point(one),
				]),
				[0, "SEQEND"],
				layer,
			];
	}
}

function ascii(text: string): string {
	if (/^[\x20-\x7e]*$/.test(text)) return text;
	throw new RangeError(
		`release 12 holds one line of ASCII, got ${JSON.stringify(text)}`,
	);
}
