import { axesFor, candidateAt } from "@/lib/advice/axes";
import { CRITERION_COUNT } from "@/lib/advice/criteria";
import type { FittingInput } from "@/lib/advice/input";
import { seededUniform } from "@/lib/advice/normal";
import { frontOf, type Pool, poolFrom } from "@/lib/advice/pool";
import { prepare, type SearchChoices } from "@/lib/advice/prepare";
import { referenceEvaluate } from "@/lib/advice/reference-evaluate";
import { relaxationsFor } from "@/lib/advice/relax";
import { searchCues } from "@/lib/advice/search";
import { whatWouldChange } from "@/lib/advice/sensitivity";
import { must } from "@/lib/numerics/outcome";

/** An adult with no wishes: the widest search there is. */
const INPUT: FittingInput = {
	player: { statureMm: 1750 },
	stance: { gameId: "snooker" },
	presentCue: {},
	wishes: {},
};
/** All but a few figures fixed: few loads a shape, so most shapes for the same count. */
const WISHED: FittingInput = {
	...INPUT,
	wishes: { massG: 505, buttWood: "indian-rosewood" },
};

/** Every figure but the tip fixed, and every choice: the grid is finer than the bench. */
const NEARLY_ALL: FittingInput = {
	...INPUT,
	wishes: {
		massG: 505,
		lengthMm: 1460,
		buttDiameterMm: 29,
		buttWood: "indian-rosewood",
		shaftWood: "white-ash",
		splice: "hand-four-point",
		layout: "three-quarter",
		taperShape: "even",
	},
};
/** Nothing can be built: with a present cue, whose feel is worked out once for all ways out. */
const IMPOSSIBLE: FittingInput = {
	...INPUT,
	presentCue: {
		lengthMm: 1460,
		massG: 510,
		buttDiameterMm: 29,
		tipDiameterMm: 9.5,
		balanceFromButtMm: 430,
	},
	wishes: { massG: 1000, buttDiameterMm: 27, buttWood: "black-walnut" },
};

/** Quickest and middle of several runs, ms; the first ones warm the compiler and are left out. */
function timed(
	times: number,
	work: () => void,
): { best: number; middle: number } {
	const runs: number[] = [];
	for (let i = 0; i < times + 2; i++) {
		const from = performance.now();
		work();
		if (i >= 2) runs.push(performance.now() - from);
	}
	runs.sort((a, b) => a - b);
	return {
		best: runs[0] ?? Number.NaN,
		middle: runs[Math.floor(runs.length / 2)] ?? Number.NaN,
	};
}

/** One multiply-add for every value the scan leaves behind: what memory alone would take. */
function bareLoopMs(pool: Pool): number {
	const from = pool.measures;
	const into = new Float64Array(pool.count * CRITERION_COUNT);
	return timed(20, () => {
		for (let i = 0; i < into.length; i++)
			into[i] = (from[i] as number) * 1.0001 + 0.5;
	}).best;
}

const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 0)} ms`;

function scanned(name: string, input: FittingInput): string[] {
	const choices: SearchChoices = {};
	const prepared = must(prepare(input, choices));
	const axes = axesFor({ ...prepared, wantedCount: 90_000 });
	const first = performance.now();
	let pool = poolFrom({ ...prepared, axes });
	const cold = performance.now() - first;
	const scan = timed(7, () => {
		pool = poolFrom({ ...prepared, axes });
	});
	const front = timed(5, () => {
		frontOf(pool);
	});
	const perSecond = (time: number) =>
		Math.round((pool.candidates / time) * 1000).toLocaleString("en");

	const sample = 60;
	const uniform = seededUniform(5);
	// Of the acceptable ones: each can be built, so the reference does all its work for every one.
	const places = Array.from(
		{ length: sample },
		() => pool.place[Math.floor(uniform() * pool.count)] as number,
	);
	const reference = timed(2, () => {
		for (const place of places)
			referenceEvaluate(candidateAt(axes, place), prepared.setting);
	});
	const perCandidate = reference.best / sample;
	const whole = perCandidate * pool.candidates;
	const bare = bareLoopMs(pool);
	return [
		`${name}: ${pool.candidates.toLocaleString("en")} candidates, ${pool.buildable.toLocaleString("en")} buildable, ${pool.count.toLocaleString("en")} acceptable, ${frontOf(pool).length.toLocaleString("en")} beaten by none`,
		`  scan: first ${ms(cold)}, then best ${ms(scan.best)}, middle ${ms(scan.middle)}: ${perSecond(scan.best)} candidates a second; front ${ms(front.best)}`,
		`  reference evaluator: ${ms(perCandidate)} a candidate (${sample} sampled), so ${(whole / 1000).toFixed(0)} s for the same search were all of it built: the scan takes 1/${Math.round(whole / scan.best)} of it`,
		`  bare multiply-add over the ${(pool.count * CRITERION_COUNT).toLocaleString("en")} values kept: ${ms(bare)}: the scan takes ${Math.round(scan.best / bare)} times that`,
	];
}

export function run(): string {
	const lines = [
		...scanned("no wishes", INPUT),
		...scanned("weight and wood fixed", WISHED),
		...scanned("all but the tip fixed", NEARLY_ALL),
	];
	let found = must(searchCues(INPUT, { uniform: seededUniform(1) }));
	const search = timed(5, () => {
		found = must(searchCues(INPUT, { uniform: seededUniform(1) }));
	});
	const change = timed(3, () => {
		whatWouldChange({ search: found, choices: {} });
	});
	const ways = timed(3, () => {
		relaxationsFor({ input: IMPOSSIBLE, choices: {} });
	});
	const limitMs = 1000;
	if (!(search.best < limitMs))
		throw new Error(
			`a whole search takes ${ms(search.best)}, over ${limitMs} ms`,
		);
	return [
		...lines,
		`whole search, with front, refinement, bands and reasons: best ${ms(search.best)}, middle ${ms(search.middle)}`,
		`what would change it: ${ms(change.best)}`,
		`ways out where nothing can be built: best ${ms(ways.best)}, middle ${ms(ways.middle)}`,
	].join("\n");
}
