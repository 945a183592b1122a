import { describe, expect, test } from "vitest";
import type { CueRequest } from "@/lib/cue/design";
import { must } from "@/lib/numerics/outcome";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { type LeadTimes, leadTime } from "@/lib/workshop/lead-time";
import { SNOOKER_REQUEST } from "../support/designs";

/** Figures of this test alone, so that each sum can be followed. */
const leadTimes: LeadTimes = {
	basis: "workshop",
	openWeekdays: [1, 2, 3, 4, 5],
	closed: [{ from: "2026-08-03", to: "2026-08-14", note: "holiday" }],
	cuesPerWeek: 2,
	baseDays: 8,
	spliceDays: { plain: 0, "machine-four-point": 1, "hand-four-point": 3 },
	layoutDays: { "one-piece": 0, "three-quarter": 1, centre: 1 },
	buttWoodDays: { snakewood: 15 },
	addedWeightDays: 0.5,
	pointsBetweenDays: 2,
	frontWedgeDays: 1,
	allRoundWedgeDays: 0.5,
	veneerDays: 0.25,
	endPieceDays: 1,
};
const request: CueRequest = {
	...SNOOKER_REQUEST,
	buttWood: "indian-rosewood",
	splice: "hand-four-point",
	layout: "three-quarter",
};
const asked = (change: Partial<Parameters<typeof leadTime>[0]> = {}) =>
	leadTime({
		leadTimes,
		request,
		hasAddedWeight: true,
		cuesAhead: 0,
		// A Wednesday.
		from: "2026-07-01",
		...change,
	});

describe("worked by hand", () => {
	test("a plain cue with nothing ahead: 8 + 3 + 1 + ½, that is 13 working days", () => {
		const { benchDays, queueDays, dueOn } = must(asked());
		expect(benchDays).toBe(12.5);
		expect(queueDays).toBe(0);
		// 2, 3 | 6–10 | 13–17 | 20 July.
		expect(dueOn).toBe("2026-07-20");
	});

	test("three cues ahead at two a week are 7½ working days more, over the holiday", () => {
		const { lines, queueDays, dueOn } = must(asked({ cuesAhead: 3 }));
		expect(queueDays).toBe(7.5);
		expect(lines[0]).toEqual({ part: "queue", choice: null, days: 7.5 });
		// 20 days: 2, 3 | 6–10 | 13–17 | 20–24 | 27–29 July.
		expect(dueOn).toBe("2026-07-29");
		// 25 days: 22 up to the end of July, then 17–19 August.
		expect(must(asked({ cuesAhead: 5 })).dueOn).toBe("2026-08-19");
	});

	test("each decoration has its days, veneers on every set of flats", () => {
		const { lines, benchDays } = must(
			asked({
				request: {
					...request,
					buttWood: "snakewood",
					splicing: {
						points: { veneers: [veneer, veneer] },
						pointsBetween: { wood: "gaboon-ebony", veneers: [veneer] },
						frontWedge: { wood: "bocote" },
						allRound: { wood: "bocote", count: 5 },
					},
					fittings: { endPieceMm: 150 },
				},
				hasAddedWeight: false,
			}),
		);
		expect(
			Object.fromEntries(lines.map(({ part, days }) => [part, days])),
		).toEqual({
			base: 8,
			splice: 3,
			layout: 1,
			"butt-wood": 15,
			"points-between": 2,
			"front-wedge": 1,
			"all-round-wedges": 2.5,
			veneers: 0.75,
			"end-piece": 1,
		});
		expect(benchDays).toBe(34.25);
	});
});

const veneer = { wood: "sugar-maple", thicknessMm: 0.6 } as const;

test("sums of tenths that are a whole number take no day more", () => {
	const tenths = {
		...leadTimes,
		baseDays: 0.1,
		spliceDays: { ...leadTimes.spliceDays, "hand-four-point": 0.2 },
		layoutDays: { ...leadTimes.layoutDays, "three-quarter": 0.7 },
	};
	const { dueOn } = must(asked({ leadTimes: tenths, hasAddedWeight: false }));
	expect(dueOn).toBe("2026-07-02");
});

test("a longer queue is never ready sooner, and a shorter one never later", () => {
	const dates = Array.from(
		{ length: 40 },
		(_, cuesAhead) =>
			must(asked({ cuesAhead, leadTimes: DEFAULT_SETTINGS.leadTimes })).dueOn,
	);
	expect([...dates].sort()).toEqual(dates);
	expect(new Set(dates).size).toBeGreaterThan(30);
});

test.each([-1, Number.NaN, 10_001])(
	"%s cues ahead are refused",
	(cuesAhead) => {
		expect(asked({ cuesAhead })).toMatchObject({
			ok: false,
			refusals: [{ code: "out-of-range", field: "cuesAhead" }],
		});
	},
);
