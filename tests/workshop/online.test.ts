import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { answerCue } from "@/lib/advice/answer-cue";
import { must } from "@/lib/numerics/outcome";
import { estimatePrice } from "@/lib/price/estimate";
import { assess, judge } from "@/lib/workshop/online";
import { changeSize, changesFor } from "@/lib/workshop/online-changes";
import type { OnlineOffer } from "@/lib/workshop/online-choices";
import { requestOf, usualOnline } from "@/lib/workshop/online-choices";
import {
	canBeHelped,
	nearestWay,
	remedyFor,
	type Tried,
} from "@/lib/workshop/online-nearest";
import { optionsAhead, outlookOf } from "@/lib/workshop/online-outlook";
import {
	anyChoices,
	INVENTED_OFFER,
	likelyChoices,
	OTHER_OFFER,
	usual,
} from "./support/online";

const OFFERS: readonly (readonly [string, OnlineOffer])[] = [
	["the invented workshop", INVENTED_OFFER],
	["another workshop", OTHER_OFFER],
];

const refusedOf = (
	choices: Parameters<typeof judge>[0],
	offer = INVENTED_OFFER,
) => judge(choices, offer).refused.map(({ field, code }) => `${field} ${code}`);

describe("an untouched cue", () => {
	test.each([
		"snooker",
		"english-eight-ball",
		"american-pool",
		"carom",
	] as const)(
		"of %s can be made, costs nothing extra and says nothing",
		(gameId) => {
			const cue = assess(usualOnline(INVENTED_OFFER, gameId), INVENTED_OFFER);
			expect(cue.findings.filter(({ kind }) => kind !== "caution")).toEqual([]);
			expect(cue.price).not.toBeNull();
			expect(cue.leadTime).not.toBeNull();
		},
	);
});

describe.each(OFFERS)("any cue of %s", (_, offer) => {
	test("weighs, balances and costs what the models and the price list say", () => {
		let made = 0;
		fc.assert(
			fc.property(likelyChoices(offer), (choices) => {
				const cue = assess(choices, offer);
				if (cue.findings.some(({ kind }) => kind === "refused")) return;
				made++;
				// The open answer about a cue adds brass where it is not told otherwise.
				const isBrass = offer.workshop.addedMetal === "brass";
				if (isBrass || choices.massG === null) {
					const answer = must(
						answerCue({
							cue: cue.request,
							gameId: choices.gameId,
							gripFromButtMm: 105,
							...(choices.massG === null ? {} : { wantedMassG: choices.massG }),
							...(choices.massG === null || choices.balanceFromButtMm === null
								? {}
								: { wantedBalanceFromButtMm: choices.balanceFromButtMm }),
						}),
					);
					expect(cue.massG).toEqual(answer.mass.massG);
					expect(cue.balanceFromButtMm).toEqual(answer.mass.balanceFromButtMm);
				}
				const amountOf = (
					list: readonly { name: string; priceMinor: number | null }[],
					name: string | null,
				) => list.find((one) => one.name === name)?.priceMinor ?? 0;
				const bare = must(
					estimatePrice({
						list: offer.workshop.priceList,
						request: requestOf(choices, offer),
						hasAddedWeight: (cue.design?.addedWeight.length ?? 0) > 0,
					}),
				);
				expect(cue.price?.totalMinor).toBe(
					bare.totalMinor +
						amountOf(offer.tips, choices.tip) +
						amountOf(offer.cases, choices.case),
				);
			}),
			{ numRuns: 100, seed: 7 },
		);
		expect(made).toBeGreaterThan(20);
	});

	test("is helped by the nearest choice: it works when taken, and no smaller one tried does", () => {
		let found = 0;
		let helped = 0;
		fc.assert(
			fc.property(anyChoices(offer), (choices) => {
				const cue = assess(choices, offer);
				const before = new Set(refusedOf(choices, offer));
				for (const finding of cue.findings.filter(canBeHelped)) {
					found++;
					const tried: Tried[] = [];
					const way = nearestWay({
						cue,
						finding,
						offer,
						onTried: (one) => tried.push(one),
					});
					if (way === null) continue;
					helped++;
					const after = { ...choices, ...way.change };
					const left = refusedOf(after, offer);
					expect(left).not.toContain(`${finding.field} ${finding.code}`);
					expect(left.filter((one) => !before.has(one))).toEqual([]);
					expect(way.after).toEqual(assess(after, offer));
					expect(way.size).toBeCloseTo(changeSize(choices, way.change), 12);
					for (const one of tried)
						if (one.works) expect(one.size).toBeGreaterThanOrEqual(way.size);
					expect(after.gameId).toBe(choices.gameId);
					expect(after.isGoingAbroad).toBe(choices.isGoingAbroad);
				}
			}),
			{ numRuns: 24, seed: 11 },
		);
		expect(found).toBeGreaterThan(25);
		expect(helped / found).toBeGreaterThan(0.9);
	});

	test("no single change that is smaller than the nearest would do, looked at one by one", () => {
		fc.assert(
			fc.property(anyChoices(offer), (choices) => {
				const cue = assess(choices, offer);
				const [finding] = cue.findings.filter(({ kind }) => kind === "refused");
				if (finding === undefined) return;
				const way = nearestWay({ cue, finding, offer });
				if (way === null) return;
				const before = new Set(refusedOf(choices, offer));
				before.delete(`${finding.field} ${finding.code}`);
				const isPromised = (change: Partial<typeof choices>) => {
					const { refused, build } = judge({ ...choices, ...change }, offer);
					const isLight =
						build?.plan.ok &&
						build.plan.value.cautions.some(
							({ code }) => code === "natural-above-wanted",
						);
					return (
						refused.every(({ field, code }) =>
							before.has(`${field} ${code}`),
						) && !(finding.code === "weight-below-natural" && isLight)
					);
				};
				for (const change of changesFor({ finding, choices, offer }))
					if (changeSize(choices, change) < way.size - 1e-9)
						expect(isPromised(change)).toBe(false);
			}),
			{ numRuns: 20, seed: 13 },
		);
	});

	test("every option says whether it would do", () => {
		fc.assert(
			fc.property(anyChoices(offer), fc.nat(), (choices, pick) => {
				const cue = assess(choices, offer);
				const ahead = optionsAhead(choices, offer);
				const one = ahead[pick % ahead.length];
				if (one === undefined) throw new RangeError("there are no options");
				const outlook = outlookOf(cue, one, offer);
				const taken = assess({ ...choices, [one.field]: one.option }, offer);
				const before = new Set(refusedOf(choices, offer));
				const fresh = taken.findings.filter(
					({ kind, field, code }) =>
						kind === "refused" && !before.has(`${field} ${code}`),
				);
				expect(outlook.refused).toEqual(fresh[0] ?? null);
				if (outlook.moreMinor !== null)
					expect(outlook.moreMinor).toBe(
						(taken.price?.totalMinor ?? Number.NaN) -
							(cue.price?.totalMinor ?? Number.NaN),
					);
			}),
			{ numRuns: 40, seed: 17 },
		);
	});
});

