/**
 * Digits after the point of a currency, from the runtime's copy of ISO 4217; null for letters that name
 * none.
 */
export function currencyDigits(currency: string): number | null {
	if (!/^[A-Z]{3}$/.test(currency)) return null;
	if (!Intl.supportedValuesOf("currency").includes(currency)) return null;
	const { maximumFractionDigits } = new Intl.NumberFormat("en", {
		style: "currency",
		currency,
	}).resolvedOptions();
	return maximumFractionDigits ?? null;
}

/** Every currency the runtime knows, by its three letters. */
export const CURRENCIES: readonly string[] = Intl.supportedValuesOf("currency");
