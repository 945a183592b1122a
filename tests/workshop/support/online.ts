import fc from "fast-check";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import {
	type OnlineChoices,
	type OnlineField,
	type OnlineOffer,
	onlineOfferOf,
	optionsFor,
	usualOnline,
} from "@/lib/workshop/online-choices";
import type { Settings } from "@/lib/workshop/settings";

const NOW = { cuesAhead: 3, from: "2026-05-04" } as const;

/** The invented workshop, on a Monday with three cues ahead. */
export const INVENTED_OFFER: OnlineOffer = onlineOfferOf(DEFAULT_SETTINGS, NOW);

/** Another: heavier and lighter woods, two end pieces, weighed billets, steel instead of brass. */
export const OTHER_SETTINGS: Settings = {
	...DEFAULT_SETTINGS,
	catalogue: {
		...DEFAULT_SETTINGS.catalogue,
		buttWoods: [
			{ id: "snakewood", tier: 2 },
			{ id: "cocobolo", tier: 2 },
			{ id: "olive", tier: 1 },
			{ id: "european-walnut", tier: 0 },
		],
		endPiecesMm: [100, 250],
		addedMetal: "stainless-steel",
		lengthMm: [1100, 1520],
		cases: [{ name: "Short case", longestPieceMm: 900 }],
	},
	stock: {
		basis: "invented",
		woods: [
			{
				wood: "white-ash",
				grade: "",
				ringSpacingMm: null,
				count: 4,
				billets: [],
				stated: { kgM3: 740, sd: 15 },
			},
		],
	},
};
export const OTHER_OFFER: OnlineOffer = onlineOfferOf(OTHER_SETTINGS, NOW);

export const usual = (change: Partial<OnlineChoices> = {}): OnlineChoices => ({
	...usualOnline(INVENTED_OFFER, change.gameId),
	...change,
});

/** Whole steps of a figure, as forms and remedies write them. */
const steps = (from: number, to: number, step: number) =>
	fc
		.integer({ min: 0, max: Math.round((to - from) / step) })
		.map((i) => Math.round((from + i * step) * 100) / 100);

/** Any choices a form can hold: much of it cannot be made. */
export function anyChoices(offer: OnlineOffer): fc.Arbitrary<OnlineChoices> {
	const games = optionsFor(offer, "snooker").gameId;
	return fc.constantFrom(...games).chain((gameId) => {
		const of = optionsFor(offer, gameId);
		const strange = optionsFor(
			offer === OTHER_OFFER ? INVENTED_OFFER : OTHER_OFFER,
			gameId,
		);
		const orNone = <T>(one: fc.Arbitrary<T>) =>
			fc.option(one, { nil: null, freq: 2 });
		return fc.record<OnlineChoices>({
			gameId: fc.constant(gameId),
			lengthMm: steps(850, 1600, 1),
			layout: fc.constantFrom(...of.layout),
			jointFromButtMm: fc.option(steps(80, 1000, 1), { nil: null, freq: 1 }),
			jointMetal: fc.constantFrom(...of.jointMetal),
			endPieceMm: fc.constantFrom(...of.endPieceMm, null),
			buttDiameterMm: steps(23, 32, 0.25),
			tipDiameterMm: steps(7, 14, 0.25),
			taperShape: fc.constantFrom(...of.taperShape),
			shaftWood: fc.constantFrom(...of.shaftWood),
			buttWood: fc.constantFrom(
				...of.buttWood,
				...of.buttWood,
				...strange.buttWood,
			),
			splice: fc.constantFrom(...of.splice),
			pointsFromButtMm: fc.option(steps(100, 900, 10), { nil: null, freq: 1 }),
			pointsBetween: fc.constantFrom(...of.pointsBetween.slice(0, 2), null),
			frontWedge: fc.constantFrom(...of.frontWedge.slice(0, 2), null),
			wedges: fc.constantFrom(...of.wedges.slice(0, 1), null, null),
			wedgeCount: steps(3, 8, 1),
			veneer: fc.constantFrom(...of.veneer.slice(0, 2), null),
			veneerCount: steps(1, 5, 1),
			veneerMm: steps(0.3, 3, 0.1),
			ferruleMetal: fc.constantFrom(...of.ferruleMetal),
			tip: fc.constantFrom(...of.tip),
			case: fc.constantFrom(...of.case, null),
			massG: orNone(steps(330, 760, 1)),
			balanceFromButtMm: fc.option(steps(280, 600, 5), { nil: null, freq: 1 }),
			isGoingAbroad: fc.boolean(),
		});
	});
}

/** The usual cue with up to four choices changed: most of them can be made. */
export const likelyChoices = (
	offer: OnlineOffer,
): fc.Arbitrary<OnlineChoices> =>
	fc
		.record({
			any: anyChoices(offer),
			order: fc.shuffledSubarray(
				Object.keys(usualOnline(offer)) as OnlineField[],
				{ maxLength: 4 },
			),
		})
		.map(({ any, order }) => ({
			...usualOnline(offer, any.gameId),
			...Object.fromEntries(order.map((field) => [field, any[field]])),
			gameId: any.gameId,
		}));
