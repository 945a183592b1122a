import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Advice, advise } from "@/lib/advice/advise";
import {
	type FittingInput,
	WISHED_FIGURES,
	type WishedFigure,
} from "@/lib/advice/input";
import { FELT } from "@/lib/advice/judgement";
import { must } from "@/lib/numerics/outcome";
import { adviceView } from "@/lib/present/advice-view";
import { Z90 } from "@/lib/reference/estimate";
import {
	CUE_SD_LOG_ODDS,
	FALL_OFF,
	FALL_OFF_SQUARE_MULTIPLES,
} from "@/lib/trial/assumptions";
import { type Chance, seededChance } from "@/lib/trial/chance";
import { beliefsFrom } from "@/lib/trial/preference";
import { wishUpdates } from "@/lib/trial/wish-update";
import { unsaid, withStature } from "../support/inputs";
import { METRIC } from "../support/readers";
import { RACK } from "../trial/support/rack";
import { searched } from "./support";

const WISH = {
	lengthMm: 1483,
	massG: 503,
	buttDiameterMm: 28.6,
	tipDiameterMm: 9.7,
} as const;
const SD = { lengthMm: 22, massG: 17, buttDiameterMm: 0.9, tipDiameterMm: 0.4 };

const wishing = (
	figure: WishedFigure,
	value: number,
	spreadOf?: number,
): FittingInput => ({
	...withStature(1780),
	wishes: { [figure]: value },
	...(spreadOf === undefined
		? {}
		: {
				wishSpread: {
					[figure]: {
						value: spreadOf,
						sd: SD[figure],
						sessions: 2,
						shots: 80,
					},
				},
			}),
});
const figureOf = (advice: Advice, figure: WishedFigure) =>
	({
		lengthMm: advice.length,
		massG: advice.mass,
		buttDiameterMm: advice.butt.figure,
		tipDiameterMm: advice.tip,
	})[figure];

describe.each(WISHED_FIGURES)("a wish for %s that trials gave", (name) => {
	const of = (input: FittingInput) => figureOf(must(advise(input)), name);

	test("has the trials' value and spread, and says so", () => {
		const figure = of(wishing(name, WISH[name], WISH[name]));
		expect(figure).toMatchObject({
			value: WISH[name],
			exact: WISH[name],
			sd: SD[name],
			basis: "wish",
		});
		expect(figure.band.high - figure.band.low).toBeCloseTo(
			2 * Z90 * SD[name],
			10,
		);
		expect(figure.sureness).not.toBe("chosen");
		expect(figure.evidence[0]).toMatchObject({
			code: "wish-from-trials",
			shareFraction: 1,
			facts: { sessions: 2, shots: 80 },
		});
		const view = adviceView(
			must(advise(wishing(name, WISH[name], WISH[name]))),
			METRIC,
		);
		expect(view.figures.map(({ reason }) => reason).join(" ")).toMatch(
			/You asked for .*, the best by 80 shots in 2 trials at the table/,
		);
	});

	test("typed over it is an ordinary wish again", () => {
		const plain = wishing(name, WISH[name]);
		const typedOver = wishing(name, WISH[name], WISH[name] + 0.1);
		expect(of(typedOver)).toEqual(of(plain));
		expect(of(plain)).toMatchObject({ sd: 0, sureness: "chosen" });
	});

	test("without the wish its spread moves nothing", () => {
		const { wishes: _, ...input } = wishing(name, WISH[name], WISH[name]);
		expect(of({ ...input, wishes: {} })).toEqual(of(withStature(1780)));
	});
});

