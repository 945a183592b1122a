import { createCanvas, loadImage } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import { appIconPng, ICON_NAMES, ICONS } from "@/lib/documents/app-icon";

/** Drawn by a canvas from npm, which reads the file on its own. */
async function pixelsOf(png: Buffer) {
	const image = await loadImage(png);
	const context = createCanvas(image.width, image.height).getContext("2d");
	context.drawImage(image, 0, 0);
	const { data } = context.getImageData(0, 0, image.width, image.height);
	return {
		width: image.width,
		height: image.height,
		at: (x: number, y: number) => [
			...data.slice((y * image.width + x) * 4, (y * image.width + x) * 4 + 4),
		],
	};
}
const GROUND = [0x15, 0x13, 0x11, 255];

describe.each(ICON_NAMES)("%s", (name) => {
	test("has its size, the cue in the middle, and its corners as its purpose asks", async () => {
		const { sizePx, isMaskable } = ICONS[name];
		const { width, height, at } = await pixelsOf(appIconPng(ICONS[name]));
		expect([width, height]).toEqual([sizePx, sizePx]);
		expect(at(0, 0)).toEqual(isMaskable ? GROUND : [0, 0, 0, 0]);
		// On the shaft, of ash.
		const shaft = isMaskable ? 0.5 : 33 / 64;
		expect(
			at(
				Math.floor(shaft * sizePx),
				Math.floor((isMaskable ? 0.505 : 30 / 64) * sizePx),
			),
		).toEqual([0xd6, 0xc2, 0x94, 255]);
	});
});

test("of a maskable icon everything drawn lies in the circle that is sure to be seen", async () => {
	// W3C Web Application Manifest: the safe zone is the centred circle of radius 40 % of the width.
	const { at, width } = await pixelsOf(appIconPng(ICONS["maskable-512.png"]));
	for (let y = 0; y < width; y++)
		for (let x = 0; x < width; x++)
			if (Math.hypot(x + 0.5 - width / 2, y + 0.5 - width / 2) > 0.4 * width)
				expect(at(x, y)).toEqual(GROUND);
}, 60_000);
