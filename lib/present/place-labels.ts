/** A label that hangs below the place it is about, beside a leader that runs straight down. */
export interface HungLabel {
	readonly x: number;
	readonly widthPx: number;
}

export interface PlacedLabel {
	/** 0 is nearest to what is labelled. */
	readonly row: number;
	/** Left edge of the text. */
	readonly left: number;
}

/** Room kept free between texts, and between a text and a leader. */
const GAP_PX = 8;
const LEADER_GAP_PX = 4;
/** More labels than this are placed from the left only: the search tries every mix of sides. */
const MOST_SEARCHED = 8;

interface Trial {
	readonly x: number;
	readonly left: number;
	readonly right: number;
	row: number;
}

/**
 * Rows and sides for labels under a picture, so that no text lies over another text or over a leader,
 * in as few rows as that takes; with three at one place or on a very narrow picture, as few crossings
 * as there can be. A text stands to the right or to the left of its leader's foot, within `widthPx`
 * where it fits there at all. Answers in the order asked.
 */
export function placeLabels(
	labels: readonly HungLabel[],
	widthPx: number,
): readonly PlacedLabel[] {
	const order = labels
		.map((label, index) => ({ ...label, index }))
		.sort((a, b) => a.x - b.x || a.index - b.index);
	const mixes = order.length > MOST_SEARCHED ? 1 : 2 ** order.length;
	let best: { cost: number; trials: readonly Trial[] } | null = null;
	for (let mix = 0; mix < mixes; mix++)
		for (const isRightFirst of [true, false]) {
			const trials = order.map((label, i) =>
				trialOf(label, (mix >> i) % 2 === 1, widthPx),
			);
			// A text to the right lies under the leaders to its right, so those come first; and in mirror.
			const toRight = trials.filter((_, i) => (mix >> i) % 2 === 0).reverse();
			const toLeft = trials.filter((_, i) => (mix >> i) % 2 === 1);
			const cost = stack(
				isRightFirst ? [...toRight, ...toLeft] : [...toLeft, ...toRight],
			);
			if (best === null || cost < best.cost) best = { cost, trials };
		}
	const placed: PlacedLabel[] = labels.map(() => ({ row: 0, left: 0 }));
	order.forEach(({ index }, i) => {
		const trial = best?.trials[i];
		if (trial) placed[index] = { row: trial.row, left: trial.left };
	});
	return placed;
}

function trialOf(label: HungLabel, isLeft: boolean, widthPx: number): Trial {
	const wanted = isLeft
		? label.x - LEADER_GAP_PX - label.widthPx
		: label.x + LEADER_GAP_PX;
	const left = Math.max(0, Math.min(wanted, widthPx - label.widthPx));
	return { x: label.x, left, right: left + label.widthPx, row: 0 };
}

/** Gives every trial the lowest row that works; answers rows used, and far more for each crossing. */
function stack(trials: readonly Trial[]): number {
	const settled: Trial[] = [];
	let crossings = 0;
	let rows = 0;
	for (const trial of trials) {
		trial.row = 0;
		while (trial.row <= settled.length && !fits(trial, settled)) trial.row++;
		if (trial.row > settled.length) {
			crossings++;
			trial.row = rows;
		}
		settled.push(trial);
		rows = Math.max(rows, trial.row + 1);
	}
	return rows + 100 * crossings;
}

const fits = (trial: Trial, settled: readonly Trial[]): boolean =>
	settled.every((other) => {
		if (
			other.row === trial.row &&
			trial.left < other.right + GAP_PX &&
			other.left < trial.right + GAP_PX
		)
			return false;
		return (
			(other.row < trial.row || isClear(other.x, trial)) &&
			(trial.row < other.row || isClear(trial.x, other))
		);
	});

/** A leader runs down to the row of its own text. */
const isClear = (x: number, text: Trial): boolean =>
	x < text.left - LEADER_GAP_PX || x > text.right + LEADER_GAP_PX;
