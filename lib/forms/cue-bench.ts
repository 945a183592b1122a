import type { CueQuestion } from "@/lib/advice/answer-cue";
import type { CueRequest, FlatRequest } from "@/lib/cue/design";
import { PLANING } from "@/lib/cue/flat";
import { GRAIN_LIMITS } from "@/lib/cue/grain";
import { FITTING_LIMITS } from "@/lib/cue/validity";
import { PLACES, type PlaceId } from "@/lib/reference/climate";
import { METALS } from "@/lib/reference/metals";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOODS } from "@/lib/reference/woods";
import {
	type ParseRefusal,
	parseLength,
	parseMass,
	parseNumber,
} from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";
import { BOUNDS } from "./bounds";
import { CHOICES } from "./choices";

/** What can be asked of one cue without a player. Every answer may be left out. */
export type BenchField =
	| {
			readonly kind: "length" | "mass" | "number";
			readonly min: number;
			readonly max: number;
	  }
	| { readonly kind: "choice"; readonly options: readonly string[] };

const length = (bound: { min: number; max: number }) =>
	({ kind: "length", ...bound }) as const;
const lengthWithin = ([min, max]: readonly [number, number]) =>
	({ kind: "length", min, max }) as const;
const number = (min: number, max: number) =>
	({ kind: "number", min, max }) as const;
const choice = (options: readonly string[]) =>
	({ kind: "choice", options }) as const;
const ids = (table: object) => Object.keys(table);

export const BENCH_FIELDS = {
	game: choice(CHOICES.game),
	length: length(BOUNDS.cueLengthMm),
	butt: length(BOUNDS.buttDiameterMm),
	tip: length(BOUNDS.tipDiameterMm),
	taper: choice(CHOICES.taperShape),
	shaftWood: choice(CHOICES.shaftWood),
	buttWood: choice(CHOICES.buttWood),
	splice: choice(CHOICES.splice),
	layout: choice(CHOICES.layout),
	mass: { kind: "mass", ...BOUNDS.cueMassG },
	balance: length(BOUNDS.balanceFromButtMm),
	points: lengthWithin([PLANING.pointFromButtMm.min, 1100]),
	core: lengthWithin([PLANING.coreHalfWidthMm.min * 2, 28]),
	veneerWood: choice(ids(WOODS)),
	betweenWood: choice(ids(WOODS)),
	frontWedgeWood: choice(ids(WOODS)),
	joint: lengthWithin([100, 1100]),
	jointMetal: choice(ids(METALS)),
	endPiece: lengthWithin(FITTING_LIMITS.endPieceMm),
	ferrule: choice(CHOICES.ferruleMetal),
	dome: lengthWithin(FITTING_LIMITS.domeRadiusMm),
	grip: lengthWithin([10, 450]),
	rings: lengthWithin(GRAIN_LIMITS.ringSpacingMm),
	tilt: number(...GRAIN_LIMITS.tiltDeg),
	sightTurn: number(-180, 180),
	arrowSpacing: lengthWithin([20, 1500]),
	place: choice(ids(PLACES)),
	dryTemperature: number(-5, 60),
	dryHumidity: number(5, 95),
	dampTemperature: number(-5, 60),
	dampHumidity: number(5, 95),
} as const satisfies Record<string, BenchField>;

export type BenchFieldName = keyof typeof BENCH_FIELDS;
export const BENCH_FIELD_NAMES = ids(BENCH_FIELDS) as BenchFieldName[];

/** As typed; missing or empty was left out. */
export type BenchAnswers = Partial<Record<BenchFieldName, string>>;

/** Longer than any answer; keeps an address from being a flood. */
const MOST_TYPED = 60;

/** The answers an address holds. What is not asked here is not read. */
export function benchFromQuery(
	query: Readonly<Record<string, string | readonly string[] | undefined>>,
): BenchAnswers {
	const answers: BenchAnswers = {};
	for (const name of BENCH_FIELD_NAMES) {
		const text = query[name];
		if (typeof text === "string" && text !== "")
			answers[name] = text.slice(0, MOST_TYPED);
	}
	return answers;
}

/** The address for answers, empty ones left out. */
export function benchQuery(answers: BenchAnswers): string {
	const query = new URLSearchParams();
	for (const name of BENCH_FIELD_NAMES) {
		const text = answers[name];
		if (text) query.set(name, text);
	}
	return query.toString();
}

export interface BenchProblem {
	readonly field: BenchFieldName;
	readonly code: ParseRefusal["code"] | "not-a-choice";
	readonly value: number | string | null;
	readonly min?: number;
	readonly max?: number;
}

type Read =
	| { readonly ok: true; readonly value: number | string }
	| { readonly ok: false; readonly problem: Omit<BenchProblem, "field"> };

/** One answer as a number in mm, g or its own unit, or as a choice. Bare lengths are mm or inches. */
export function readBenchField(
	name: BenchFieldName,
	text: string,
	system: UnitSystem,
): Read {
	const field: BenchField = BENCH_FIELDS[name];
	if (field.kind === "choice")
		return field.options.includes(text)
			? { ok: true, value: text }
			: { ok: false, problem: { code: "not-a-choice", value: text } };
	const { min, max } = field;
	if (field.kind === "number") {
		const parsed = parseNumber(text, { min, max });
		return parsed.ok ? parsed : { ok: false, problem: parsed.refusal };
	}
	if (field.kind === "mass") {
		const parsed = parseMass(text, { system, minG: min, maxG: max });
		return parsed.ok
			? { ok: true, value: parsed.g }
			: { ok: false, problem: parsed.refusal };
	}
	const parsed = parseLength(text, {
		system,
		minMm: min,
		maxMm: max,
		defaultUnit: system === "metric" ? "mm" : "in",
	});
	return parsed.ok
		? { ok: true, value: parsed.mm }
		: { ok: false, problem: parsed.refusal };
}

