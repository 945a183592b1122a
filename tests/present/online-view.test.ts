import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import {
	findingText,
	onlineProblemText,
	REFUSED_CODES,
} from "@/lib/present/online-findings";
import {
	moneyOf,
	onlineFacts,
	onlineRows,
	outlookText,
	remedyView,
	suggestionView,
	usualWeightView,
} from "@/lib/present/online-view";
import { assess, judge } from "@/lib/workshop/online";
import { suggestionsFrom } from "@/lib/workshop/online-measures";
import { remedyFor } from "@/lib/workshop/online-nearest";
import { METRIC, reading, TRADE } from "../support/readers";
import {
	anyChoices,
	INVENTED_OFFER,
	likelyChoices,
	OTHER_OFFER,
	usual,
} from "../workshop/support/online";

const GERMAN = reading("metric", "de");
const READERS = [METRIC, TRADE, GERMAN, reading("trade", "de")];
const MONEY = moneyOf(INVENTED_OFFER);
const plain = (text: string | null | undefined) =>
	(text ?? "").replaceAll("\u00a0", " ");

const seen = (change: Parameters<typeof usual>[0]) =>
	assess(usual(change), INVENTED_OFFER);
const said = (change: Parameters<typeof usual>[0], reader = METRIC) =>
	seen(change).findings.map((finding) =>
		plain(findingText(finding, MONEY, reader)),
	);

describe("whatever is chosen", () => {
	test.each([
		["the invented workshop", INVENTED_OFFER],
		["another", OTHER_OFFER],
	])("%s says one sentence of it in both languages and units", (_, offer) => {
		const codes = new Set<string>();
		fc.assert(
			fc.property(
				fc.oneof(anyChoices(offer), likelyChoices(offer)),
				(choices) => {
					const cue = assess(choices, offer);
					for (const reader of READERS) {
						const texts = [
							...cue.findings.map((one) => findingText(one, MONEY, reader)),
							...onlineFacts(cue, MONEY, reader).map(({ value }) => value),
						];
						for (const text of texts) {
							expect(text).not.toMatch(/undefined|NaN|\{|\}/);
							expect(text.length).toBeGreaterThan(1);
						}
					}
					for (const { kind, code } of judge(choices, offer).refused)
						if (kind === "refused") codes.add(code);
				},
			),
			{ numRuns: 150, seed: 3 },
		);
		expect([...codes].filter((code) => !REFUSED_CODES.includes(code))).toEqual(
			[],
		);
		expect(codes.size).toBeGreaterThan(6);
	});
});

describe("sentences", () => {
	test.each([
		[
			{ massG: 305 },
			/^305 g cannot be made: these woods weigh about \d+ g with nothing added\.$/,
		],
		[{ lengthMm: 900 }, /^The rules of Snooker ask for at least 914 mm\.$/],
		[
			{ buttWood: "snakewood" },
			/^This workshop does not offer it: snakewood\.$/,
		],
		[
			{ layout: "one-piece", case: "Two-piece case" },
			/^The case takes pieces up to 800 mm; the longest of this cue is \d+ mm\.$/,
		],
		[
			{ splice: "plain", pointsBetween: "black-walnut" },
			/^That needs a hand splice; chosen is: plain butt, no splice\.$/,
		],
		[
			{ veneer: "sugar-maple", veneerMm: 3.5 },
			/^3\.5 mm is outside 0\.3 mm to 3\.0 mm, which is what can be built here\.$/,
		],
		[
			{ massG: 560, balanceFromButtMm: 600 },
			/^At 560 g the balance point can stand \d+ mm to \d+ mm from the butt end, not 600 mm\.$/,
		],
		[
			{ tip: "Layered leather" },
			/^15\.00 GBP more than Pressed leather: the leather costs more\.$/,
		],
		[
			{ frontWedge: "black-walnut" },
			/^30\.00 GBP more than without and 1 working day longer: one more flat is planed and glued\.$/,
		],
	] as const)("%o", (change, sentence) => {
		expect(said(change)).toContainEqual(expect.stringMatching(sentence));
	});

	test("a listed wood defers to the authority, as of the day of the data", () => {
		expect(
			said({ buttWood: "indian-rosewood", isGoingAbroad: true }),
		).toContain(
			"Indian rosewood is listed in CITES Appendix II (data of 23 February 2023). Crossing a border with it can need papers; only the national CITES authority can tell.",
		);
		expect(
			said({ buttWood: "indian-rosewood", isGoingAbroad: true }, GERMAN)[0],
		).toMatch(/^Indien-Palisander steht in Anhang II .* CITES-Behörde\.$/);
	});
});

