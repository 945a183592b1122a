import { FELT } from "@/lib/advice/judgement";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import type { Finding } from "./online";
import {
	CATALOGUED,
	type CataloguedField,
	type OnlineChoices,
	type OnlineField,
	type OnlineOffer,
	optionsFor,
} from "./online-choices";

/** Other values for one choice or for two that belong together. */
export type OnlineChange = Partial<OnlineChoices>;

/**
 * How much of a change a customer takes a change to be, in what most players would just notice of a
 * figure: this project's judgement. `perUnit` counts for each step of a figure, `other` for another
 * choice of a list, `none` for going without, or for leaving to the workshop what was wished for.
 */
const SIZE: Readonly<
	Record<
		Exclude<OnlineField, "gameId" | "isGoingAbroad">,
		{
			readonly perUnit?: number;
			readonly other?: number;
			readonly none?: number;
		}
	>
> = {
	lengthMm: { perUnit: 1 / FELT.lengthMm },
	buttDiameterMm: { perUnit: 1 / FELT.buttDiameterMm },
	tipDiameterMm: { perUnit: 1 / FELT.tipDiameterMm },
	// To give up a wish is the last resort: any weight or balance that can be had is nearer to it.
	massG: { perUnit: 1 / FELT.massG, none: 60 },
	balanceFromButtMm: { perUnit: 1 / FELT.balanceMm, none: 60 },
	jointFromButtMm: { perUnit: 1 / 25, none: 2 },
	pointsFromButtMm: { perUnit: 1 / 25, none: 2 },
	veneerMm: { perUnit: 1 / 0.3 },
	veneerCount: { perUnit: 1.5 },
	wedgeCount: { perUnit: 1 },
	endPieceMm: { perUnit: 1 / 50, none: 3 },
	layout: { other: 5 },
	splice: { other: 6 },
	taperShape: { other: 3 },
	shaftWood: { other: 5 },
	buttWood: { other: 4 },
	pointsBetween: { other: 2.5, none: 3.5 },
	frontWedge: { other: 2, none: 3 },
	wedges: { other: 2, none: 3 },
	veneer: { other: 2, none: 3 },
	ferruleMetal: { other: 1.5 },
	jointMetal: { other: 1.5 },
	tip: { other: 1.5 },
	case: { other: 1, none: 2.5 },
};

/** Another thing to change is a change of its own, however small. */
const EACH = 0.5;

const isWood = (value: unknown): value is WoodId =>
	typeof value === "string" && value in WOODS;

/** Two woods as far apart as their densities: 200 kg/m³ count as one. */
const woodsApart = (a: unknown, b: unknown): number =>
	isWood(a) && isWood(b)
		? Math.abs(WOODS[a].density12KgM3.value - WOODS[b].density12KgM3.value) /
			200
		: 0;

/** How large a change is, 0 for none. Throws for a change of what is no choice of taste: game and border. */
export function changeSize(from: OnlineChoices, change: OnlineChange): number {
	let size = 0;
	for (const field of Object.keys(change) as OnlineField[]) {
		const before = from[field];
		const after = change[field];
		if (after === undefined || after === before) continue;
		size += EACH;
		if (field === "gameId" || field === "isGoingAbroad")
			throw new RangeError(`${field} is not the workshop's to change`);
		const { perUnit = 0, other = 1, none = other } = SIZE[field];
		if (after === null) size += none;
		else if (typeof after === "number" && typeof before === "number")
			size += perUnit * Math.abs(after - before);
		else size += other + woodsApart(before, after);
	}
	return size;
}

interface Asked {
	readonly finding: Finding;
	readonly choices: OnlineChoices;
	readonly offer: OnlineOffer;
}
type Lever = (asked: Asked) => readonly OnlineChange[];

