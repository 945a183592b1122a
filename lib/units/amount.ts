import { numeralReadings, plainText } from "./numeral";

export type ParsedAmount =
	| { readonly ok: true; readonly minor: number }
	| {
			readonly ok: false;
			/** "too-fine": more digits behind the point than the currency has. */
			readonly code: "empty" | "not-a-number" | "ambiguous" | "too-fine";
	  };

/**
 * An amount of money as people write it, "140", "1.400,50", "1 400.5", in whole minor units of a
 * currency with so many digits behind the point. Digits are moved, never multiplied, so no amount is
 * off by one. A reading with too many digits is none: "1,400" of a currency with two is 1400.
 */
export function parseAmount(text: string, digits: number): ParsedAmount {
	const plain = plainText(text);
	if (plain === "") return { ok: false, code: "empty" };
	if (!/^\d[\d., ]*$/.test(plain)) return { ok: false, code: "not-a-number" };
	const readings = numeralReadings(plain);
	if (readings.length === 0) return { ok: false, code: "not-a-number" };
	const amounts = new Set(
		readings
			.map((reading) => minorOf(reading, digits))
			.filter((minor) => minor !== null),
	);
	const [minor, other] = amounts;
	if (minor === undefined) return { ok: false, code: "too-fine" };
	if (other !== undefined) return { ok: false, code: "ambiguous" };
	return Number.isSafeInteger(minor)
		? { ok: true, minor }
		: { ok: false, code: "not-a-number" };
}

function minorOf(decimal: string, digits: number): number | null {
	const [whole = "0", fraction = ""] = decimal.split(".");
	if (fraction.length > digits) return null;
	return Number(whole + fraction.padEnd(digits, "0"));
}

/** Whole minor units as a plain decimal, "1400.50": what a file holds and a field starts with. */
export function amountText(minor: number, digits: number): string {
	if (!Number.isSafeInteger(minor) || minor < 0)
		throw new RangeError(`not an amount in minor units: ${minor}`);
	const text = String(minor).padStart(digits + 1, "0");
	return digits === 0
		? text
		: `${text.slice(0, -digits)}.${text.slice(-digits)}`;
}
