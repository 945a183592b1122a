import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { amountText, parseAmount } from "@/lib/units/amount";

describe("an amount", () => {
	test.each([
		["140", 2, 14_000],
		["140.5", 2, 14_050],
		["140,50", 2, 14_050],
		["1,400", 2, 140_000],
		["1.400,50", 2, 140_050],
		["1,400.50", 2, 140_050],
		["1 400.50", 2, 140_050],
		["0.07", 2, 7],
		["1.10", 2, 110],
		["19.99", 2, 1999],
		["500", 0, 500],
		["1.250", 3, 1250],
	])("%s with %d digits is %d", (text, digits, minor) => {
		expect(parseAmount(text, digits)).toEqual({ ok: true, minor });
	});

	test.each([
		["", 2, "empty"],
		["ten", 2, "not-a-number"],
		["-5", 2, "not-a-number"],
		["1.2.3", 2, "not-a-number"],
		["1.005", 2, "too-fine"],
		["12.500", 2, "too-fine"],
		["0.5", 0, "too-fine"],
		["1,400", 3, "ambiguous"],
	])("%s with %d digits is refused as %s", (text, digits, code) => {
		expect(parseAmount(text, digits)).toEqual({ ok: false, code });
	});

	test("is read back as it was written, to the last minor unit", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 0, max: 2 ** 40 }),
				fc.integer({ min: 0, max: 4 }),
				(minor, digits) => {
					expect(parseAmount(amountText(minor, digits), digits)).toEqual({
						ok: true,
						minor,
					});
				},
			),
		);
	});

	test("is written as the runtime's own currency format writes it", () => {
		const { format } = new Intl.NumberFormat("en", {
			minimumFractionDigits: 2,
			useGrouping: false,
		});
		fc.assert(
			fc.property(fc.integer({ min: 0, max: 10_000_000 }), (minor) => {
				expect(amountText(minor, 2)).toBe(format(minor / 100));
			}),
		);
	});

	test("that is no whole number of minor units is a programmer's error", () => {
		expect(() => amountText(1.5, 2)).toThrow(RangeError);
		expect(() => amountText(-1, 2)).toThrow(RangeError);
	});
});
