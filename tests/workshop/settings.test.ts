import { describe, expect, test } from "vitest";
import { inventedCatalogue } from "@/lib/advice/catalogue";
import { catalogueFor } from "@/lib/advice/workshop-offer";
import { SETTING_SCHEMAS } from "@/lib/forms/settings/schemas";
import { INVENTED_PRICE_LIST } from "@/lib/price/list";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import {
	inForce,
	offerOf,
	SETTING_KINDS,
	settingOf,
} from "@/lib/workshop/settings";
import { checkedSetting } from "@/lib/workshop/settings-check";

describe("the settings while nothing was set", () => {
	test.each(SETTING_KINDS)(
		"%s can be saved as it is and is marked invented",
		(kind) => {
			const content = settingOf(DEFAULT_SETTINGS, kind);
			expect(checkedSetting(kind, content)).toEqual({
				ok: true,
				value: content,
			});
			expect(SETTING_SCHEMAS[kind].parse(content)).toEqual(content);
			expect(content.basis).toBe("invented");
		},
	);

	test.each(Object.keys(GAMES) as GameId[])(
		"are the invented workshop's offer for %s",
		(gameId) => {
			const { densities, ...rest } = catalogueFor(
				offerOf(DEFAULT_SETTINGS),
				gameId,
			);
			expect(rest).toEqual(inventedCatalogue(gameId));
			expect(densities).toEqual({});
		},
	);

	test("charge the invented list, work and material together", () => {
		const { ferruleMinor, ...list } = offerOf(DEFAULT_SETTINGS).priceList;
		expect(list).toEqual(INVENTED_PRICE_LIST);
		expect(ferruleMinor).toEqual({ brass: 0, "stainless-steel": 0 });
	});
});

describe("the version in force", () => {
	const one = { version: 1, validFrom: "2026-01-05" };
	const rise = { version: 2, validFrom: "2027-01-01" };
	const corrected = { version: 3, validFrom: "2026-06-01" };
	const again = { version: 4, validFrom: "2027-01-01" };

	test("is the one that began last, whatever was saved since", () => {
		const all = [one, rise, corrected];
		expect(inForce(all, "2026-01-04")).toBeNull();
		expect(inForce(all, "2026-01-05")).toBe(one);
		expect(inForce(all, "2026-05-31")).toBe(one);
		expect(inForce(all, "2026-12-31")).toBe(corrected);
		expect(inForce(all, "2027-01-01")).toBe(rise);
	});

	test("of one day is the newest, in any order", () => {
		expect(inForce([again, rise, one], "2030-01-01")).toBe(again);
		expect(inForce([one, rise, again], "2030-01-01")).toBe(again);
	});
});
