import { describe, expect, test } from "vitest";
import { CURRENCIES, currencyDigits } from "@/lib/price/currency";

describe("against the runtime's copy of ISO 4217", () => {
	test("every currency is known there", () => {
		const known = new Set(Intl.supportedValuesOf("currency"));
		expect(CURRENCIES.filter((one) => !known.has(one))).toEqual([]);
		expect(CURRENCIES.length).toBeGreaterThan(140);
		expect(new Set(CURRENCIES).size).toBe(CURRENCIES.length);
	});

	/** Currencies whose minor unit stands in ISO 4217 and is out of use: the runtime writes none. */
	const WITHOUT_COINS =
		"AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SOS SYP YER".split(
			" ",
		);

	test.each(CURRENCIES)("%s has the digits it has there", (currency) => {
		const { maximumFractionDigits } = new Intl.NumberFormat("en", {
			style: "currency",
			currency,
		}).resolvedOptions();
		if (WITHOUT_COINS.includes(currency)) {
			expect(maximumFractionDigits).toBe(0);
			expect(currencyDigits(currency)).toBeGreaterThan(0);
		} else expect(currencyDigits(currency)).toBe(maximumFractionDigits);
	});
});

test.each(["", "gbp", "XQX", "EURO", "DEM"])("%s names none", (letters) => {
	expect(currencyDigits(letters)).toBeNull();
});