/** What the bench and the form work to. */
const STEP = {
	massG: 1,
	lengthMm: 1,
	balanceFromButtMm: 1,
	jointFromButtMm: 1,
	pointsFromButtMm: 1,
	endPieceMm: 1,
	buttDiameterMm: 0.25,
	tipDiameterMm: 0.25,
	veneerMm: 0.1,
	veneerCount: 1,
	wedgeCount: 1,
} as const satisfies Partial<Record<OnlineField, number>>;
type SteppedField = keyof typeof STEP;

const isStepped = (field: OnlineField): field is SteppedField => field in STEP;

/** The nearest whole step at or above, or at or below. */
const stepped = (
	field: SteppedField,
	value: number,
	side: "up" | "down",
): number => {
	const steps = value / STEP[field];
	const whole =
		side === "up" ? Math.ceil(steps - 1e-9) : Math.floor(steps + 1e-9);
	return Math.round(whole * STEP[field] * 100) / 100;
};

const options =
	(field: CataloguedField): Lever =>
	({ choices, offer }) =>
		(optionsFor(offer, choices.gameId)[field] as readonly unknown[])
			.filter((option) => option !== choices[field])
			.map((option) => ({ [field]: option }) as OnlineChange);

const none =
	(...fields: OnlineField[]): Lever =>
	({ choices }) =>
		fields
			.filter((field) => choices[field] !== null)
			.map((field) => ({ [field]: null }) as OnlineChange);

/** So many values one after the other from the present one, both ways or one. */
const ladder =
	(
		field: SteppedField,
		p: { count: number; by?: number; way?: "up" | "down" },
	): Lever =>
	({ choices }) => {
		const from = choices[field];
		if (from === null) return [];
		const by = p.by ?? STEP[field];
		const start = stepped(field, from, "down");
		return Array.from({ length: 2 * p.count + 1 }, (_, i) => i - p.count)
			.map((step) => Math.round((start + step * by) * 100) / 100)
			.filter(
				(value) =>
					value > 0 &&
					value !== from &&
					(p.way !== "up" || value > from) &&
					(p.way !== "down" || value < from),
			)
			.map((value) => ({ [field]: value }));
	};

/** Just inside the bound that the finding names for a figure. */
const bound: Lever = ({ finding: { field, value, min, max } }) => {
	if (!isStepped(field) || typeof value !== "number") return [];
	const found: OnlineChange[] = [];
	if (min !== undefined && value < min)
		found.push({ [field]: stepped(field, min, "up") });
	if (max !== undefined && value > max)
		found.push({ [field]: stepped(field, max, "down") });
	if (!Number.isInteger(value) && STEP[field] === 1)
		found.push({ [field]: stepped(field, value, "down") });
	return found;
};

/** The weight that the refused plan says can be had. */
const nearestMass =
	(side: "up" | "down"): Lever =>
	({ finding: { facts } }) =>
		typeof facts?.nearestMassG === "number"
			? [{ massG: stepped("massG", facts.nearestMassG, side) }]
			: [];

/** The balance that can be had at the weight, and the nearest pair of both. */
const nearestBalance: Lever = ({ finding }) => {
	const { value, min, max, facts } = finding;
	const found: OnlineChange[] = [];
	if (typeof value === "number" && min !== undefined && max !== undefined)
		found.push({
			balanceFromButtMm:
				value < min
					? stepped("balanceFromButtMm", min, "up")
					: stepped("balanceFromButtMm", max, "down"),
		});
	if (
		typeof facts?.pairMassG === "number" &&
		typeof facts.pairFigure === "number"
	)
		found.push({
			massG: Math.round(facts.pairMassG),
			balanceFromButtMm: Math.round(facts.pairFigure),
		});
	return found;
};

