const VULGAR: Readonly<Record<string, string>> = {
	"½": "1/2",
	"¼": "1/4",
	"¾": "3/4",
	"⅛": "1/8",
	"⅜": "3/8",
	"⅝": "5/8",
	"⅞": "7/8",
	"⅓": "1/3",
	"⅔": "2/3",
};

/** Typographic spaces, primes, minus signs and fractions as their plain forms, in lower case. */
export const plainText = (text: string): string =>
	text
		.replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${VULGAR[sign]}`)
		.normalize("NFKC")
		.replace(/[′’‘`´]/g, "'")
		.replace(/[″”“]|''/g, '"')
		.replace(/[−–]/g, "-")
		.replace(/⁄/g, "/")
		.replace(/\s+/g, " ")
		.trim()
		.toLowerCase();

/**
 * A number at the start of a text, as groups: whole, top and bottom of "57 1/2"; an empty group, top
 * and bottom of "1/2"; or a numeral with its separators.
 */
export const NUMBER =
	/^(?:(\d+)[ -](\d+)\/(\d+)|()(\d+)\/(\d+)|(\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?![\d.,/])|[.,]?\d[\d.,]*))/;
/**
 * A numeral as decimal strings, one for each way to take it. "1,450" is 1450 or 1.45; a single
 * point is always a decimal point; two kinds of sign or a repeated one leave one reading.
 */
export function numeralReadings(numeral: string): string[] {
	const compact = numeral.replace(/ /g, "");
	const spaced = compact !== numeral;
	const points = compact.match(/[.,]/g) ?? [];
	const last = points.at(-1);
	const grouped = (sign: string) =>
		new RegExp(`^[1-9]\\d{0,2}(?:\\${sign}\\d{3})+$`);
	if (last === undefined) return [compact];
	const cut = compact.lastIndexOf(last);
	const head = compact.slice(0, cut);
	const tail = compact.slice(cut + 1);
	const decimal = (whole: string) =>
		tail === "" ? whole : `${whole || "0"}.${tail}`;
	if (points.length === 1) {
		const readings = [decimal(head)];
		if (last === "," && !spaced && grouped(",").test(compact))
			readings.unshift(head + tail);
		return readings;
	}
	if (points.every((sign) => sign === last))
		return grouped(last).test(compact) ? [compact.replaceAll(last, "")] : [];
	const other = last === "," ? "." : ",";
	return !head.includes(last) && grouped(other).test(head)
		? [decimal(head.replaceAll(other, ""))]
		: [];
}
