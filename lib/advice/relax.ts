import { TAPER_LIMITS } from "@/lib/cue/taper";
import type { Refusal } from "@/lib/numerics/outcome";
import { type Axes, axesFor } from "./axes";
import { AT } from "./criteria";
import type { FittingInput, Wishes } from "./input";
import { FELT, STEP } from "./judgement";
import { type Prepared, prepare, type SearchChoices } from "./prepare";
import { type ShapeTables, scan } from "./scan";

type NumericWish = "lengthMm" | "massG" | "buttDiameterMm" | "tipDiameterMm";
type ChoiceWish = "buttWood" | "shaftWood" | "splice" | "layout" | "taperShape";

/** One thing the customer fixed, and the nearest that can be built when only it gives way. */
export interface Relaxation {
	/** Of the fitting or the choices: "wishes.massG", "maxPriceMinor". */
	readonly field: string;
	readonly from: number | string;
	readonly to: number | string;
	/** The change in the field's own unit; null for a choice. */
	readonly by: number | null;
	/** The change in smallest felt differences; a choice counts as CHOICE_FELT. */
	readonly feltSteps: number;
	/** A wish that has to be dropped as well, where no single one is enough. */
	readonly together: Relaxation | null;
}

/** Giving up a wood, splice, layout or taper that was wished for weighs as much as this. Assumed. */
const CHOICE_FELT = 4;
const FELT_PRICE_SHARE = 0.05;

interface Numeric {
	readonly step: number;
	readonly felt: number;
	/** What a cue can have at all. */
	readonly range: readonly [number, number];
}

const NUMERIC: Readonly<Record<NumericWish, Numeric>> = {
	lengthMm: {
		step: STEP.lengthMm,
		felt: FELT.lengthMm,
		range: TAPER_LIMITS.lengthMm,
	},
	massG: { step: STEP.massG, felt: FELT.massG, range: [100, 1200] },
	buttDiameterMm: {
		step: STEP.diameterMm,
		felt: FELT.buttDiameterMm,
		range: TAPER_LIMITS.buttDiameterMm,
	},
	tipDiameterMm: {
		step: STEP.diameterMm,
		felt: FELT.tipDiameterMm,
		range: TAPER_LIMITS.tipDiameterMm,
	},
};
const CHOICES = [
	"buttWood",
	"shaftWood",
	"splice",
	"layout",
	"taperShape",
] as const satisfies readonly ChoiceWish[];

interface Ask {
	readonly input: FittingInput;
	readonly choices: SearchChoices;
	/** Of the fitting as it was asked for: stance and feel stay, whatever is relaxed. */
	readonly known: Pick<Prepared, "needs" | "feel">;
	readonly tables: ShapeTables;
}

/**
 * For a fitting of which nothing can be built within the hard limits: what to relax and by how much,
 * least felt first. Each numeric wish is moved out from where it is, to the nearest bench step at
 * which something can be built with everything else kept; choices are freed. Where no single one is
 * enough, the weight together with one other.
 */
export function relaxationsFor({
	input,
	choices,
}: {
	input: FittingInput;
	choices: SearchChoices;
}): readonly Relaxation[] {
	const known = prepare(input, choices);
	if (!known.ok) return [];
	const ask: Ask = { input, choices, known: known.value, tables: new Map() };
	const single = [
		...numericWishes(ask).flatMap((name) => relaxNumeric(ask, name)),
		...choiceWishes(ask).flatMap((name) => relaxChoice(ask, name)),
		...relaxCeilings(ask),
	];
	if (single.length > 0) return byFelt(single);
	const { wishes } = ask.input;
	if (wishes.massG === undefined) return [];
	return byFelt(
		choiceWishes(ask).flatMap((name) =>
			relaxNumeric(without(ask, name), "massG").map((mass) => ({
				...mass,
				feltSteps: mass.feltSteps + CHOICE_FELT,
				together: {
					field: `wishes.${name}`,
					from: String(wishes[name]),
					to: "any",
					by: null,
					feltSteps: CHOICE_FELT,
					together: null,
				},
			})),
		),
	);
}

const byFelt = (all: readonly Relaxation[]): readonly Relaxation[] =>
	[...all].sort((a, b) => a.feltSteps - b.feltSteps);

const numericWishes = ({ input }: Ask): readonly NumericWish[] =>
	(Object.keys(NUMERIC) as NumericWish[]).filter(
		(name) => input.wishes[name] !== undefined,
	);

const choiceWishes = ({ input }: Ask): readonly ChoiceWish[] =>
	CHOICES.filter((name) => input.wishes[name] !== undefined);

function withWish(ask: Ask, wishes: Wishes): Ask {
	return {
		...ask,
		input: {
			...ask.input,
			wishes: JSON.parse(JSON.stringify({ ...ask.input.wishes, ...wishes })),
		},
	};
}

const without = (ask: Ask, name: keyof Wishes): Ask =>
	withWish(ask, { [name]: undefined });