describe("figures", () => {
	test("are those of the cue, rounded outwards where they are a range", () => {
		const cue = seen({});
		const facts = Object.fromEntries(
			onlineFacts(cue, MONEY, METRIC).map((fact) => [fact.id, fact]),
		);
		expect(plain(facts.weight?.value)).toBe(
			`${Math.round(cue.massG?.value ?? 0)} g`,
		);
		expect(plain(facts.weight?.note)).toMatch(/^nine in ten: \d+–\d+ g$/);
		const { lowMinor = 0, highMinor = 0 } = cue.price ?? {};
		expect(plain(facts.price?.value)).toBe(
			`${Math.floor(lowMinor / 100)}–${Math.ceil(highMinor / 100)} GBP`,
		);
		expect(facts.ready?.value).toMatch(/2026$/);
	});

	test("say the band of weight and balance without a word where there is little room", () => {
		const facts = onlineFacts(seen({}), MONEY, METRIC);
		expect(facts.map(({ shortNote }) => plain(shortNote))).toEqual([
			expect.stringMatching(/^\d+–\d+ g$/),
			expect.stringMatching(/^\d+–\d+ mm$/),
			"",
			"",
		]);
		expect(plain(facts[0]?.note)).toContain(plain(facts[0]?.shortNote));
	});

	test("tell what is wood and what is metal where a weight is wished for", () => {
		const [weight] = onlineFacts(seen({ massG: 540 }), MONEY, METRIC);
		expect(plain(weight?.value)).toBe("540 g");
		const [, wood, metal] =
			/(\d+) g of wood, (\d+) g of metal/.exec(plain(weight?.note)) ?? [];
		expect(Number(wood) + Number(metal)).toBeGreaterThanOrEqual(539);
		expect(Number(wood) + Number(metal)).toBeLessThanOrEqual(541);
	});

	test("stay open where the shape cannot be made", () => {
		const facts = onlineFacts(seen({ jointFromButtMm: 60 }), MONEY, METRIC);
		expect(facts[0]).toMatchObject({ value: "open", note: null });
	});
});

describe("ways out", () => {
	const view = (change: Parameters<typeof usual>[0], reader = METRIC) => {
		const cue = seen(change);
		const finding = cue.findings.find(({ kind }) => kind === "refused");
		if (finding === undefined) throw new Error("nothing was refused");
		const remedy = remedyFor({ cue, finding, offer: INVENTED_OFFER });
		return remedyView(remedy, cue, MONEY, reader);
	};

	test("say what to set and what comes of it", () => {
		const { nearest } = view({ lengthMm: 900 });
		expect(plain(nearest?.label)).toBe("Set length to 914 mm");
		expect(plain(nearest?.after)).toMatch(
			/^Then it weighs \d+ g, balances \d+ mm from the butt end, costs \d+–\d+ GBP and is ready about \d+ (May|June) 2026\.$/,
		);
		expect(nearest?.change).toEqual({ lengthMm: 914 });
		expect(plain(view({ lengthMm: 900 }, TRADE).nearest?.label)).toBe(
			"Set length to 36 in",
		);
		expect(plain(view({ lengthMm: 900 }, GERMAN).nearest?.label)).toBe(
			"Länge auf 914 mm setzen",
		);
	});

	test("keep what was wished for where something else can give way", () => {
		const { keeping } = view({ massG: 305 });
		expect(plain(keeping?.label)).toMatch(/^Or keep the weight and set /);
	});

	test("tell what is left open from what is left out", () => {
		expect(
			plain(view({ layout: "one-piece", jointFromButtMm: 440 }).nearest?.label),
		).toBe("Set joint to “left open”");
		expect(
			plain(
				view({ splice: "plain", pointsBetween: "black-walnut" }).nearest?.label,
			),
		).toBe("Set points between to “none”");
	});
});

