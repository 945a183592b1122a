import { encodePng } from "./png";

/** The sign of the app, a cue on dark ground, in units of 64 to the side; the drawing of app/icon.svg. */
const GROUND = "#151311";
const CORNER = 12;
const PARTS: readonly { readonly color: string; readonly points: Points }[] = [
	{
		color: "#d6c294",
		points: [
			[12, 46],
			[46.8, 14.6],
			[49.4, 17.2],
			[18, 52],
		],
	},
	{
		color: "#8a4a38",
		points: [
			[12, 46],
			[24.5, 34.7],
			[29.3, 39.5],
			[18, 52],
		],
	},
	{
		color: "#d9ae57",
		points: [
			[46.8, 14.6],
			[49.1, 12.5],
			[51.5, 14.9],
			[49.4, 17.2],
		],
	},
	{
		color: "#63aac2",
		points: [
			[49.1, 12.5],
			[50.7, 11.1],
			[52.9, 13.3],
			[51.5, 14.9],
		],
	},
];
type Points = readonly (readonly [number, number])[];
const SIDE = 64;

/** Samples along each side of a pixel. */
const SAMPLES = 4;

/**
 * Of a maskable icon only the middle circle of eight tenths the width is sure to be seen (W3C Web
 * Application Manifest, "maskable"): the ground fills the square and the cue shrinks into the circle.
 */
const MASKABLE_SCALE = 0.72;

export const ICONS = {
	"180.png": { sizePx: 180, isMaskable: true },
	"192.png": { sizePx: 192, isMaskable: false },
	"512.png": { sizePx: 512, isMaskable: false },
	"maskable-192.png": { sizePx: 192, isMaskable: true },
	"maskable-512.png": { sizePx: 512, isMaskable: true },
} as const;
export type IconName = keyof typeof ICONS;
export const ICON_NAMES = Object.keys(ICONS) as IconName[];

/** One of the app's icons as a PNG file. */
export function appIconPng({
	sizePx,
	isMaskable,
}: {
	sizePx: number;
	isMaskable: boolean;
}): Buffer {
	const rgba = new Uint8ClampedArray(sizePx * sizePx * 4);
	const colors = [null, GROUND, ...PARTS.map(({ color }) => color)].map(
		(color) => (color === null ? [0, 0, 0, 0] : [...channels(color), 255]),
	);
	for (let y = 0; y < sizePx; y++)
		for (let x = 0; x < sizePx; x++) {
			const sum = [0, 0, 0, 0];
			for (let j = 0; j < SAMPLES; j++)
				for (let i = 0; i < SAMPLES; i++) {
					const at = [x + (i + 0.5) / SAMPLES, y + (j + 0.5) / SAMPLES].map(
						(place) => (place * SIDE) / sizePx,
					) as [number, number];
					const color = colors[paintAt(at, isMaskable)] ?? [];
					const alpha = color[3] ?? 0;
					for (let c = 0; c < 3; c++)
						sum[c] = (sum[c] ?? 0) + ((color[c] ?? 0) * alpha) / 255;
					sum[3] = (sum[3] ?? 0) + alpha;
				}
			const alpha = (sum[3] ?? 0) / SAMPLES ** 2;
			const here = (y * sizePx + x) * 4;
			for (let c = 0; c < 3; c++)
				rgba[here + c] =
					alpha === 0 ? 0 : ((sum[c] ?? 0) / SAMPLES ** 2 / alpha) * 255;
			rgba[here + 3] = alpha;
		}
	return encodePng({ rgba, widthPx: sizePx, heightPx: sizePx });
}

const channels = (color: string): number[] =>
	[1, 3, 5].map((from) => Number.parseInt(color.slice(from, from + 2), 16));

/** Place in the colours: nothing, the ground, or one of the cue's parts. */
function paintAt(
	[x, y]: readonly [number, number],
	isMaskable: boolean,
): number {
	const shrink = (place: number) =>
		isMaskable ? SIDE / 2 + (place - SIDE / 2) / MASKABLE_SCALE : place;
	const part = PARTS.findLastIndex(({ points }) =>
		isInside([shrink(x), shrink(y)], points),
	);
	if (part >= 0) return part + 2;
	return isMaskable || isInSquare(x, y) ? 1 : 0;
}

/** The square with round corners. */
function isInSquare(x: number, y: number): boolean {
	const beyond = (place: number) =>
		Math.max(CORNER - place, place - (SIDE - CORNER), 0);
	return Math.hypot(beyond(x), beyond(y)) <= CORNER;
}

/** Crossing rule: a ray to the right meets the outline an odd number of times. */
function isInside([x, y]: readonly [number, number], points: Points): boolean {
	let inside = false;
	points.forEach(([x1, y1], i) => {
		const [x2, y2] = points[(i + 1) % points.length] ?? [x1, y1];
		if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1)
			inside = !inside;
	});
	return inside;
}