describe("in the search", () => {
	test("the weight's doubt goes into the worth of the cues", () => {
		const width = (input: FittingInput) => {
			const [best] = searched(input, { optionCount: 1, drawCount: 400 }).report
				.options;
			const { low, high } = best?.overallBand ?? { low: 0, high: 0 };
			return high - low;
		};
		const wide = {
			...wishing("massG", 500),
			wishSpread: { massG: { value: 500, sd: 40, sessions: 1, shots: 20 } },
		};
		expect(width(wide)).toBeGreaterThan(width(wishing("massG", 500)) + 0.005);
	}, 60_000);

	test("its argument names the trials", () => {
		const { report } = searched(wishing("lengthMm", 1483, 1483), {
			optionCount: 1,
		});
		const length = report.arguments.find(({ choice }) => choice === "length");
		expect(length?.forPlayer).toMatchObject({
			code: "wish-from-trials",
			facts: { sessions: 2, shots: 80 },
		});
	}, 60_000);
});

const normal = (chance: Chance): number =>
	Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
const logistic = (x: number) => 1 / (1 + Math.exp(-x));

/**
 * Players whose own best weight is drawn from the advice's belief shoot with a light and a heavy cue;
 * the offer is taken as a wish, rounded as it is typed. Nine in ten bands must then hold the player's
 * own weight. Limited by the count of players: three standard errors.
 */
test("coverage of the widened band by 400 seeded players", () => {
	const chance = seededChance(77);
	const target = { value: 520, sd: 30 };
	const before = beliefsFrom(RACK, { massG: target });
	let taken = 0;
	let held = 0;
	let heldAsOrdinary = 0;
	while (taken < 400) {
		const bestG = target.value + target.sd * normal(chance);
		const multiple = FALL_OFF_SQUARE_MULTIPLES[
			Math.floor(3 * chance())
		] as number;
		const level = 0.4 + 0.6 * normal(chance);
		const tallies = (["light", "heavy"] as const).map((cueId) => {
			const cue = RACK.find(({ id }) => id === cueId);
			if (!cue) throw new RangeError(cueId);
			const share = logistic(
				level +
					CUE_SD_LOG_ODDS * normal(chance) -
					(0.5 * ((cue.massG - bestG) / FALL_OFF.massG) ** 2) / multiple,
			);
			let hits = 0;
			for (let shot = 0; shot < 40; shot++) hits += Number(chance() < share);
			return { cueId, hits, shots: 40 };
		});
		const offer = wishUpdates({
			rack: RACK,
			sessions: [{ tallies }],
			before,
		}).find(({ field }) => field === "massG");
		if (offer === undefined) continue;
		taken++;
		const massG = Math.round(offer.value);
		const { mass } = must(
			advise({
				...unsaid,
				wishes: { massG },
				wishSpread: {
					massG: { value: massG, sd: offer.sd, sessions: 1, shots: 80 },
				},
			}),
		);
		held += Number(mass.band.low <= bestG && bestG <= mass.band.high);
		heldAsOrdinary += Number(Math.abs(massG - bestG) < 0.5);
	}
	expect(Math.abs(held / taken - 0.9)).toBeLessThan(
		3 * Math.sqrt((0.9 * 0.1) / taken),
	);
	expect(heldAsOrdinary / taken).toBeLessThan(0.1);
}, 60_000);

test("any wish and any spread: the band is about the wish and as wide as the spread says", () => {
	fc.assert(
		fc.property(
			fc.constantFrom(...WISHED_FIGURES),
			fc.double({ min: 0.1, max: 4, noNaN: true }),
			(name, felt) => {
				const sd = felt * FELT[name];
				const value = WISH[name];
				const figure = figureOf(
					must(
						advise({
							...wishing(name, value),
							wishSpread: { [name]: { value, sd, sessions: 1, shots: 10 } },
						}),
					),
					name,
				);
				expect((figure.band.low + figure.band.high) / 2).toBeCloseTo(value, 9);
				expect(figure.sd).toBe(sd);
				expect(figure.sureness).toBe(
					Z90 * sd <= FELT[name]
						? "firm"
						: Z90 * sd <= 2 * FELT[name]
							? "fair"
							: "rough",
				);
			},
		),
		{ numRuns: 60 },
	);
});
