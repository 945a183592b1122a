/** Where the line of a shot went, as seen from behind the cue. */
export type ShotLine = "left" | "on" | "right";
/** How the cue ball came to rest for the next shot. */
export type ShotPosition = "good" | "near" | "lost";

/** One shot of a trial, in the order they were played. */
export interface Shot {
	readonly cueId: string;
	readonly isPotted: boolean;
	readonly line?: ShotLine;
	readonly position?: ShotPosition;
	/** Round of the trial in which every cue has its turn, from 0. */
	readonly round?: number;
	/** Shots with the same set-up, one with each cue, share a number. */
	readonly pair?: number;
}

/** Position as a score: 1 as wanted, ½ near it, 0 lost. In halves, so that sums are whole numbers. */
export const POSITION_HALVES = { good: 2, near: 1, lost: 0 } as const;

/** How often each whole-numbered score came: index is the score. */
export type Counts = readonly number[];

export const potScore = ({ isPotted }: Shot): number => Number(isPotted);

/** Counts of scores 0 to `highest`; shots without a score are left out. */
export function countsOf(
	shots: readonly Shot[],
	score: (shot: Shot) => number | null,
	highest: number,
): number[] {
	const counts = new Array<number>(highest + 1).fill(0);
	for (const shot of shots) {
		const value = score(shot);
		if (value === null) continue;
		if (!Number.isInteger(value) || value < 0 || value > highest)
			throw new RangeError(`countsOf: score ${value} is not 0 to ${highest}`);
		counts[value] = (counts[value] ?? 0) + 1;
	}
	return counts;
}

export const totalOf = (counts: Counts): number =>
	counts.reduce((sum, count) => sum + count, 0);

export const scoreSum = (counts: Counts): number =>
	counts.reduce((sum, count, score) => sum + score * count, 0);

/** Cues in the order of their first shot. */
export const cuesIn = (shots: readonly Shot[]): string[] => [
	...new Set(shots.map(({ cueId }) => cueId)),
];

export const shotsWith = (shots: readonly Shot[], cueId: string): Shot[] =>
	shots.filter((shot) => shot.cueId === cueId);

/** The shots of two cues that share a set-up, side by side. A set-up shot twice with a cue counts once. */
export function matched(
	shots: readonly Shot[],
	first: string,
	second: string,
): (readonly [Shot, Shot])[] {
	const byPair = new Map<number, { first?: Shot; second?: Shot }>();
	for (const shot of shots) {
		if (shot.pair === undefined) continue;
		const side =
			shot.cueId === first ? "first" : shot.cueId === second ? "second" : null;
		if (side === null) continue;
		const both = byPair.get(shot.pair) ?? {};
		byPair.set(shot.pair, { ...both, [side]: both[side] ?? shot });
	}
	return [...byPair.values()].flatMap((both) =>
		both.first !== undefined && both.second !== undefined
			? [[both.first, both.second] as const]
			: [],
	);
}
