import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { CuePlate } from "@/app/_ui/cue-picture/cue-plate";
import { METRIC, TRADE } from "@/tests/support/readers";
import { cue } from "../support/designs";

const design = cue({ layout: "three-quarter" });
const plate = (more: Partial<React.ComponentProps<typeof CuePlate>> = {}) =>
	renderToStaticMarkup(
		createElement(CuePlate, {
			design,
			reader: METRIC,
			balanceFromButtMm: 430,
			...more,
		}),
	).replaceAll("\u00a0", " ");
const pngOf = (markup: string): Buffer => {
	const [, data] = /href="data:image\/png;base64,([^"]+)"/.exec(markup) ?? [];
	if (!data) throw new Error("no picture in the plate");
	return Buffer.from(data, "base64");
};

describe("the plate for paper", () => {
	test("holds the whole picture in itself, twice as fine as its drawing", () => {
		const markup = plate();
		const [, width, height] =
			/<image[^>]* width="(\d+)" height="(\d+)"/.exec(markup) ?? [];
		const png = pngOf(markup);
		expect(png.readUInt32BE(16)).toBe(2 * Number(width));
		expect(png.readUInt32BE(20)).toBe(2 * Number(height));
		expect(markup.length).toBeLessThan(150_000);
	});
	test("dimensions, balance and joint are written on it, and told in words", () => {
		const markup = plate();
		for (const text of [
			"1460 mm",
			"Tip Ø9.5 mm",
			"Butt Ø29.0 mm",
			"Balance 430 mm",
			"Joint 438 mm",
		])
			expect(markup).toContain(`>${text}</text>`);
		expect(markup).toMatch(
			/role="img" aria-label="The whole cue, thickness drawn \d times[^"]*Shaft of/,
		);
		expect(markup).not.toMatch(/NaN|undefined/);
	});
	test("part, turn, ink and scale each change it", () => {
		const seen = new Set(
			[
				plate(),
				plate({ part: "butt" }),
				plate({ angleDeg: 45 }),
				plate({ ink: "grey" }),
				plate({ isToScale: true }),
				plate({ isUnrolled: true }),
			].map((markup) => pngOf(markup).toString("base64")),
		);
		expect(seen.size).toBe(6);
	});
	test("in the trade's units there are inches", () => {
		expect(plate({ reader: TRADE })).toContain(">57½ in</text>");
	});
});