const MASS_STEPS_G = [10, 20, 30, 45, 60, 80, 100];
/** Weights on both sides of the wanted one, or of none a few on from the natural one. */
const otherMasses: Lever = ({ choices, finding: { facts } }) => {
	const from = choices.massG ?? facts?.wantedMassG;
	return typeof from === "number"
		? MASS_STEPS_G.flatMap((by) => [
				{ massG: Math.round(from - by) },
				{ massG: Math.round(from + by) },
			]).filter(({ massG }) => massG >= 300 && massG <= 850)
		: [];
};

/** The shape that decides how heavy wood comes out. */
const lighter: readonly Lever[] = [
	options("buttWood"),
	ladder("buttDiameterMm", { count: 16, way: "down" }),
	options("splice"),
	options("shaftWood"),
	none("pointsBetween", "frontWedge", "wedges", "veneer", "endPieceMm"),
];

const LEVERS: Readonly<Record<string, readonly Lever[]>> = {
	"weight-below-natural": [nearestMass("up"), ...lighter, none("massG")],
	"weight-above-bore": [
		nearestMass("down"),
		options("buttWood"),
		ladder("buttDiameterMm", { count: 12, way: "up" }),
		options("layout"),
		none("balanceFromButtMm", "massG"),
	],
	"balance-out-of-reach": [
		nearestBalance,
		otherMasses,
		options("layout"),
		options("buttWood"),
		none("balanceFromButtMm", "massG"),
	],
	"hand-splice-only": [
		({ finding: { field } }) => [{ [field]: null } as OnlineChange],
		options("splice"),
	],
	"no-joint-in-layout": [none("jointFromButtMm"), options("layout")],
	"joints-too-close": [
		options("endPieceMm"),
		ladder("jointFromButtMm", { count: 20, by: 10 }),
		none("jointFromButtMm"),
		options("layout"),
	],
	"case-too-short": [
		options("case"),
		options("layout"),
		ladder("jointFromButtMm", { count: 20, by: 10 }),
		none("jointFromButtMm"),
	],
	"veneers-too-thick": [
		ladder("veneerMm", { count: 30, way: "down" }),
		ladder("veneerCount", { count: 4, way: "down" }),
		ladder("buttDiameterMm", { count: 20, way: "up" }),
		none("veneer"),
	],
};

/** Of a choice without levers of its own: its list, its bound, values near by, or going without. */
const PLAIN: readonly Lever[] = [
	(asked) =>
		(CATALOGUED as readonly OnlineField[]).includes(asked.finding.field)
			? options(asked.finding.field as CataloguedField)(asked)
			: [],
	bound,
	({ finding: { field }, choices }) =>
		isOptional(field) && choices[field] !== null
			? [{ [field]: null } as OnlineChange]
			: [],
];

/** A finding that names the bound of something else than the choice: values near by are tried. */
const NEAR: Partial<Record<OnlineField, Lever>> = {
	buttDiameterMm: ladder("buttDiameterMm", { count: 20 }),
	pointsFromButtMm: ladder("pointsFromButtMm", { count: 40, by: 10 }),
	lengthMm: ladder("lengthMm", { count: 20, by: 10 }),
	pointsBetween: ladder("buttDiameterMm", { count: 20, way: "up" }),
	frontWedge: ladder("buttDiameterMm", { count: 20, way: "up" }),
	wedges: ladder("buttDiameterMm", { count: 20, way: "up" }),
	jointFromButtMm: options("layout"),
};

const OPTIONAL: readonly OnlineField[] = [
	"massG",
	"balanceFromButtMm",
	"jointFromButtMm",
	"pointsFromButtMm",
];
const isOptional = (field: OnlineField) => OPTIONAL.includes(field);

/** What may be tried against a finding, one change each; game and border are never touched. */
export function changesFor(asked: Asked): readonly OnlineChange[] {
	const { code, field } = asked.finding;
	const near = NEAR[field];
	const levers = LEVERS[code] ?? [...PLAIN, ...(near ? [near] : [])];
	return levers
		.flatMap((lever) => lever(asked))
		.filter((change) => changeSize(asked.choices, change) > 0);
}
