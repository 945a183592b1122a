import type { Reader } from "@/lib/words/reader";
import { formatNumber, formatNumberBand } from "./figures";

/** In what an amount of minor units is. */
export interface Currency {
	/** ISO 4217. */
	readonly currency: string;
	readonly minorPerUnit: number;
}

const NBSP = "\u00a0";

/** Digits behind the point: 100 minor units have two. */
export const digitsOf = ({ minorPerUnit }: Currency): number =>
	Math.round(Math.log10(minorPerUnit));

/** An amount to the last minor unit, "1400.50 GBP"; throws where it is no whole number of them. */
export function formatAmount(
	minor: number,
	money: Currency,
	reader: Reader,
): string {
	if (!Number.isSafeInteger(minor))
		throw new RangeError(`not an amount in minor units: ${minor}`);
	const figure = formatNumber(
		minor / money.minorPerUnit,
		reader,
		digitsOf(money),
	);
	return `${figure}${NBSP}${money.currency}`;
}

/** "+12.50 GBP", "−3.00 GBP". */
export const formatAmountDifference = (
	minor: number,
	money: Currency,
	reader: Reader,
): string => (minor > 0 ? "+" : "") + formatAmount(minor, money, reader);

/** "355–434 GBP": in whole units, the low end down and the high end up, so that the band holds what it says. */
export const formatAmountBand = (
	{ lowMinor, highMinor }: { lowMinor: number; highMinor: number },
	{ currency, minorPerUnit }: Currency,
	reader: Reader,
): string =>
	formatNumberBand(
		{
			low: Math.floor(lowMinor / minorPerUnit),
			high: Math.ceil(highMinor / minorPerUnit),
		},
		reader,
		0,
		NBSP + currency,
	);

/** "British pounds (GBP)" in the reader's language. */
export function currencyName(currency: string, { language }: Reader): string {
	const name = new Intl.DisplayNames(language, { type: "currency" }).of(
		currency,
	);
	return name === undefined || name === currency
		? currency
		: `${name} (${currency})`;
}
