/**
 * The result of a computation that may refuse. A refusal is data, not a sentence:
 * `lib/present` puts it into words.
 */
export type Outcome<T> =
	| { readonly ok: true; readonly value: T }
	| { readonly ok: false; readonly refusals: readonly Refusal[] };

/** Why an input or a combination is outside what a model can answer. */
export interface Refusal {
	/** Kebab-case reason, stable: "out-of-range", "weight-below-natural", … */
	readonly code: string;
	/** The input's name with its unit suffix, dotted where nested: "design.lengthMm". */
	readonly field: string;
	readonly value: number | string | null;
	readonly min?: number;
	readonly max?: number;
	/** Further numbers the sentence needs, by unit-suffixed name. */
	readonly facts?: Readonly<Record<string, number | string>>;
}

export const accept = <T>(value: T): Outcome<T> => ({ ok: true, value });

export const refuse = (
	...refusals: Refusal[]
): { ok: false; refusals: Refusal[] } => ({
	ok: false,
	refusals,
});

/** A refusal when `value` is not a finite number within [min, max]; otherwise null. */
export function outside(
	field: string,
	value: number,
	min: number,
	max: number,
): Refusal | null {
	if (Number.isFinite(value) && value >= min && value <= max) return null;
	return { code: "out-of-range", field, value, min, max };
}

/** The value of an outcome that the caller knows cannot be refused; throws with the refusal otherwise. */
export function must<T>(outcome: Outcome<T>): T {
	if (outcome.ok) return outcome.value;
	throw new RangeError(
		`unexpected refusal: ${outcome.refusals
			.map(
				(r) =>
					`${r.code} ${r.field}=${String(r.value)} [${r.min ?? "–"}, ${r.max ?? "–"}]`,
			)
			.join("; ")}`,
	);
}

/** A notice that travels beside a result without stopping it. Worded in `lib/present`. */
export interface Caution {
	readonly code: string;
	readonly facts?: Readonly<Record<string, number | string>>;
}
