import { READING_SD_MM } from "@/lib/player/measures";
import { CITATIONS, type CitationId } from "@/lib/reference/citations";
import type { SourcedConstant } from "@/lib/reference/estimate";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOODS } from "@/lib/reference/woods";
import type { MessageKey, Reader } from "@/lib/words/reader";
import { type Assumption, assumptionsIn } from "./assumption-rows";
import { formatNumber } from "./figures";
import {
	basisLabel,
	citationTitle,
	gameName,
	metalName,
	woodName,
} from "./labels";
import { capital } from "./lists";

/** One constant as the sources page prints it. */
export interface ConstantRow {
	readonly name: string;
	readonly value: string;
	readonly spread: string;
	readonly standing: string;
	readonly source: string;
	readonly locator: string;
}

export interface ConstantGroup {
	readonly title: string;
	readonly rows: readonly ConstantRow[];
}

const decimalsOf = (value: number): number =>
	Number.isInteger(value) ? 0 : Math.abs(value) < 10 ? 4 : 2;

/** A number without zeros at the end of its decimals. */
function trimmed(value: number, reader: Reader): string {
	const [, decimals = ""] = String(
		Number(value.toFixed(decimalsOf(value))),
	).split(".");
	return formatNumber(value, reader, decimals.length);
}

/** A message where there is one for what the tables hold, otherwise as the tables have it. */
const sayOr = (key: string, otherwise: string, { say }: Reader): string =>
	say.has(key as MessageKey) ? say(key as MessageKey) : otherwise;

/** A name or choice in a table, in plain lower-case words, with its place in a list behind it. */
function plainWords(words: string, reader: Reader): string {
	const [, name = words, place = ""] = /^(.*?)( \d+)?$/.exec(words) ?? [];
	return sayOr(`constant.${name}`, name, reader) + place;
}

const nameOf = (path: readonly string[], reader: Reader): string =>
	capital(path.map((words) => plainWords(words, reader)).join(", "));

/** "lengthMm" in plain lower-case words. */
const wordsOf = (key: string): string =>
	key
		.replace(/(Mm|KgM3|GPa|G|PerPct|Pct)$/, "")
		.replace(/12$/, " at 12 % moisture")
		.replace(/([A-Z])/g, " $1")
		.toLowerCase();

const unitName = (unit: string, reader: Reader): string =>
	unit === "" ? "" : sayOr(`constantUnit.${unit}`, unit, reader);

/** Where in a source a figure stands. */
const locatorText = (locator: string, reader: Reader): string =>
	locator === "" ? "" : sayOr(`locator.${slugOf(locator)}`, locator, reader);

const slugOf = (text: string): string =>
	text
		.toLowerCase()
		.replace(/[^0-9a-z]+/g, "-")
		.replace(/^-|-$/g, "");

function rowOf(
	name: string,
	constant: SourcedConstant,
	reader: Reader,
): ConstantRow {
	const { value, unit, sd, standing, source, locator, fromMemory } = constant;
	const basis = basisLabel(standing, reader);
	return {
		name,
		value: `${trimmed(value, reader)} ${unitName(unit, reader)}`.trim(),
		spread: sd === 0 ? "" : `± ${trimmed(sd, reader)}`,
		standing: fromMemory
			? reader.say("sources.fromMemory", { standing: basis })
			: basis,
		source: citationTitle(source, reader),
		locator: locatorText(locator, reader),
	};
}

/** One assumption of a model; a whole number's decimals are not written. */
function assumptionRow(one: Assumption, reader: Reader): ConstantRow {
	const { path, value, sd, unit, standing, source } = one;
	const written = (single: number | string): string =>
		typeof single === "number"
			? trimmed(single, reader)
			: plainWords(single.replaceAll("-", " "), reader);
	const values = typeof value === "object" ? value : [value];
	return {
		name: nameOf(path, reader),
		value: `${values.map(written).join("; ")} ${unitName(unit, reader)}`.trim(),
		spread: sd === null ? "" : `± ${trimmed(sd, reader)}`,
		standing: basisLabel(standing, reader),
		source: citationTitle(source, reader),
		locator: "",
	};
}

const isConstant = (value: unknown): value is SourcedConstant =>
	typeof value === "object" &&
	value !== null &&
	"standing" in value &&
	"locator" in value &&
	"value" in value;

/** Every sourced constant inside an object, named by its path in plain words. */
function constantsIn(
	thing: string,
	value: unknown,
	reader: Reader,
	path: readonly string[] = [],
): ConstantRow[] {
	if (isConstant(value)) {
		const name = path.map((key) => plainWords(wordsOf(key), reader));
		return [rowOf([thing, ...name].join(", "), value, reader)];
	}
	if (typeof value !== "object" || value === null || Array.isArray(value))
		return [];
	return Object.entries(value).flatMap(([key, inner]) =>
		constantsIn(thing, inner, reader, [...path, key]),
	);
}

/** All constants behind the figures, generated from the tables the models read. */
export function constantGroups(reader: Reader): ConstantGroup[] {
	const { say } = reader;
	return [
		{
			title: say("sources.group.woods"),
			rows: Object.values(WOODS).flatMap((wood) =>
				constantsIn(
					`${woodName(wood.id, reader)} (${wood.latin})`,
					{ ...wood },
					reader,
				),
			),
		},
		{
			title: say("sources.group.metals"),
			rows: (Object.keys(METALS) as MetalId[]).flatMap((id) =>
				constantsIn(metalName(id, reader), { ...METALS[id] }, reader),
			),
		},
		{
			title: say("sources.group.games"),
			rows: (Object.keys(GAMES) as GameId[]).flatMap((id) =>
				constantsIn(gameName(id, reader), { ...GAMES[id] }, reader),
			),
		},
		{
			title: say("sources.group.readings"),
			rows: Object.entries(READING_SD_MM).map(([name, sd]) => ({
				name: say("sources.reading", {
					measure: plainWords(wordsOf(name), reader),
				}),
				value: "",
				spread: `± ${trimmed(sd, reader)} mm`,
				standing: basisLabel("assumed", reader),
				source: citationTitle("project-judgement", reader),
				locator: "",
			})),
		},
		...(["stance", "advice", "trial"] as const).map((file) => ({
			title: say(`sources.group.${file}`),
			rows: assumptionsIn(file).map((one) => assumptionRow(one, reader)),
		})),
	];
}

export interface SourceRow {
	readonly id: CitationId;
	readonly title: string;
	readonly publisher: string;
	readonly year: string;
	readonly seen: string;
}

/** Every publication; titles and publishers stay in their own language. */
export const sourceRows = (reader: Reader): SourceRow[] =>
	(Object.keys(CITATIONS) as CitationId[]).map((id) => {
		const { publisher, year, seen } = CITATIONS[id];
		return {
			id,
			title: citationTitle(id, reader),
			publisher,
			year: year === null ? "" : String(year),
			seen: reader.say(`sources.seen.${seen}`),
		};
	});
