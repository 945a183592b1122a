import type { FileProblem } from "@/lib/forms/settings/file";
import type { Refusal } from "@/lib/numerics/outcome";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import { PRICE_PARTS, type PricePart } from "@/lib/workshop/prices";
import { formatDay } from "./dates";
import { formatLength, formatMass, formatNumber } from "./figures";
import { formatAmount } from "./money";
import { NAMES, priceChoiceName, pricePartName } from "./setting-names";
import { formatDensity, formatVolume } from "./solid-figures";

type Words = (refusal: Refusal, reader: Reader) => string;

const textOf = (value: unknown): string => String(value ?? "");

const partOf = ({ facts }: Refusal): PricePart | null =>
	PRICE_PARTS.find((part) => part === facts?.part) ?? null;

/** Sentences of what a workshop's settings are refused for. */
export const SETTING_REFUSAL_WORDS: Readonly<Record<string, Words>> = {
	"text-length": ({ value, min = 0, max = 0 }, reader) => {
		const p = {
			value: formatNumber(Number(value), reader),
			min: formatNumber(min, reader),
			max: formatNumber(max, reader),
		};
		if (value === 0) return reader.say("settingRefusal.textEmpty", p);
		return min === 0
			? reader.say("settingRefusal.textAtMost", p)
			: reader.say("settingRefusal.textRange", p);
	},
	"listed-twice": ({ value }, reader) =>
		reader.say("settingRefusal.listedTwice", {
			value: idName(textOf(value), reader),
		}),
	"not-an-address": ({ value }, { say }) =>
		say("settingRefusal.notAnAddress", { value: textOf(value) }),
	"unknown-currency": ({ value }, { say }) =>
		say("settingRefusal.unknownCurrency", { value: textOf(value) }),
	"no-such-choice": (refusal, reader) => {
		const part = partOf(refusal);
		return reader.say("settingRefusal.noSuchChoice", {
			value: textOf(refusal.value),
			part: part === null ? "" : pricePartName(part, reader),
		});
	},
	"price-missing": (refusal, reader) => {
		const part = partOf(refusal);
		const value = textOf(refusal.value);
		return reader.say("settingRefusal.priceMissing", {
			what:
				part === null
					? value
					: value === part
						? pricePartName(part, reader)
						: priceChoiceName(part, value, reader),
		});
	},
	"not-a-date": ({ value }, { say }) =>
		say("settingRefusal.notADate", { value: textOf(value) }),
	"date-passed": ({ value, facts }, reader) =>
		reader.say("settingRefusal.datePassed", {
			value: formatDay(textOf(value), reader),
			earliest: formatDay(textOf(facts?.earliest), reader),
		}),
	"dates-crossed": ({ value, facts }, reader) =>
		reader.say("settingRefusal.datesCrossed", {
			value: formatDay(textOf(value), reader),
			from: formatDay(textOf(facts?.from), reader),
		}),
	"no-open-day": ({ value }, reader) =>
		reader.say("settingRefusal.noOpenDay", {
			value: formatDay(textOf(value), reader),
		}),
};

