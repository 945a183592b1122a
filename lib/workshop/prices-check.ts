import type { Refusal } from "@/lib/numerics/outcome";
import { currencyDigits } from "@/lib/price/currency";
import { WOOD_IDS, WOODS } from "@/lib/reference/woods";
import {
	SETTING_LIMITS as LIMIT,
	listedTwice,
	text,
	whole,
	within,
} from "./checks";
import {
	PRICE_PARTS,
	type PricePart,
	type PriceRow,
	type Prices,
} from "./prices";

const ONE_AMOUNT: readonly string[] = [""];

/** What a part may be priced by; null where the names are the workshop's own. */
export const CHOICES_OF: Readonly<Record<PricePart, readonly string[] | null>> =
	{
		base: ONE_AMOUNT,
		splice: ["plain", "machine-four-point", "hand-four-point"],
		layout: ["one-piece", "three-quarter", "centre"],
		"shaft-wood": WOOD_IDS.filter((id) => WOODS[id].uses.includes("shaft")),
		"butt-wood": WOOD_IDS.filter((id) => WOODS[id].uses.includes("butt")),
		"added-weight": ONE_AMOUNT,
		"points-between": ONE_AMOUNT,
		"front-wedge": ONE_AMOUNT,
		"all-round-wedges": ONE_AMOUNT,
		veneers: ONE_AMOUNT,
		"end-piece": ONE_AMOUNT,
		ferrule: ["brass", "stainless-steel"],
		tip: null,
		case: null,
	};

/** Parts whose every choice must have an amount: a cue has one of them whatever is on offer. */
const ALWAYS: readonly PricePart[] = PRICE_PARTS.filter(
	(part) =>
		CHOICES_OF[part] === ONE_AMOUNT || part === "splice" || part === "layout",
);

const keyOf = ({ part, choice }: Pick<PriceRow, "part" | "choice">) =>
	`${part} ${choice}`.trim();

/** Everything that keeps a price list from being used. */
export function pricesRefusals(p: Prices): readonly Refusal[] {
	const has = new Set(p.rows.map(keyOf));
	return [
		...currencyRefusals(p),
		...within("prices.spreadFraction", p.spreadFraction, LIMIT.spreadFraction),
		...listedTwice("prices.rows", p.rows.map(keyOf)),
		...p.rows.flatMap((row, i) => rowRefusals(p, row, `prices.rows.${i}`)),
		...ALWAYS.flatMap((part) =>
			(CHOICES_OF[part] ?? [])
				.filter((choice) => !has.has(keyOf({ part, choice })))
				.map((choice) => ({
					code: "price-missing",
					field: "prices.rows",
					value: choice === "" ? part : choice,
					facts: { part },
				})),
		),
	];
}

function currencyRefusals({
	currency,
	minorPerUnit,
}: Prices): readonly Refusal[] {
	const digits = currencyDigits(currency);
	if (digits === null)
		return [
			{ code: "unknown-currency", field: "prices.currency", value: currency },
		];
	const units = 10 ** digits;
	return within("prices.minorPerUnit", minorPerUnit, [units, units]);
}

function rowRefusals(
	{ currency, minorPerUnit }: Prices,
	row: PriceRow,
	field: string,
): readonly Refusal[] {
	const { part, choice } = row;
	const choices = CHOICES_OF[part];
	const choiceRefusals: readonly Refusal[] =
		choices === null
			? text(`${field}.choice`, choice, "named")
			: choices.includes(choice)
				? []
				: [
						{
							code: "no-such-choice",
							field: `${field}.choice`,
							value: choice,
							facts: { part },
						},
					];
	return [
		...choiceRefusals,
		...(["labourMinor", "materialMinor"] as const).flatMap((name) =>
			whole(`${field}.${name}`, row[name], LIMIT.amountMinor).map(
				(refusal) => ({ ...refusal, facts: { currency, minorPerUnit } }),
			),
		),
	];
}
