import type { CueRequest } from "@/lib/cue/design";
import {
	accept,
	type Outcome,
	outside,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import type { PriceList } from "./list";

/** One line of an estimate. `part` names the entry of the list: "splice", "butt-wood", … */
export interface PriceLine {
	readonly part: string;
	/** The choice the amount belongs to, such as a wood; null for a plain entry. */
	readonly choice: string | null;
	readonly count: number;
	readonly amountMinor: number;
}

export interface PriceEstimate {
	readonly currency: string;
	readonly minorPerUnit: number;
	readonly basis: PriceList["basis"];
	readonly lines: readonly PriceLine[];
	readonly totalMinor: number;
	/** What the bill may come to, whole minor units. */
	readonly lowMinor: number;
	readonly highMinor: number;
}

/**
 * What a cue comes to by a workshop's list, in whole minor units. Refuses "not-in-price-list" where
 * the list has no amount for a chosen wood, and a list whose amounts are not whole or are negative.
 */
export function estimatePrice(p: {
	list: PriceList;
	request: CueRequest;
	hasAddedWeight: boolean;
	/** What goes with the cue, at the workshop's amounts. */
	extras?: readonly PriceLine[];
}): Outcome<PriceEstimate> {
	const { list, request, extras = [] } = p;
	const flaws = priceListRefusals(list);
	if (flaws.length > 0) return refuse(...flaws);
	const shaft = list.shaftWoodMinor[request.shaftWood];
	const butt = list.buttWoodMinor[request.buttWood];
	const missing: Refusal[] = [];
	if (shaft === undefined)
		missing.push(notListed("shaftWood", request.shaftWood));
	if (butt === undefined) missing.push(notListed("buttWood", request.buttWood));
	if (shaft === undefined || butt === undefined) return refuse(...missing);
	const { splicing = {}, fittings = {} } = request;
	const lines: PriceLine[] = [
		one("base", null, list.baseMinor),
		one("splice", request.splice, list.spliceMinor[request.splice]),
		one("layout", request.layout, list.layoutMinor[request.layout]),
		one("shaft-wood", request.shaftWood, shaft),
		one("butt-wood", request.buttWood, butt),
		one(
			"ferrule",
			request.ferruleMetal,
			list.ferruleMinor?.[request.ferruleMetal] ?? 0,
		),
	];
	if (p.hasAddedWeight)
		lines.push(one("added-weight", null, list.addedWeightMinor));
	if (splicing.pointsBetween)
		lines.push(
			one(
				"points-between",
				splicing.pointsBetween.wood,
				list.pointsBetweenMinor,
			),
		);
	if (splicing.frontWedge)
		lines.push(
			one("front-wedge", splicing.frontWedge.wood, list.frontWedgeMinor),
		);
	if (splicing.allRound) {
		const { count, wood } = splicing.allRound;
		lines.push({
			part: "all-round-wedges",
			choice: wood,
			count,
			amountMinor: count * list.allRoundWedgeMinor,
		});
	}
	const veneers = [
		splicing.points,
		splicing.pointsBetween,
		splicing.frontWedge,
		splicing.allRound,
	].reduce((sum, flat) => sum + (flat?.veneers?.length ?? 0), 0);
	if (veneers > 0)
		lines.push({
			part: "veneers",
			choice: null,
			count: veneers,
			amountMinor: veneers * list.veneerMinor,
		});
	if (fittings.endPieceMm !== undefined)
		lines.push(one("end-piece", null, list.endPieceMinor));
	lines.push(...extras);
	const totalMinor = lines.reduce(
		(sum, { amountMinor }) => sum + amountMinor,
		0,
	);
	return accept({
		currency: list.currency,
		minorPerUnit: list.minorPerUnit,
		basis: list.basis,
		lines: lines.filter(({ amountMinor }) => amountMinor > 0),
		totalMinor,
		lowMinor: Math.floor(totalMinor * (1 - list.spreadFraction)),
		highMinor: Math.ceil(totalMinor * (1 + list.spreadFraction)),
	});
}

const one = (
	part: string,
	choice: string | null,
	amountMinor: number,
): PriceLine => ({ part, choice, count: 1, amountMinor });

const notListed = (field: string, value: string): Refusal => ({
	code: "not-in-price-list",
	field,
	value,
});

/** Every amount of a list that is not a whole number from 0 to ten million, and a spread outside 0–1. */
export function priceListRefusals(list: PriceList): readonly Refusal[] {
	const refusals: Refusal[] = [];
	const check = (field: string, value: unknown): void => {
		if (typeof value !== "number") return;
		const refusal =
			outside(field, value, 0, 10_000_000) ??
			(Number.isInteger(value) ? null : { code: "not-whole", field, value });
		if (refusal) refusals.push(refusal);
	};
	for (const [name, value] of Object.entries(list)) {
		if (name === "spreadFraction") continue;
		if (typeof value === "object")
			for (const [key, amount] of Object.entries(value))
				check(`priceList.${name}.${key}`, amount);
		else check(`priceList.${name}`, value);
	}
	const spread = outside("priceList.spreadFraction", list.spreadFraction, 0, 1);
	if (spread) refusals.push(spread);
	if (!(list.minorPerUnit >= 1))
		refusals.push({
			code: "out-of-range",
			field: "priceList.minorPerUnit",
			value: list.minorPerUnit,
			min: 1,
		});
	return refusals;
}