/** The outermost values in every direction: what can be built shows there. */
function coarse(prepared: Prepared): Axes {
	return axesFor({ ...prepared, wantedCount: 0 });
}

/** Whether any cue can be built: no feel is asked for it, and none of the fitting's is worked out anew. */
function canBuild({ input, choices, known, tables }: Ask): boolean {
	const prepared = prepare(input, choices, known);
	if (!prepared.ok) return false;
	return (
		scan({
			...prepared.value,
			axes: coarse(prepared.value),
			visit: () => undefined,
			enough: 1,
			tables,
		}) > 0
	);
}

/** Whether a search would take it up: its own usual build can be made as well. */
const isSearchable = ({ input, choices }: Ask): boolean =>
	prepare(input, choices).ok;

/** Furthest a numeric wish is moved, bench steps. */
const MOST_STEPS = 128;

function relaxNumeric(ask: Ask, name: NumericWish): readonly Relaxation[] {
	const from = ask.input.wishes[name];
	if (from === undefined) return [];
	const { step, felt, range } = NUMERIC[name];
	const found = [1, -1].flatMap((sign): number[] => {
		const at = (steps: number): number =>
			sign > 0
				? (Math.floor(from / step + 1e-9) + steps) * step
				: (Math.ceil(from / step - 1e-9) - steps) * step;
		const works = (steps: number): boolean =>
			at(steps) >= range[0] &&
			at(steps) <= range[1] &&
			canBuild(withWish(ask, { [name]: at(steps) }));
		let bad = 0;
		let good = 0;
		for (let steps = 1; steps <= MOST_STEPS && good === 0; steps *= 2)
			if (works(steps)) good = steps;
			else bad = steps;
		if (good === 0) return [];
		while (good - bad > 1) {
			const middle = Math.floor((good + bad) / 2);
			if (works(middle)) good = middle;
			else bad = middle;
		}
		return isSearchable(withWish(ask, { [name]: at(good) })) ? [at(good)] : [];
	});
	return found.map((to) => ({
		field: `wishes.${name}`,
		from,
		to,
		by: to - from,
		feltSteps: Math.abs(to - from) / felt,
		together: null,
	}));
}

/** What the catalogue offers in place of a choice, as far as it can be built; its own order. */
function relaxChoice(ask: Ask, name: ChoiceWish): readonly Relaxation[] {
	const from = String(ask.input.wishes[name]);
	const free = prepare(without(ask, name).input, ask.choices, ask.known);
	if (!free.ok) return [];
	const { catalogue } = free.value;
	const offers: readonly string[] = {
		buttWood: catalogue.buttWoods.map(({ id }) => id),
		shaftWood: catalogue.shaftWoods,
		splice: catalogue.splices.map(({ id }) => id),
		layout: catalogue.layouts,
		taperShape: catalogue.taperShapes,
	}[name];
	return offers
		.filter((offer) => offer !== from)
		.map((offer) => ({ offer, asked: withWish(ask, { [name]: offer }) }))
		.filter(({ asked }) => canBuild(asked) && isSearchable(asked))
		.map(({ offer }) => ({
			field: `wishes.${name}`,
			from,
			to: offer,
			by: null,
			feltSteps: CHOICE_FELT,
			together: null,
		}));
}

/** The least a price limit or a case must allow. */
function relaxCeilings(ask: Ask): readonly Relaxation[] {
	return (
		[
			["maxPriceMinor", AT.price],
			["longestPieceMm", AT.carrying],
		] as const
	).flatMap(([field, column]) => {
		const from = ask.choices[field];
		if (from === undefined) return [];
		const free = prepare(
			ask.input,
			{ ...ask.choices, [field]: undefined },
			ask.known,
		);
		if (!free.ok) return [];
		let least = Number.POSITIVE_INFINITY;
		scan({
			...free.value,
			axes: coarse(free.value),
			tables: ask.tables,
			visit: (_place, row) => {
				least = Math.min(least, row[column] as number);
			},
		});
		if (!(least > from) || !Number.isFinite(least)) return [];
		const felt =
			field === "maxPriceMinor" ? FELT_PRICE_SHARE * from : FELT.lengthMm;
		return [
			{
				field,
				from,
				to: least,
				by: least - from,
				feltSteps: (least - from) / felt,
				together: null,
			},
		];
	});
}

/** Relaxations as refusals: "nothing-can-be-built", then one "relax" for each way out. */
export function refusalsFrom(
	relaxations: readonly Relaxation[],
): readonly Refusal[] {
	return [
		{
			code: "nothing-can-be-built",
			field: "wishes",
			value: null,
			facts: { waysOut: relaxations.length },
		},
		...relaxations.map(({ field, from, to, by, feltSteps, together }) => ({
			code: "relax",
			field,
			value: from,
			...(typeof to === "number" && by !== null
				? by > 0
					? { min: to }
					: { max: to }
				: {}),
			facts: {
				to,
				feltSteps,
				...(by === null ? {} : { by }),
				...(together === null ? {} : { alsoDrop: together.field }),
			},
		})),
	];
}
