import type { MaterialId } from "@/lib/cue/design";

/** Red, green, blue, 0 to 255. */
export type Rgb = readonly [number, number, number];

export interface Tone {
	readonly ground: Rgb;
	/** The line of a ring, or the ground again where none shows. */
	readonly ring: Rgb;
	/** Strength of the light's reflection, 0 to 1. */
	readonly gloss: number;
}

export interface CuePalette {
	readonly tones: Readonly<Record<MaterialId, Tone>>;
	/** Laid over the line where two parts meet. */
	readonly seam: { readonly rgb: Rgb; readonly strength: number };
}

const wood = (ground: Rgb, ring: Rgb): Tone => ({ ground, ring, gloss: 0.16 });
const plain = (ground: Rgb, gloss: number): Tone => ({
	ground,
	ring: ground,
	gloss,
});

/** What each material looks like finished, by eye: common appearance, no source. */
export const NATURAL_PALETTE: CuePalette = {
	tones: {
		"white-ash": wood([216, 191, 146], [166, 132, 84]),
		"european-ash": wood([222, 200, 160], [174, 143, 97]),
		"sugar-maple": wood([228, 206, 166], [205, 178, 134]),
		hornbeam: wood([226, 212, 184], [204, 185, 152]),
		"indian-rosewood": wood([98, 56, 46], [58, 30, 30]),
		cocobolo: wood([150, 74, 38], [84, 34, 22]),
		"african-blackwood": wood([48, 37, 38], [28, 22, 24]),
		"gaboon-ebony": wood([38, 33, 31], [23, 20, 19]),
		"macassar-ebony": wood([82, 56, 43], [34, 25, 23]),
		"ceylon-ebony": wood([47, 40, 36], [27, 23, 22]),
		zebrano: wood([198, 160, 105], [92, 62, 40]),
		olive: wood([190, 152, 94], [118, 84, 48]),
		"black-walnut": wood([108, 77, 58], [70, 48, 38]),
		"european-walnut": wood([138, 106, 79], [92, 68, 52]),
		bubinga: wood([144, 75, 57], [104, 48, 42]),
		"african-padauk": wood([168, 72, 45], [116, 44, 32]),
		"burma-padauk": wood([160, 87, 55], [114, 56, 40]),
		purpleheart: wood([114, 56, 86], [82, 37, 65]),
		bocote: wood([154, 115, 63], [66, 46, 30]),
		snakewood: wood([128, 60, 38], [64, 30, 24]),
		brass: plain([206, 168, 78], 0.9),
		"stainless-steel": plain([184, 189, 194], 0.9),
		aluminium: plain([206, 209, 212], 0.7),
		lead: plain([112, 116, 124], 0.3),
		"tungsten-alloy": plain([142, 146, 150], 0.6),
		"tip-leather": plain([66, 112, 137], 0.05),
		phenolic: plain([236, 230, 214], 0.5),
	},
	seam: { rgb: [24, 18, 14], strength: 0.35 },
};

/** Luma of Rec. 601, as most printers turn colour to grey. */
const luma = ([r, g, b]: Rgb): number => 0.299 * r + 0.587 * g + 0.114 * b;

/** For one ink: the same lightness, dark woods lifted off black so that seams and rings stay apart. */
export const GREY_PALETTE: CuePalette = {
	tones: Object.fromEntries(
		Object.entries(NATURAL_PALETTE.tones).map(
			([id, { ground, ring, gloss }]) => {
				const grey = (rgb: Rgb): Rgb => {
					const level = Math.round(58 + (luma(rgb) / 255) * 197);
					return [level, level, level];
				};
				return [id, { ground: grey(ground), ring: grey(ring), gloss }];
			},
		),
	) as unknown as CuePalette["tones"],
	seam: { rgb: [0, 0, 0], strength: 0.85 },
};
