import {
	FALL_OFF_SQUARE_MULTIPLES,
	LEAST_SHARE_OF_DOUBT,
	TRIAL_FIELDS,
	type TrialField,
} from "./assumptions";
import {
	type Belief,
	type Beliefs,
	preferenceFrom,
	type RackCue,
	type SessionTally,
} from "./preference";

/**
 * What the trials say of one figure, offered and never applied by itself. `value` already weighs what
 * was believed before (`because.before`): where that came from the advice, the value is a wish to
 * take; where it came from the rack alone, value and sd are evidence to weigh with the advice.
 */
export interface WishUpdate {
	readonly field: TrialField;
	/** The figure to wish for, in the unit of the field's name. */
	readonly value: number;
	readonly sd: number;
	readonly because: {
		readonly before: Belief;
		readonly sessions: number;
		readonly shots: number;
		/** Least and greatest of the figure among the cues tried. */
		readonly triedLow: number;
		readonly triedHigh: number;
		/** Share of the doubt (variance) that the trials removed. */
		readonly shareOfDoubtRemoved: number;
		/** Lowest and highest value under the assumed fall-offs: how much the assumption matters. */
		readonly valueLow: number;
		readonly valueHigh: number;
	};
}

/**
 * Figures that the trials say something about, most telling first. Value and sd are those of an even
 * mixture over the assumed fall-offs (law of total variance). A figure in which the tried cues are
 * alike, or about which less than LEAST_SHARE_OF_DOUBT was learned, is left out.
 */
export function wishUpdates(p: {
	rack: readonly RackCue[];
	sessions: readonly SessionTally[];
	before: Beliefs;
}): WishUpdate[] {
	const shots = p.sessions
		.flatMap(({ tallies }) => tallies)
		.reduce((sum, tally) => sum + tally.shots, 0);
	if (shots === 0) return [];
	const tried = p.rack.filter(({ id }) =>
		p.sessions.some(({ tallies }) =>
			tallies.some((tally) => tally.cueId === id && tally.shots > 0),
		),
	);
	const fits = FALL_OFF_SQUARE_MULTIPLES.map((fallOffSquare) =>
		preferenceFrom({ ...p, fallOffSquare }),
	);
	const update = (field: TrialField): WishUpdate => {
		const figures = tried.map((cue) => cue[field]);
		const values = fits.map(({ best }) => best[field].value);
		const value = mean(values);
		const variance =
			mean(fits.map(({ best }) => best[field].sd ** 2)) +
			mean(values.map((one) => (one - value) ** 2));
		return {
			field,
			value,
			sd: Math.sqrt(variance),
			because: {
				before: p.before[field],
				sessions: p.sessions.length,
				shots,
				triedLow: Math.min(...figures),
				triedHigh: Math.max(...figures),
				shareOfDoubtRemoved: 1 - variance / p.before[field].sd ** 2,
				valueLow: Math.min(...values),
				valueHigh: Math.max(...values),
			},
		};
	};
	return TRIAL_FIELDS.map(update)
		.filter(
			({ because }) =>
				because.triedHigh > because.triedLow &&
				because.shareOfDoubtRemoved >= LEAST_SHARE_OF_DOUBT,
		)
		.sort(
			(one, other) =>
				other.because.shareOfDoubtRemoved - one.because.shareOfDoubtRemoved,
		);
}

const mean = (values: readonly number[]): number =>
	values.reduce((sum, value) => sum + value, 0) / values.length;
