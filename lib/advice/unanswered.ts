import type { BilletDensities } from "@/lib/cue/design";
import type { MeasuredLength } from "@/lib/player/measures";
import type { WoodId } from "@/lib/reference/woods";
import { densityOf, densitySdOf } from "./evaluate";
import type { FittingNeeds } from "./fitting-needs";
import type { FittingInput } from "./input";
import { FELT, HABIT_SD, usualBalanceMm } from "./judgement";

/** One possible answer, with how likely it is. */
export interface PossibleAnswer {
	readonly share: number;
	readonly value: number | string;
	readonly input: FittingInput;
	readonly densities?: BilletDensities;
}

/** Something that could be measured or asked, or better than it was, and what it may turn out to be. */
export interface OpenQuestion {
	/** The input's name: "player.statureMm", "stance.bridgeArm", "density.gaboon-ebony". */
	readonly answer: string;
	readonly unit: "mm" | "g" | "kg/m³" | null;
	/** What is known of it now; null for a choice. */
	readonly now: { readonly value: number; readonly sd: number } | null;
	/** Two answers one standard deviation either side, equally likely: they carry mean and variance. */
	readonly possible: readonly PossibleAnswer[];
}

type Change = (value: number) => FittingInput;

function measured(p: {
	answer: string;
	unit: "mm" | "g";
	value: number;
	sd: number;
	change: Change;
}): OpenQuestion {
	return {
		answer: p.answer,
		unit: p.unit,
		now: { value: p.value, sd: p.sd },
		possible: [-1, 1].map((sign) => {
			const value = p.value + sign * p.sd;
			return { share: 0.5, value, input: p.change(value) };
		}),
	};
}

const LENGTHS: readonly MeasuredLength[] = [
	"statureMm",
	"armSpanMm",
	"handLengthMm",
	"shoulderToElbowMm",
	"elbowToGripMm",
	"shoulderBreadthMm",
];

/** Readings one careful visit takes of the ring. */
const RING_READINGS = 3;

/** Everything a fitting left open, each with its two-point forecast by the models. */
export function openQuestions(p: {
	needs: FittingNeeds;
	woods: readonly WoodId[];
	densities: BilletDensities;
}): readonly OpenQuestion[] {
	const { needs } = p;
	return [
		...bodyQuestions(needs),
		...stanceQuestions(needs),
		...presentCueQuestions(needs),
		...choiceQuestions(needs.input),
		...[...new Set(p.woods)].map((wood) => densityQuestion(p, wood)),
	];
}

function bodyQuestions({ input, body, grip }: FittingNeeds): OpenQuestion[] {
	const { player } = input;
	const lengths = LENGTHS.filter((name) => player[name] === undefined).map(
		(name) =>
			measured({
				answer: `player.${name}`,
				unit: "mm",
				value: body[name].value,
				sd: body[name].sd,
				change: (value) => ({ ...input, player: { ...player, [name]: value } }),
			}),
	);
	const before = player.gripCircleReadingsMm ?? [];
	const { circleMm } = grip;
	return [
		...lengths,
		measured({
			answer: "player.gripCircleReadingsMm",
			unit: "mm",
			value: circleMm.value,
			sd: circleMm.sd,
			change: (value) => ({
				...input,
				player: {
					...player,
					gripCircleReadingsMm: [
						...before,
						...new Array<number>(RING_READINGS).fill(value),
					],
				},
			}),
		}),
	];
}

function stanceQuestions({ input, reach }: FittingNeeds): OpenQuestion[] {
	const { stance } = input;
	const names = ["bridgeLengthMm", "gripFromButtMm", "bridgeToGripMm"] as const;
	return names
		.filter((name) => stance[name] === undefined)
		.map((name) =>
			measured({
				answer: `stance.${name}`,
				unit: "mm",
				value: reach[name].value,
				sd: reach[name].sd,
				change: (value) => ({ ...input, stance: { ...stance, [name]: value } }),
			}),
		);
}

/** A present cue not yet measured: expected at the need, as far off as need and habit leave open. */
function presentCueQuestions(needs: FittingNeeds): OpenQuestion[] {
	const { input } = needs;
	const { presentCue } = input;
	const figures = {
		lengthMm: needs.length,
		massG: needs.massNeed.figure,
		buttDiameterMm: needs.butt.figure,
		tipDiameterMm: needs.tip,
	} as const;
	const change =
		(name: string): Change =>
		(value) => ({ ...input, presentCue: { ...presentCue, [name]: value } });
	const questions = (Object.keys(figures) as (keyof typeof figures)[])
		.filter((name) => presentCue[name] === undefined)
		.filter((name) => figures[name].basis !== "wish")
		.map((name) =>
			measured({
				answer: `presentCue.${name}`,
				unit: name === "massG" ? "g" : "mm",
				value: figures[name].exact,
				sd: Math.hypot(figures[name].sd, HABIT_SD[name].used),
				change: change(name),
			}),
		);
	const { lengthMm, massG, balanceFromButtMm } = presentCue;
	if (
		lengthMm !== undefined &&
		massG !== undefined &&
		balanceFromButtMm === undefined
	) {
		const { min, max } = usualBalanceMm(lengthMm);
		questions.push(
			measured({
				answer: "presentCue.balanceFromButtMm",
				unit: "mm",
				value: (min + max) / 2,
				sd: FELT.balanceMm,
				change: change("balanceFromButtMm"),
			}),
		);
	}
	return questions;
}

const CHOICES = {
	stance: ["side-on", "square"],
	posture: ["low", "upright"],
	bridgeArm: ["straight", "bent"],
} as const;

function choiceQuestions(input: FittingInput): OpenQuestion[] {
	const { stance } = input;
	const open: OpenQuestion[] = (
		Object.keys(CHOICES) as (keyof typeof CHOICES)[]
	)
		.filter((name) => stance[name] === undefined)
		.map((name) => ({
			answer: `stance.${name}`,
			unit: null,
			now: null,
			possible: CHOICES[name].map((value) => ({
				share: 1 / CHOICES[name].length,
				value,
				input: { ...input, stance: { ...stance, [name]: value } },
			})),
		}));
	if (input.level === undefined) {
		const levels = ["new", "club", "county"] as const;
		open.push({
			answer: "level",
			unit: null,
			now: null,
			possible: levels.map((level) => ({
				share: 1 / levels.length,
				value: level,
				input: { ...input, level },
			})),
		});
	}
	return open;
}

/** What is left open of a billet once it was measured and weighed, kg/m³. Assumed. */
const WEIGHED_SD = 8;

function densityQuestion(
	{ needs, densities }: { needs: FittingNeeds; densities: BilletDensities },
	wood: WoodId,
): OpenQuestion {
	const value = densityOf(wood, densities);
	const sd = densitySdOf(wood, densities);
	return {
		answer: `density.${wood}`,
		unit: "kg/m³",
		now: { value, sd },
		possible: [-1, 1].map((sign) => ({
			share: 0.5,
			value: value + sign * sd,
			input: needs.input,
			densities: {
				...densities,
				[wood]: { kgM3: value + sign * sd, sd: WEIGHED_SD },
			},
		})),
	};
}
