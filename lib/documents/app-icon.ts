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

interface Paint {
	readonly red: number;
	readonly green: number;
	readonly blue: number;
}
const paintOf = (color: string): Paint => {
	const channel = (from: number) =>
		Number.parseInt(color.slice(from, from + 2), 16);
	return { red: channel(1), green: channel(3), blue: channel(5) };
};
const GROUND_PAINT = paintOf(GROUND);
const PAINTED = PARTS.map(({ color, points }) => ({
	paint: paintOf(color),
	points,
}));

/** The cue lies from lower left to upper right, in a band of the sum of both coordinates. */
const SUMS = PARTS.flatMap(({ points }) => points.map(([x, y]) => x + y));
const BAND = [Math.min(...SUMS), Math.max(...SUMS)] as const;

/** Samples along each side of a pixel. */
const SAMPLES = 4;

/**
 * Of a maskable icon only the middle circle of eight tenths the width is sure to be seen (W3C Web
 * Application Manifest, "maskable"): the ground fills the square and the cue shrinks into the circle.
 */
const MASKABLE_SCALE = 0.72;

export const ICONS = {
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
	const unit = SIDE / (sizePx * SAMPLES);
	for (let y = 0; y < sizePx; y++)
		for (let x = 0; x < sizePx; x++) {
			let red = 0;
			let green = 0;
			let blue = 0;
			let covered = 0;
			for (let sample = 0; sample < SAMPLES ** 2; sample++) {
				const paint = paintAt(
					(x * SAMPLES + (sample % SAMPLES) + 0.5) * unit,
					(y * SAMPLES + Math.floor(sample / SAMPLES) + 0.5) * unit,
					isMaskable,
				);
				if (paint === null) continue;
				red += paint.red;
				green += paint.green;
				blue += paint.blue;
				covered++;
			}
			if (covered === 0) continue;
			const here = (y * sizePx + x) * 4;
			rgba[here] = red / covered;
			rgba[here + 1] = green / covered;
			rgba[here + 2] = blue / covered;
			rgba[here + 3] = (255 * covered) / SAMPLES ** 2;
		}
	return encodePng({ rgba, widthPx: sizePx, heightPx: sizePx });
}

/** What colour a place has; null outside the sign. */
function paintAt(x: number, y: number, isMaskable: boolean): Paint | null {
	const scale = isMaskable ? MASKABLE_SCALE : 1;
	const inX = SIDE / 2 + (x - SIDE / 2) / scale;
	const inY = SIDE / 2 + (y - SIDE / 2) / scale;
	const across = inX + inY;
	for (
		let i = PAINTED.length - 1;
		i >= 0 && across >= BAND[0] && across <= BAND[1];
		i--
	) {
		const part = PAINTED[i];
		if (part !== undefined && isInside(inX, inY, part.points))
			return part.paint;
	}
	return isMaskable || isInSquare(x, y) ? GROUND_PAINT : null;
}

/** The square with round corners. */
function isInSquare(x: number, y: number): boolean {
	const beyond = (place: number) =>
		Math.max(CORNER - place, place - (SIDE - CORNER), 0);
	return Math.hypot(beyond(x), beyond(y)) <= CORNER;
}

/** Crossing rule: a ray to the right meets the outline an odd number of times. */
function isInside(x: number, y: number, points: Points): boolean {
	let inside = false;
	for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
		const [x1, y1] = points[i] as Points[number];
		const [x2, y2] = points[j] as Points[number];
		if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1)
			inside = !inside;
	}
	return inside;
}
