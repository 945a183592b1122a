import { outside, type Refusal } from "@/lib/numerics/outcome";

/** Refusals of one value; none where it may stay. */
type Found = readonly Refusal[];

/** Characters a text may have. */
export const TEXT_LIMITS = {
	name: [0, 120],
	line: [1, 120],
	contact: [0, 200],
	address: [0, 200],
	long: [0, 4000],
	label: [0, 60],
	named: [1, 60],
} as const satisfies Record<string, readonly [number, number]>;

/** What the numbers of a setting may be. This project's judgement; lengths mm, masses g, days. */
export const SETTING_LIMITS = {
	/** Labour and material each: a line may then come to what the estimate takes. */
	amountMinor: [0, 5_000_000],
	spreadFraction: [0, 1],
	densityKgM3: [300, 1500],
	densitySd: [0, 300],
	massG: [5, 50_000],
	volumeCm3: [5, 100_000],
	moisturePct: [4, 25],
	ringSpacingMm: [0.2, 20],
	count: [0, 10_000],
	days: [0, 260],
	cuesPerWeek: [0.1, 500],
	longestPieceMm: [300, 1700],
	weekday: [1, 7],
} as const satisfies Record<string, readonly [number, number]>;

export const within = (
	field: string,
	value: number,
	[min, max]: readonly [number, number],
): Found => {
	const refusal = outside(field, value, min, max);
	return refusal ? [refusal] : [];
};

/** A whole number within bounds. */
export const whole = (
	field: string,
	value: number,
	bounds: readonly [number, number],
): Found => {
	const found = within(field, value, bounds);
	if (found.length > 0 || Number.isInteger(value)) return found;
	return [{ code: "not-whole", field, value }];
};

export const text = (
	field: string,
	value: string,
	limits: keyof typeof TEXT_LIMITS,
): Found => {
	const [min, max] = TEXT_LIMITS[limits];
	const { length } = value;
	return length >= min && length <= max
		? []
		: [{ code: "text-length", field, value: length, min, max }];
};

/** At least one and at most so many entries. */
export const count = (
	field: string,
	entries: readonly unknown[],
	[min, max]: readonly [number, number],
): Found => {
	if (entries.length < min)
		return [{ code: "nothing-offered", field, value: entries.length, min }];
	return within(field, entries.length, [min, max]);
};

/** An entry whose key stands earlier in the list too. */
export function listedTwice(field: string, keys: readonly string[]): Found {
	const seen = new Set<string>();
	return keys.flatMap((value, i) => {
		const isAgain = seen.has(value);
		seen.add(value);
		return isAgain
			? [{ code: "listed-twice", field: `${field}.${i}`, value }]
			: [];
	});
}

/** Empty, or an address with scheme and host and no more than a path. */
export function webAddress(field: string, value: string): Found {
	if (value === "") return [];
	const refused = [{ code: "not-an-address", field, value }];
	if (!URL.canParse(value)) return refused;
	const { protocol, search, hash, username } = new URL(value);
	const isPlain = search === "" && hash === "" && username === "";
	return /^https?:$/.test(protocol) && isPlain ? [] : refused;
}