describe("a weight left open", () => {
	test("outside what the game is used to is said, with a usual one to take", () => {
		const cue = seen({});
		const view = usualWeightView(cue, METRIC);
		expect(plain(view?.text)).toBe(
			`Left open it weighs about ${Math.round(cue.massG?.value ?? 0)} g; usual for Snooker is 468–539 g.`,
		);
		expect(view?.change).toEqual({ massG: 500 });
		expect(plain(view?.label)).toBe("Set weight to 500 g");
		expect(plain(usualWeightView(cue, GERMAN)?.label)).toBe(
			"Gewicht auf 500 g setzen",
		);
		const taken = seen({ massG: 500 });
		expect(taken.findings.filter(({ kind }) => kind === "refused")).toEqual([]);
		expect(usualWeightView(taken, METRIC)).toBeNull();
	});

	test("within it needs no word, and neither does a cue that cannot be drawn", () => {
		const cue = seen({});
		const massG = cue.massG && { ...cue.massG, value: 500 };
		expect(usualWeightView({ ...cue, massG }, METRIC)).toBeNull();
		expect(usualWeightView({ ...cue, massG: null }, METRIC)).toBeNull();
	});
});

test("an option says what it costs more, or why it does not go with the rest", () => {
	expect(
		plain(outlookText({ refused: null, moreMinor: 4500 }, MONEY, METRIC)),
	).toBe("+45.00 GBP");
	expect(
		outlookText({ refused: null, moreMinor: 0 }, MONEY, METRIC),
	).toBeNull();
	const [refused] = judge(usual({ lengthMm: 900 }), INVENTED_OFFER).refused;
	expect(
		plain(
			outlookText({ refused: refused ?? null, moreMinor: null }, MONEY, METRIC),
		),
	).toBe("Not with the rest: The rules of Snooker ask for at least 914 mm.");
});

test("measures at home become figures with their band", () => {
	const [length] = must(
		suggestionsFrom({ statureMm: 1750 }, "snooker", INVENTED_OFFER),
	);
	if (length === undefined) throw new Error("no length");
	const { text, take } = suggestionView(length, METRIC);
	expect(plain(text)).toMatch(
		/^Length: \d{4} mm \(nine in ten: \d{4}–\d{4} mm\)$/,
	);
	expect(plain(take)).toMatch(/^Take \d{4} mm$/);
});

test("who only looks is told every choice that bears on the cue, and which were left to the workshop", () => {
	const answers = { lengthMm: "58 in", veneer: "sugar-maple" };
	const rows = onlineRows(
		usual({ lengthMm: 1473.2, veneer: "sugar-maple" }),
		answers,
		METRIC,
	);
	const row = (field: string) => rows.find((one) => one.field === field);
	expect(row("lengthMm")).toMatchObject({ label: "Length", isUsual: false });
	expect(row("buttWood")).toMatchObject({ isUsual: true });
	expect(row("veneerCount")).toBeDefined();
	expect(row("wedgeCount")).toBeUndefined();
	expect(row("massG")).toBeUndefined();
});

test("an answer that cannot be read says why, with its bounds", () => {
	const problem = (text: string) =>
		plain(
			onlineProblemText(
				{ field: "massG", code: "out-of-range", text, min: 300, max: 850 },
				METRIC,
			),
		);
	expect(problem("2 kg")).toBe("“2 kg” is outside 300 g to 850 g.");
});