/** What only a form or a file can get wrong, and what a setting shares with other refusals. */
const OTHER_WORDS: Readonly<Record<string, Words>> = {
	"out-of-range": (refusal, reader) => {
		const { value, min, max } = refusal;
		const say = (number: number) => inUnits(refusal, number, reader);
		const got = typeof value === "number" ? say(value) : textOf(value);
		if (min !== undefined && max !== undefined)
			return min === max
				? reader.say("settingRefusal.exactly", { value: got, min: say(min) })
				: reader.say("settingRefusal.range", {
						value: got,
						min: say(min),
						max: say(max),
					});
		if (min !== undefined)
			return reader.say("settingRefusal.atLeast", {
				value: got,
				min: say(min),
			});
		return reader.say("settingRefusal.atMost", {
			value: got,
			max: say(max ?? 0),
		});
	},
	"not-whole": ({ value }, reader) =>
		reader.say("settingRefusal.notWhole", {
			value: plainNumber(Number(value), reader),
		}),
	"too-few": tooFew,
	"nothing-offered": tooFew,
	"wood-not-for-part": ({ value }, reader) =>
		reader.say("settingRefusal.notForPart", {
			wood: NAMES.wood(value as WoodId, reader),
		}),
	empty: (_, { say }) => say("settingRefusal.empty"),
	"not-a-number": ({ value }, { say }) =>
		say("settingRefusal.notANumber", { value: textOf(value) }),
	"unknown-unit": ({ value }, { say }) =>
		say("settingRefusal.unknownUnit", { value: textOf(value) }),
	ambiguous: ({ value }, { say }) =>
		say("settingRefusal.ambiguous", { value: textOf(value) }),
	"amount-too-fine": ({ value, facts }, { say }) =>
		say("settingRefusal.amountTooFine", {
			value: textOf(value),
			digits: textOf(facts?.digits),
		}),
	"both-or-neither": (_, { say }) => say("settingRefusal.bothOrNeither"),
	"density-or-both": (_, { say }) => say("settingRefusal.densityOrBoth"),
	"file-too-large": ({ value, max = 0 }, reader) =>
		reader.say("settingRefusal.tooLarge", {
			value: formatNumber(Number(value), reader),
			max: formatNumber(max, reader),
		}),
	"not-json": ({ value }, { say }) =>
		say("settingRefusal.notJson", { value: textOf(value) }),
	"not-this-file": ({ facts }, { say }) =>
		say("settingRefusal.notThisFile", { expected: textOf(facts?.expected) }),
	"unknown-key": ({ value }, { say }) =>
		say("settingRefusal.unknownKey", { value: textOf(value) }),
	"missing-here": (_, { say }) => say("settingRefusal.missing"),
	"wrong-shape": ({ value, facts }, { say }) =>
		say("settingRefusal.wrongShape", {
			value: textOf(value),
			expected: textOf(facts?.expected),
		}),
	"not-csv": (_, { say }) => say("settingRefusal.notCsv"),
	"no-column": ({ value }, { say }) =>
		say("settingRefusal.noColumn", { value: textOf(value) }),
	"column-count": ({ value, facts }, { say }) =>
		say("settingRefusal.columnCount", {
			value: textOf(value),
			expected: textOf(facts?.expected),
		}),
	"mixed-rows": ({ value }, { say }) =>
		say("settingRefusal.mixedRows", { value: textOf(value) }),
};

function tooFew({ value, min }: Refusal, reader: Reader): string {
	return reader.say("settingRefusal.tooFew", {
		value: plainNumber(Number(value ?? 0), reader),
		min: plainNumber(min ?? 1, reader),
	});
}

const plainNumber = (value: number, reader: Reader): string =>
	formatNumber(
		value,
		reader,
		Number.isInteger(value)
			? 0
			: Math.min(4, String(value).split(".")[1]?.length ?? 0),
	);

/** Trade names of woods where an id was meant; anything else as it is. */
const idName = (id: string, reader: Reader): string => {
	const [wood = "", ...rest] = id.split(" ");
	return Object.hasOwn(WOODS, wood)
		? [NAMES.wood(wood as WoodId, reader), ...rest].join(", ")
		: id;
};

function inUnits(
	{ field, facts = {} }: Refusal,
	value: number,
	reader: Reader,
): string {
	if (/Mm(\.\d+)?$/.test(field))
		return formatLength(
			value,
			reader,
			/diameter|height|ring/i.test(field) ? "bench" : "station",
		);
	if (/massG$/.test(field)) return formatMass(value, reader);
	if (/(KgM3|kgM3|density|stated\w*|\.sd)$/i.test(field))
		return formatDensity(value, reader);
	if (/volume(Cm3)?$/.test(field)) return formatVolume(value, reader);
	const { currency, minorPerUnit } = facts;
	if (typeof currency === "string" && typeof minorPerUnit === "number")
		return Number.isInteger(value)
			? formatAmount(value, { currency, minorPerUnit }, reader)
			: `${formatNumber(value / minorPerUnit, reader, 4)}\u00a0${currency}`;
	return plainNumber(value, reader);
}

/**
 * Why a field of the settings was not taken, with value and bound, in the reader's units. A code
 * without words is shown as it is, never hidden.
 */
export function settingProblemText(refusal: Refusal, reader: Reader): string {
	const { code, field, value } = refusal;
	const other = OTHER_WORDS[code];
	if (other !== undefined) return other(refusal, reader);
	const words = SETTING_REFUSAL_WORDS[code];
	return words === undefined
		? `${code}; ${field} ${textOf(value)}`
		: words(refusal, reader);
}

/** Why a file was not taken: its line and field as it names them, with value and bound. */
export function fileProblemText(
	{ line, field, refusal }: FileProblem,
	reader: Reader,
): string {
	const problem = settingProblemText(refusal, reader);
	if (line === null)
		return field === ""
			? problem
			: reader.say("settingRefusal.field", { field, problem });
	return field === ""
		? reader.say("settingRefusal.lineOnly", { line: String(line), problem })
		: reader.say("settingRefusal.line", {
				line: String(line),
				field,
				problem,
			});
}
