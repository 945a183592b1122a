import { numeralReadings, plainText } from "@/lib/units/numeral";

/** Far above any cue, and far inside what a number holds exactly. */
const MOST_MINOR = 1_000_000_000;

export type AmountProblem = "missing" | "not-an-amount" | "too-much";
export type ReadAmount =
	| { readonly ok: true; readonly minor: number }
	| { readonly ok: false; readonly problem: AmountProblem };

const POINT_GROUPED = /^[1-9]\d{0,2}(?:\.\d{3})+$/;

/**
 * An amount as people write it, "480", "1,250.50" or "1.250,50", in whole minor units. No sum passes
 * through a fraction: the digits are put together as text. "not-an-amount" is other text, more
 * decimals than the currency has, and what can be read in two ways.
 */
export function readAmount(text: string, minorPerUnit: number): ReadAmount {
	const plain = plainText(text);
	if (plain === "") return { ok: false, problem: "missing" };
	const decimals = String(minorPerUnit).length - 1;
	const readings = /^\d[\d., ]*$|^[.,]\d+$/.test(plain)
		? numeralReadings(plain)
		: [];
	if (POINT_GROUPED.test(plain)) readings.push(plain.replaceAll(".", ""));
	const amounts = new Set(
		readings.flatMap((reading) => minorOf(reading, decimals)),
	);
	const [minor] = amounts;
	if (minor === undefined || amounts.size > 1)
		return { ok: false, problem: "not-an-amount" };
	return minor > MOST_MINOR
		? { ok: false, problem: "too-much" }
		: { ok: true, minor };
}

/** "480.5" with two decimals is 48050; nothing where there are more decimals than that. */
function minorOf(reading: string, decimals: number): number[] {
	const [whole = "", fraction = ""] = reading.split(".");
	if (fraction.length > decimals || !/^\d+$/.test(whole + fraction)) return [];
	return [Number(whole + fraction.padEnd(decimals, "0"))];
}
