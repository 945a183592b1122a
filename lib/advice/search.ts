import { accept, type Caution, type Outcome } from "@/lib/numerics/outcome";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import { argueChoices } from "./argue-choices";
import { type Argued, argueFigures } from "./argument";
import { axesFor, candidateAt, isEverythingFixed } from "./axes";
import type { Criterion } from "./criteria";
import type { Figure } from "./figure";
import type { FittingInput } from "./input";
import { type Draw, drawsFrom } from "./latent";
import type { Uniform } from "./normal";
import { type CueOption, type Worked, workOut } from "./option";
import { bestDifferent, frontOf, type Pool, poolFrom } from "./pool";
import {
	judgedBy,
	type Prepared,
	prepare,
	refiningOf,
	type SearchChoices,
} from "./prepare";
import { type Refined, refine } from "./refine";
import { refusalsFrom, relaxationsFor } from "./relax";
import { type SoftenedLimit, softened } from "./soften";
import { type Closeness, closenessOf } from "./uncertainty";
import { MODEL_VERSION } from "./version";

export interface SearchOptions extends SearchChoices {
	/** Source of chance for the bands: seeded by the caller, so that a search can be repeated. */
	readonly uniform: Uniform;
	/** At least so many candidates, as long as any figure is free. Default 90,000. */
	readonly candidateCount?: number;
	/** Cues refined and worked out in full. Default 4. */
	readonly optionCount?: number;
	/** Default 400. */
	readonly drawCount?: number;
}

export interface Compared extends Closeness {
	/** Places in `options`. */
	readonly first: number;
	readonly second: number;
}

/** What a search says. Plain JSON. */
export interface SearchReport {
	readonly modelVersion: string;
	readonly input: FittingInput;
	readonly gameId: GameId;
	readonly counts: {
		readonly candidates: number;
		/** Within the hard limits and buildable. */
		readonly buildable: number;
		/** Rejected by no criterion. */
		readonly acceptable: number;
		/** Beaten on all criteria by none. */
		readonly nonDominated: number;
		/** Wishes fix every length, diameter and weight: these candidates are all there are on the bench's steps. */
		readonly isEverythingFixed: boolean;
	};
	readonly needs: Readonly<Record<"length" | "mass" | "butt" | "tip", Figure>>;
	readonly feelFrom: "present-cue" | "usual-build";
	readonly criteria: readonly Criterion[];
	/** Limits that had to give before anything was acceptable; empty as a rule. */
	readonly softened: readonly SoftenedLimit[];
	/** Best first; they differ in butt wood, splice or layout. */
	readonly options: readonly CueOption[];
	/** The first against each of the others. */
	readonly compared: readonly Compared[];
	/** Of the first. */
	readonly arguments: readonly Argued[];
	readonly cautions: readonly Caution[];
}

export interface CueSearch {
	readonly report: SearchReport;
	/** Every acceptable candidate, in typed arrays, and which of them no other beats. */
	readonly pool: Pool;
	readonly front: Uint32Array;
	/** To work on from, in the same process. */
	readonly prepared: Prepared;
	/** In the order of the report's options. */
	readonly refined: readonly Refined[];
	readonly draws: readonly Draw[];
}

const DEFAULT = { candidateCount: 90_000, optionCount: 4, drawCount: 400 };

/**
 * From a fitting to the cues worth making: scan, trade-off front, refinement, bands and reasons. Refuses
 * what `prepare` refuses, and "nothing-can-be-built" followed by a "relax" for every way out. Pure and
 * repeatable: the same input and the same source of chance give the same answer.
 */
export function searchCues(
	input: FittingInput,
	options: SearchOptions,
): Outcome<CueSearch> {
	const made = prepare(input, options);
	if (!made.ok) return made;
	const { candidateCount, optionCount, drawCount } = { ...DEFAULT, ...options };
	const found = poolOf(made.value, candidateCount);
	if (found === null)
		return {
			ok: false,
			refusals: refusalsFrom(relaxationsFor({ input, choices: options })),
		};
	const { prepared, pool, softenedLimits } = found;
	const front = frontOf(pool);
	const refining = refiningOf(prepared);
	const refined = bestDifferent(pool, optionCount).map((k) =>
		refine(refining, candidateAt(pool.axes, pool.place[k] as number)),
	);
	const draws = drawsFrom({
		uniform: options.uniform,
		count: drawCount,
		woods: woodsOf(refined),
	});
	const worked = refined
		.flatMap((one) => workOut({ prepared, refined: one, draws }) ?? [])
		.sort((a, b) => b.option.overall - a.option.overall);
	const [best] = worked;
	if (!best)
		throw new RangeError("searchCues: no refined cue could be planned");
	const { needs, feel, criteria } = prepared;
	return accept({
		report: {
			modelVersion: MODEL_VERSION,
			input,
			gameId: needs.gameId,
			counts: {
				candidates: pool.candidates,
				buildable: pool.buildable,
				acceptable: pool.count,
				nonDominated: front.length,
				isEverythingFixed: isEverythingFixed(pool.axes),
			},
			needs: {
				length: needs.length,
				mass: needs.massNeed.figure,
				butt: needs.butt.figure,
				tip: needs.tip,
			},
			feelFrom: feel.basis,
			criteria,
			softened: softenedLimits,
			options: worked.map(({ option }) => option),
			compared: comparedWith(worked),
			arguments: [
				...argueFigures({
					prepared,
					refining,
					best: best.valued,
					option: best.option,
				}),
				...argueChoices({ prepared, refining, best: best.valued }),
			],
			cautions: [...needs.cautions, ...feel.cautions],
		},
		pool,
		front,
		prepared,
		refined: worked.map((one) => one.refined),
		draws,
	});
}

/** The acceptable candidates; with limits softened where there would be none; null where none can be built. */
export function poolOf(
	prepared: Prepared,
	wantedCount: number,
): {
	prepared: Prepared;
	pool: Pool;
	softenedLimits: readonly SoftenedLimit[];
} | null {
	const axes = axesFor({ ...prepared, wantedCount });
	const pool = poolFrom({ ...prepared, axes });
	if (pool.count > 0) return { prepared, pool, softenedLimits: [] };
	if (pool.buildable === 0) return null;
	const soft = softened(prepared, axes);
	if (soft === null) return null;
	const judged = judgedBy(prepared, soft.criteria);
	return {
		prepared: judged,
		pool: poolFrom({ ...judged, axes }),
		softenedLimits: soft.limits,
	};
}

const woodsOf = (refined: readonly Refined[]): readonly WoodId[] =>
	refined.flatMap(({ snapped }) => [
		snapped.candidate.request.shaftWood,
		snapped.candidate.request.buttWood,
	]);

function comparedWith(worked: readonly Worked[]): readonly Compared[] {
	const [best, ...others] = worked;
	if (!best) return [];
	return others.map((other, i) => ({
		first: 0,
		second: i + 1,
		...closenessOf(best.outlook, other.outlook),
	}));
}
