import type { BuildContent } from "./job-content";

/*
 * The order of the work at the bench and how long each step is left alone before the next. All of it is
 * common practice, no source: glue makers' and finish makers' own times come first, and the sheet says so.
 */

/** Waiting time in hours, from–to. */
export type WaitHours = readonly [number, number];

export const BENCH_STEPS = [
	"settle-blanks",
	"rough-turn",
	"plane-first-pair",
	"glue-first-pair",
	"plane-next-pair",
	"glue-next-pair",
	"cut-machine-points",
	"glue-machine-points",
	"glue-tenon",
	"glue-decoration",
	"turn-oversize",
	"joint",
	"end-piece",
	"weigh",
	"bore",
	"glue-slug",
	"glue-joint-slug",
	"turn-to-size",
	"ferrule",
	"sand",
	"fill-grain",
	"oil",
	"tip",
	"check",
] as const;
export type BenchStepId = (typeof BENCH_STEPS)[number];

export interface BenchStep {
	readonly id: BenchStepId;
	/** Left alone afterwards; null: the next step may follow at once. */
	readonly waitHours: WaitHours | null;
	/** How often it is done, where more than once. */
	readonly times: number;
}

const DAY = 24;
const WAIT: Readonly<Partial<Record<BenchStepId, WaitHours>>> = {
	"settle-blanks": [14 * DAY, 28 * DAY],
	"rough-turn": [7 * DAY, 14 * DAY],
	"glue-first-pair": [DAY, 2 * DAY],
	"glue-next-pair": [DAY, 2 * DAY],
	"glue-machine-points": [DAY, 2 * DAY],
	"glue-tenon": [DAY, 2 * DAY],
	"glue-decoration": [DAY, 2 * DAY],
	"turn-oversize": [3 * DAY, 7 * DAY],
	joint: [DAY, DAY],
	"end-piece": [DAY, DAY],
	"glue-slug": [DAY, DAY],
	"glue-joint-slug": [DAY, DAY],
	ferrule: [12, DAY],
	"fill-grain": [DAY, DAY],
	oil: [DAY, DAY],
	tip: [12, DAY],
};

/** Coats of oil. Common practice, no source. */
const OIL_COATS = 3;

/** The steps of one build in their order, with what its splice, joints and weight ask for and nothing else. */
export function benchSteps({
	design,
	addedWeight,
}: Pick<BuildContent, "design" | "addedWeight">): readonly BenchStep[] {
	const { splice, joint, endJoint } = design;
	const pairs = new Set(
		splice.cuts
			.filter(({ part }) => / splice pair$/.test(part))
			.map(({ part }) => part),
	).size;
	const decorations = new Set(
		splice.cuts
			.filter(({ part }) => !/ splice pair| veneer$/.test(part))
			.map(({ part }) => part),
	).size;
	const hasEndSlug = addedWeight.slugLengthMm > 0;
	const hasJointSlug = addedWeight.jointSlug !== null;
	const wanted: readonly (readonly [BenchStepId, number])[] = [
		["settle-blanks", 1],
		["rough-turn", 1],
		["plane-first-pair", Number(pairs > 0)],
		["glue-first-pair", Number(pairs > 0)],
		["plane-next-pair", Math.max(0, pairs - 1)],
		["glue-next-pair", Math.max(0, pairs - 1)],
		["cut-machine-points", Number(splice.base.kind === "prongs")],
		["glue-machine-points", Number(splice.base.kind === "prongs")],
		["glue-tenon", Number(splice.base.kind === "tenon")],
		["glue-decoration", decorations],
		["turn-oversize", 1],
		["joint", Number(joint !== null)],
		["end-piece", Number(endJoint !== null)],
		["weigh", 1],
		["bore", Number(hasEndSlug || hasJointSlug)],
		["glue-joint-slug", Number(hasJointSlug)],
		["glue-slug", Number(hasEndSlug)],
		["turn-to-size", 1],
		["ferrule", 1],
		["sand", 1],
		["fill-grain", 1],
		["oil", OIL_COATS],
		["tip", 1],
		["check", 1],
	];
	return wanted
		.filter(([, times]) => times > 0)
		.map(([id, times]) => ({ id, times, waitHours: WAIT[id] ?? null }));
}

/** The waiting of all steps together, days from–to: no part of it can be hurried by more hands. */
export function waitingDays(
	steps: readonly BenchStep[],
): readonly [number, number] {
	const sum = (end: 0 | 1) =>
		steps.reduce(
			(hours, { waitHours, times }) => hours + times * (waitHours?.[end] ?? 0),
			0,
		) / DAY;
	return [sum(0), sum(1)];
}
