import { READING_SD_MM } from "@/lib/player/measures";
import { CITATIONS, type CitationId } from "@/lib/reference/citations";
import type { SourcedConstant } from "@/lib/reference/estimate";
import { METALS } from "@/lib/reference/metals";
import { GAMES } from "@/lib/reference/rules";
import { WOODS } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import {
	type ASSUMED_IN,
	type Assumption,
	assumptionsIn,
} from "./assumption-rows";
import { formatNumber } from "./figures";
import { basisLabel } from "./labels";

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
const trimmed = (value: number, reader: Reader): string =>
	formatNumber(value, reader, decimalsOf(value))
		.replace(/(\.\d*?)0+$/, "$1")
		.replace(/\.$/, "");

function rowOf(
	name: string,
	constant: SourcedConstant,
	reader: Reader,
): ConstantRow {
	const { value, unit, sd, standing, source, locator, fromMemory } = constant;
	return {
		name,
		value: `${trimmed(value, reader)} ${unit}`.trim(),
		spread: sd === 0 ? "" : `± ${trimmed(sd, reader)}`,
		standing:
			basisLabel(standing, reader) + (fromMemory ? " (from memory)" : ""),
		source: CITATIONS[source].title,
		locator,
	};
}

const ASSUMED_TITLES: Readonly<Record<keyof typeof ASSUMED_IN, string>> = {
	stance: "Assumptions of the stance",
	advice: "Judgements of the advice",
	trial: "Assumptions about trials",
};

/** One assumption of a model; a whole number's decimals are not written. */
function assumptionRow(one: Assumption, reader: Reader): ConstantRow {
	const { name, value, sd, unit, standing, source } = one;
	const written = (single: number | string): string =>
		typeof single === "number"
			? trimmed(single, reader)
			: single.replaceAll("-", " ");
	const values = typeof value === "object" ? value : [value];
	return {
		name,
		value: `${values.map(written).join("; ")} ${unit}`.trim(),
		spread: sd === null ? "" : `± ${trimmed(sd, reader)}`,
		standing: basisLabel(standing, reader),
		source: CITATIONS[source].title,
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
	name: string,
	value: unknown,
	reader: Reader,
): ConstantRow[] {
	if (isConstant(value)) return [rowOf(name, value, reader)];
	if (typeof value !== "object" || value === null || Array.isArray(value))
		return [];
	return Object.entries(value).flatMap(([key, inner]) =>
		constantsIn(
			`${name}, ${key
				.replace(/(Mm|KgM3|GPa|G|PerPct|Pct)$/, "")
				.replace(/12$/, " at 12 % moisture")
				.replace(/([A-Z])/g, " $1")
				.toLowerCase()}`,
			inner,
			reader,
		),
	);
}

/** All constants behind the figures, generated from the tables the models read. */
export function constantGroups(reader: Reader): ConstantGroup[] {
	return [
		{
			title: "Woods",
			rows: Object.values(WOODS).flatMap((wood) =>
				constantsIn(`${wood.name} (${wood.latin})`, { ...wood }, reader),
			),
		},
		{
			title: "Metals",
			rows: Object.values(METALS).flatMap((metal) =>
				constantsIn(metal.name, { ...metal }, reader),
			),
		},
		{
			title: "Games and their rules",
			rows: Object.values(GAMES).flatMap((game) =>
				constantsIn(game.name, { ...game }, reader),
			),
		},
		{
			title: "Readings",
			rows: Object.entries(READING_SD_MM).map(([name, sd]) => ({
				name: `One reading of ${name
					.replace(/Mm$/, "")
					.replace(/([A-Z])/g, " $1")
					.toLowerCase()}`,
				value: "",
				spread: `± ${trimmed(sd, reader)} mm`,
				standing: basisLabel("assumed", reader),
				source: CITATIONS["project-judgement"].title,
				locator: "",
			})),
		},
		...(["stance", "advice", "trial"] as const).map((file) => ({
			title: ASSUMED_TITLES[file],
			rows: assumptionsIn(file).map((one) => assumptionRow(one, reader)),
		})),
	];
}

const SEEN_WORDS = {
	read: "text or data read",
	secondary: "seen in a quotation of it",
	memory: "recalled, not verified",
	none: "no publication",
} as const;

export interface SourceRow {
	readonly id: CitationId;
	readonly title: string;
	readonly publisher: string;
	readonly year: string;
	readonly seen: string;
}

export const sourceRows = (): SourceRow[] =>
	(Object.keys(CITATIONS) as CitationId[]).map((id) => {
		const { title, publisher, year, seen } = CITATIONS[id];
		return {
			id,
			title,
			publisher,
			year: year === null ? "" : String(year),
			seen: SEEN_WORDS[seen],
		};
	});
