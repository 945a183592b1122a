import { FINISHED_TOLERANCE } from "@/lib/build/tolerance";
import { outside, type Refusal } from "@/lib/numerics/outcome";
import { currencyDigits } from "@/lib/price/currency";
import type { JobContent, JobPrice, Quote } from "./job-content";
import type { MayVary } from "./may-vary";
import { addDays, isIsoDate, notBefore } from "./working-days";

/** How long a quote holds unless the workshop says otherwise. */
export const USUAL_VALID_DAYS = 30;
const MOST_VALID_DAYS = 400;
const MOST_MINOR = 1_000_000_000;
const MOST_WITHIN = 365;

/**
 * Why a quote cannot be given on a day: a price that is no whole number of minor units from 0 to 10⁹,
 * an unknown currency, a last day before today or more than 400 days ahead, a
 * deviation outside 0–365.
 */
export function quoteRefusals(quote: Quote, today: string): readonly Refusal[] {
	const { priceMinor, currency, validUntil } = quote;
	const refusals: (Refusal | null)[] = [
		outside("quote.priceMinor", priceMinor, 0, MOST_MINOR) ??
			(Number.isInteger(priceMinor)
				? null
				: { code: "not-whole", field: "quote.priceMinor", value: priceMinor }),
		currencyDigits(currency) === null
			? { code: "unknown-currency", field: "quote.currency", value: currency }
			: null,
		...notBefore("quote.validUntil", validUntil, today),
		isIsoDate(validUntil) && validUntil > addDays(today, MOST_VALID_DAYS)
			? {
					code: "date-too-far",
					field: "quote.validUntil",
					value: validUntil,
					facts: { latest: addDays(today, MOST_VALID_DAYS) },
				}
			: null,
		...quote.mayVary.map(({ code, within }: MayVary) =>
			within === null
				? null
				: outside(`quote.mayVary.${code}`, within, 0, MOST_WITHIN),
		),
	];
	return refusals.filter((one) => one !== null);
}

/** What a customer's page of a quote can say. */
export type QuoteStanding = "open" | "agreed" | "expired" | "none";

export function quoteStanding(p: {
	quote: JobContent["quote"];
	isAgreed: boolean;
	today: string;
}): QuoteStanding {
	if (p.isAgreed) return "agreed";
	if (p.quote === null) return "none";
	return p.quote.validUntil < p.today ? "expired" : "open";
}

/** What a first quote begins with: the list's price, thirty days, and what a finished cue may be off by. */
export function startingQuote(p: {
	price: JobPrice | null;
	prices: { readonly currency: string; readonly minorPerUnit: number };
	today: string;
}): Quote {
	const { currency, minorPerUnit } = p.prices;
	return {
		priceMinor: p.price?.currency === currency ? p.price.totalMinor : 0,
		currency,
		minorPerUnit,
		validUntil: addDays(p.today, USUAL_VALID_DAYS),
		mayVary: [
			{ code: "mass-g", within: FINISHED_TOLERANCE.massG },
			{ code: "balance-mm", within: FINISHED_TOLERANCE.balanceMm },
			{ code: "grain-and-colour", within: null },
		],
		note: "",
	};
}
