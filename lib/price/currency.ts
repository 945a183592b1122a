/**
 * Currencies in use by their ISO 4217 letters and the digits they have behind the point there. From
 * memory; tests hold letters and digits to the runtime's own table.
 */
const LETTERS_BY_DIGITS: Readonly<Record<number, string>> = {
	0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF",
	2: "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD YER ZAR ZMW",
	3: "BHD IQD JOD KWD LYD OMR TND",
};

const DIGITS: ReadonlyMap<string, number> = new Map(
	Object.entries(LETTERS_BY_DIGITS).flatMap(([digits, letters]) =>
		letters.split(" ").map((currency) => [currency, Number(digits)] as const),
	),
);

/** Every currency in use, in the order of the letters. */
export const CURRENCIES: readonly string[] = [...DIGITS.keys()].sort();

/** Digits behind the point of a currency; null for letters that name none in use. */
export const currencyDigits = (currency: string): number | null =>
	DIGITS.get(currency) ?? null;
