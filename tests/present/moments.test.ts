import { expect, test } from "vitest";
import { formatMoment } from "@/lib/present/moments";
import { METRIC, reading } from "../support/readers";

const NOW = new Date("2030-05-03T20:00:00Z");
const at = (iso: string, reader = METRIC, timeZone = "UTC") =>
	formatMoment(new Date(iso), reader, { now: NOW, timeZone });

test("says the hour alone on the same day, by the clock of the place", () => {
	expect(at("2030-05-03T14:32:10Z")).toBe("14:32");
	expect(at("2030-05-03T14:32:10Z", METRIC, "Europe/Berlin")).toBe("16:32");
	expect(at("2030-05-03T08:05:00Z", reading("metric", "de"))).toBe("08:05");
});

test("says the day where it was another one, there", () => {
	expect(at("2030-05-02T14:32:10Z")).toMatch(/^2 May.*14:32$/);
	expect(at("2030-05-02T14:32:10Z", reading("metric", "de"))).toMatch(
		/^2\. Mai.*14:32$/,
	);
	expect(at("2030-05-02T23:30:00Z", METRIC, "Europe/Berlin")).toBe("01:30");
});