describe("guard rails", () => {
	test.each([
		[
			"a weight the wood cannot give",
			{ massG: 305 },
			"massG weight-below-natural",
		],
		[
			"a weight the bore cannot take",
			{ massG: 800 },
			"massG weight-above-bore",
		],
		["a snooker cue under 3 ft", { lengthMm: 900 }, "lengthMm rule-broken"],
		[
			"a pool tip over 14 mm is past what is turned",
			{ gameId: "american-pool", tipDiameterMm: 14.5 },
			"tipDiameterMm out-of-catalogue",
		],
		[
			"a wood it does not have",
			{ buttWood: "snakewood" },
			"buttWood not-in-catalogue",
		],
		[
			"a joint too near the butt end",
			{ jointFromButtMm: 120 },
			"jointFromButtMm out-of-range",
		],
		[
			"a joint in a cue of one piece",
			{ layout: "one-piece", jointFromButtMm: 440 },
			"jointFromButtMm no-joint-in-layout",
		],
		[
			"points between on a machine splice",
			{ splice: "machine-four-point", pointsBetween: "gaboon-ebony" },
			"pointsBetween hand-splice-only",
		],
		[
			"sheets as thick as the wedge",
			{ veneer: "sugar-maple", veneerCount: 5, veneerMm: 2 },
			"veneer veneers-too-thick",
		],
		[
			"a sheet thicker than is glued",
			{ veneer: "sugar-maple", veneerMm: 3.5 },
			"veneerMm out-of-range",
		],
		[
			"a butt slimmer than the workshop turns",
			{ buttDiameterMm: 23 },
			"buttDiameterMm out-of-catalogue",
		],
		[
			"a butt hardly thicker than the tip",
			{ buttDiameterMm: 24, tipDiameterMm: 14, gameId: "carom" },
			null,
		],
		[
			"a case that is too short",
			{ layout: "one-piece", case: "Two-piece case" },
			"case case-too-short",
		],
		[
			"a balance that the metal cannot bring",
			{ massG: 560, balanceFromButtMm: 600 },
			"balanceFromButtMm balance-out-of-reach",
		],
	] as const)("%s", (_, change, expected) => {
		const refused = refusedOf(usual(change));
		if (expected === null) expect(refused).toEqual([]);
		else expect(refused).toContain(expected);
	});

	test("a weight far past what can be had is brought down to it, not given up", () => {
		const cue = assess(usual({ massG: 800 }), INVENTED_OFFER);
		const [finding] = cue.findings.filter(({ kind }) => kind === "refused");
		if (finding === undefined) throw new Error("nothing was refused");
		const { nearest } = remedyFor({ cue, finding, offer: INVENTED_OFFER });
		expect(Object.keys(nearest?.change ?? {})).toEqual(["massG"]);
		expect(nearest?.change.massG).toBeGreaterThan(650);
		expect(nearest?.change.massG).toBeLessThan(800);
	});

	test("a weight under the natural one is answered by the natural weight, and by what keeps it", () => {
		const cue = assess(usual({ massG: 305 }), INVENTED_OFFER);
		const [finding] = cue.findings.filter(({ kind }) => kind === "refused");
		if (finding === undefined) throw new Error("nothing was refused");
		const { nearest, keeping } = remedyFor({
			cue,
			finding,
			offer: INVENTED_OFFER,
		});
		expect(nearest?.change).toEqual({
			massG: Math.ceil(cue.naturalMassG?.value ?? 0),
		});
		expect(keeping?.after.choices.massG).toBe(305);
	});

	test("a listed wood that goes abroad is a caution with a wood that is not listed", () => {
		const listed = usual({ buttWood: "indian-rosewood", isGoingAbroad: true });
		const cue = assess(listed, INVENTED_OFFER);
		const finding = cue.findings.find(
			({ code }) => code === "protected-wood-border",
		);
		if (finding === undefined) throw new Error("the wood is listed");
		expect(finding.kind).toBe("caution");
		const way = nearestWay({ cue, finding, offer: INVENTED_OFFER });
		expect(Object.keys(way?.change ?? {})).toEqual(["buttWood"]);
		expect(
			way?.after.findings.some(({ code }) => code.startsWith("protected-wood")),
		).toBe(false);
		const staying = assess({ ...listed, isGoingAbroad: false }, INVENTED_OFFER);
		expect(staying.findings.map(({ code }) => code)).toContain(
			"protected-wood",
		);
	});

	test("what costs more than the usual says how much, in money and in days", () => {
		const cue = assess(
			usual({
				frontWedge: "black-walnut",
				tip: "Layered leather",
				case: "Three-quarter case",
			}),
			INVENTED_OFFER,
		);
		const more = Object.fromEntries(
			cue.findings
				.filter(({ kind }) => kind === "costs-more")
				.map(({ field, facts }) => [field, facts]),
		);
		// The invented list: 30.00 a front wedge and one day, 15.00 a layered tip.
		expect(more.frontWedge).toMatchObject({ moreMinor: 3000, moreDays: 1 });
		expect(more.tip).toMatchObject({ moreMinor: 1500, moreDays: 0 });
		expect(more.case).toMatchObject({ moreMinor: 6000, moreDays: 0 });
	});

	test("the longest piece is what is left of the cue taken apart", () => {
		const longest = (change: Parameters<typeof usual>[0]) =>
			assess(usual(change), INVENTED_OFFER).longestPieceMm;
		const cue = { lengthMm: 1450, layout: "one-piece" } as const;
		expect(longest(cue)).toBe(1450);
		expect(longest({ ...cue, endPieceMm: 150 })).toBe(1300);
		const jointed = { ...cue, layout: "three-quarter" } as const;
		expect(longest({ ...jointed, jointFromButtMm: 440 })).toBe(1010);
		expect(longest({ ...jointed, jointFromButtMm: 800, endPieceMm: 100 })).toBe(
			700,
		);
	});

	test("a case without an amount in the price list is refused, and another way is offered", () => {
		const choices = {
			...usualOnline(OTHER_OFFER),
			layout: "centre" as const,
			case: "Short case",
		};
		const offer = {
			...OTHER_OFFER,
			workshop: {
				...OTHER_OFFER.workshop,
				games: INVENTED_OFFER.workshop.games,
			},
		};
		const cue = assess(choices, offer);
		expect(cue.price).toBeNull();
		const finding = cue.findings.find(
			({ code }) => code === "extra-not-priced",
		);
		if (finding === undefined) throw new Error("the case has no amount");
		expect(nearestWay({ cue, finding, offer })?.change).toEqual({ case: null });
	});
});
