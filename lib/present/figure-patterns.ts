import type { Reader } from "@/lib/words/reader";

type FigureKey = "figure.percent" | "figure.band" | "figure.signedBand";

/** What stands for the values of a figure's message until they are put in. */
const HELD = { number: "\u0001", low: "\u0001", high: "\u0002" } as const;

/** Figures are written by the thousand while a wish moves: each message is put together once a reader. */
const PATTERNS = new WeakMap<Reader["say"], Map<FigureKey, string>>();

/** A figure's message with its numbers in it, in the order they are read. */
export function fillFigure(
	key: FigureKey,
	{ say }: Reader,
	[first, second = ""]: readonly [string, string?],
): string {
	const known = PATTERNS.get(say) ?? new Map<FigureKey, string>();
	PATTERNS.set(say, known);
	const pattern = known.get(key) ?? say(key, HELD);
	known.set(key, pattern);
	return pattern
		.replace(HELD.low, () => first)
		.replace(HELD.high, () => second);
}

/** The decimal mark of a language, as `Intl` has it. */
const DECIMAL_MARKS = new Map<string, string>();

export function decimalMark({ language }: Reader): string {
	const known = DECIMAL_MARKS.get(language);
	if (known !== undefined) return known;
	const mark =
		new Intl.NumberFormat(language)
			.formatToParts(0.5)
			.find(({ type }) => type === "decimal")?.value ?? ".";
	DECIMAL_MARKS.set(language, mark);
	return mark;
}
