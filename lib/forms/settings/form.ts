import type { Outcome, Refusal } from "@/lib/numerics/outcome";
import { parseAmount } from "@/lib/units/amount";
import { type ParseRefusal, parseLength, parseNumber } from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";
import { text } from "@/lib/workshop/checks";
import type { SettingContents, SettingKind } from "@/lib/workshop/settings";
import { checkedSetting } from "@/lib/workshop/settings-check";

/** What is wrong with one field of a form, by its path there: "rows.3.labour". */
export interface FormProblem {
	readonly path: string;
	readonly refusal: Refusal;
}

export type FormRead<K extends SettingKind> =
	| { readonly ok: true; readonly content: SettingContents[K] }
	| { readonly ok: false; readonly problems: readonly FormProblem[] };

/** Collects what typed fields say; a field that cannot be read is a problem and stands at its least value. */
export class FieldReader {
	readonly problems: FormProblem[] = [];
	constructor(readonly system: UnitSystem) {}

	refuse(path: string, refusal: Refusal): void {
		this.problems.push({ path, refusal });
	}

	#read<T>(
		path: string,
		read: { ok: true; value: T } | { ok: false; refusal: ParseRefusal },
		otherwise: T,
	): T {
		if (read.ok) return read.value;
		this.refuse(path, read.refusal);
		return otherwise;
	}

	lengthMm(
		path: string,
		text: string,
		[minMm, maxMm]: readonly [number, number],
	): number {
		const read = parseLength(text, {
			system: this.system,
			minMm,
			maxMm,
			field: `${path}Mm`,
		});
		return this.#read(
			path,
			read.ok ? { ok: true, value: read.mm } : read,
			minMm,
		);
	}

	number(
		path: string,
		text: string,
		[min, max]: readonly [number, number],
	): number {
		return this.#read(path, parseNumber(text, { min, max, field: path }), min);
	}

	/** A name as it is kept, held to the characters it may have. */
	named(path: string, typed: string): string {
		const name = typed.trim();
		for (const refusal of text(path, name, "named")) this.refuse(path, refusal);
		return name;
	}

	/** Any of the readers here, unless the field was left empty. */
	optional(text: string, read: (text: string) => number): number | null {
		return text.trim() === "" ? null : read(text);
	}

	amountMinor(path: string, text: string, digits: number): number {
		const read = parseAmount(text, digits);
		if (read.ok) return read.minor;
		this.refuse(path, {
			code: read.code === "too-fine" ? "amount-too-fine" : read.code,
			field: path,
			value: text.trim(),
			facts: { digits },
		});
		return 0;
	}

	/** A solid's volume or density, by its parser. */
	solid(
		path: string,
		text: string,
		p: {
			bounds: readonly [number, number];
			parse: (
				text: string,
				bounds: {
					system: UnitSystem;
					field: string;
					min: number;
					max: number;
				},
			) => { ok: true; value: number } | { ok: false; refusal: ParseRefusal };
		},
	): number {
		const [min, max] = p.bounds;
		return this.#read(
			path,
			p.parse(text, { system: this.system, field: path, min, max }),
			min,
		);
	}
}

/**
 * The content a form was read to, held to what may be saved. `pathOf` turns the field of a refusal,
 * "rows.3.labourMinor" without its kind, into the form's path; null where it stands at no one field.
 */
export function readForm<K extends SettingKind>(p: {
	kind: K;
	content: SettingContents[K];
	fields: FieldReader;
	pathOf: (field: string) => string;
}): FormRead<K> {
	const { problems } = p.fields;
	if (problems.length > 0) return { ok: false, problems };
	const checked: Outcome<SettingContents[K]> = checkedSetting(
		p.kind,
		p.content,
	);
	return checked.ok
		? { ok: true, content: checked.value }
		: {
				ok: false,
				problems: checked.refusals.map((refusal) => ({
					path: p.pathOf(refusal.field.replace(/^[^.]+\./, "")),
					refusal,
				})),
			};
}

/** A length as stored, exact: what is shown rounded elsewhere is not rounded by saving it again. */
export const mmText = (mm: number, mark: string): string =>
	`${numberText(mm, mark)} mm`;

/** A number as stored, with the reader's decimal mark. */
export const numberText = (value: number, mark: string): string =>
	String(value).replace(".", mark);
