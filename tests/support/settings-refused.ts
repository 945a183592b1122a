import { type Outcome, refuse } from "@/lib/numerics/outcome";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { checkedSetting } from "@/lib/workshop/settings-check";
import { afterWorkingDays, notBefore } from "@/lib/workshop/working-days";

const { header, catalogue, prices, leadTimes } = DEFAULT_SETTINGS;
const [tip] = catalogue.tips;
const closed = (from: string, to: string) =>
	checkedSetting("lead-times", {
		...leadTimes,
		closed: [{ from, to, note: "" }],
	});

/** One way to each refusal of a workshop's settings. */
export const SETTINGS_REFUSED: Readonly<
	Record<string, () => Outcome<unknown>>
> = {
	"text-length": () =>
		checkedSetting("header", { ...header, name: "x".repeat(121) }),
	"listed-twice": () =>
		checkedSetting("catalogue", {
			...catalogue,
			tips: tip ? [tip, tip] : [],
		}),
	"not-an-address": () =>
		checkedSetting("header", { ...header, publicAddress: "ftp://cues" }),
	"unknown-currency": () =>
		checkedSetting("prices", { ...prices, currency: "XQX" }),
	"no-such-choice": () =>
		checkedSetting("prices", {
			...prices,
			rows: prices.rows.map((row) =>
				row.part === "splice" ? { ...row, choice: "sprung" } : row,
			),
		}),
	"price-missing": () =>
		checkedSetting("prices", {
			...prices,
			rows: prices.rows.filter(({ part }) => part !== "layout"),
		}),
	"not-a-date": () => closed("2026-02-30", "2026-03-01"),
	"dates-crossed": () => closed("2026-03-02", "2026-03-01"),
	"date-passed": () =>
		refuse(...notBefore("validFrom", "2026-03-01", "2026-03-02")),
	"no-open-day": () =>
		afterWorkingDays("2026-03-02", 1, {
			openWeekdays: [1],
			closed: [{ from: "2026-01-01", to: "2099-12-31", note: "" }],
		}),
};