/** Everything asked of the models, usual figures where nothing was said. */
export interface BenchQuestion extends CueQuestion {
	readonly seasons: NonNullable<CueQuestion["seasons"]>;
	readonly grain: NonNullable<CueQuestion["grain"]>;
	readonly sightTurnDeg: number;
	readonly arrowSpacingMm: number;
	readonly placeId: PlaceId;
}

const middle = ([low, high]: readonly [number, number]): number =>
	(low + high) / 2;

/** What stands in for each answer left out. Common practice for dimensions, else this project's judgement. */
export function usualBench(gameId: GameId) {
	const { usual } = GAMES[gameId];
	const isPool = gameId === "american-pool" || gameId === "carom";
	return {
		lengthMm: Math.round(middle(usual.lengthMm)),
		tipDiameterMm: Math.round(4 * middle(usual.tipMm)) / 4,
		buttDiameterMm: 29,
		taperShape: "even",
		shaftWood: isPool ? "sugar-maple" : "white-ash",
		buttWood: "gaboon-ebony",
		splice: "hand-four-point",
		layout: isPool ? "centre" : "three-quarter",
		ferruleMetal: "brass",
		gripFromButtMm: 105,
		ringSpacingMm: 2,
		tiltDeg: 0,
		sightTurnDeg: 0,
		arrowSpacingMm: 250,
		placeId: "heated-room",
		veneerThicknessMm: 0.6,
	} as const;
}

/** Reads what was typed. What cannot be read counts as left out and is told. */
export function readBench(
	answers: BenchAnswers,
	system: UnitSystem,
): { question: BenchQuestion; problems: readonly BenchProblem[] } {
	const problems: BenchProblem[] = [];
	const given: Partial<Record<BenchFieldName, number | string>> = {};
	for (const name of BENCH_FIELD_NAMES) {
		const text = answers[name]?.trim();
		if (!text) continue;
		const read = readBenchField(name, text, system);
		if (read.ok) given[name] = read.value;
		else problems.push({ ...read.problem, field: name });
	}
	const amount = (name: BenchFieldName) => given[name] as number | undefined;
	const chosen = <T extends string>(name: BenchFieldName) =>
		given[name] as T | undefined;
	const gameId = chosen<GameId>("game") ?? "snooker";
	const usual = usualBench(gameId);
	const placeId = chosen<PlaceId>("place") ?? usual.placeId;
	const air = (
		season: number,
		temperature: BenchFieldName,
		humidity: BenchFieldName,
	) => {
		const there = PLACES[placeId].seasons[season];
		if (!there) throw new RangeError(`${placeId} has no season ${season}`);
		return {
			name: there.name,
			air: {
				temperatureC: amount(temperature) ?? there.air.temperatureC,
				relativeHumidityPct: amount(humidity) ?? there.air.relativeHumidityPct,
			},
		};
	};
	return {
		problems,
		question: {
			gameId,
			cue: {
				lengthMm: amount("length") ?? usual.lengthMm,
				buttDiameterMm: amount("butt") ?? usual.buttDiameterMm,
				tipDiameterMm: amount("tip") ?? usual.tipDiameterMm,
				taperShape: chosen("taper") ?? usual.taperShape,
				shaftWood: chosen("shaftWood") ?? usual.shaftWood,
				buttWood: chosen("buttWood") ?? usual.buttWood,
				splice: chosen("splice") ?? usual.splice,
				layout: chosen("layout") ?? usual.layout,
				ferruleMetal: chosen("ferrule") ?? usual.ferruleMetal,
				...splicingOf(given, usual.veneerThicknessMm),
				fittings: {
					jointFromButtMm: amount("joint"),
					jointMetal: chosen("jointMetal"),
					endPieceMm: amount("endPiece"),
					domeRadiusMm: amount("dome"),
				},
			},
			wantedMassG: amount("mass"),
			wantedBalanceFromButtMm: amount("balance"),
			gripFromButtMm: amount("grip") ?? usual.gripFromButtMm,
			grain: {
				ringSpacingMm: amount("rings") ?? usual.ringSpacingMm,
				tiltDeg: amount("tilt") ?? usual.tiltDeg,
			},
			seasons: [
				air(0, "dryTemperature", "dryHumidity"),
				air(1, "dampTemperature", "dampHumidity"),
			],
			sightTurnDeg: amount("sightTurn") ?? usual.sightTurnDeg,
			arrowSpacingMm: amount("arrowSpacing") ?? usual.arrowSpacingMm,
			placeId,
		},
	};
}

/** Points only where something was said of them: a plain butt has none, and says so when asked. */
function splicingOf(
	given: Partial<Record<BenchFieldName, number | string>>,
	thicknessMm: number,
): Pick<CueRequest, "splicing"> {
	const points: FlatRequest = {
		...(given.points === undefined
			? {}
			: { pointFromButtMm: given.points as number }),
		...(given.core === undefined
			? {}
			: { coreHalfWidthMm: (given.core as number) / 2 }),
		...(given.veneerWood === undefined
			? {}
			: {
					veneers: [
						{ wood: given.veneerWood as CueRequest["buttWood"], thicknessMm },
					],
				}),
	};
	const wedge = (name: "betweenWood" | "frontWedgeWood") =>
		given[name] === undefined
			? undefined
			: { wood: given[name] as CueRequest["buttWood"] };
	return {
		splicing: {
			points: Object.keys(points).length > 0 ? points : undefined,
			pointsBetween: wedge("betweenWood"),
			frontWedge: wedge("frontWedgeWood"),
		},
	};
}
