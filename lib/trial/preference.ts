import {
	CUE_SD_LOG_ODDS,
	FALL_OFF,
	SESSION_SD_LOG_ODDS,
	TRIAL_FIELDS,
	type TrialField,
} from "./assumptions";
import { type Matrix, quadraticForm } from "./dense";
import { fitLogistic } from "./logistic";

/**
 * What a player's own best cue is, learned from pots with cues of known figures.
 *
 * Log-odds of a pot with cue j in session s: u_s + e_j − ½ Σ_k ((x_jk − t_k)/w_k)², with x_jk the
 * cue's figures, t_k the player's best ones, w_k the fall-off (assumptions.ts), u_s the session and
 * e_j what the cue has of its own. With ξ = (x − c)/w and τ = (t − c)/w about a centre c the square
 * opens to ξ·τ − ½ξ² plus a part that belongs to the session: the model is a logistic regression on
 * ξ with known offset, so mode and normal approximation are found once and for all.
 */

export type CueFigures = Readonly<Record<TrialField, number>>;

/** A cue of the coach's rack, with its known figures. */
export interface RackCue extends CueFigures {
	readonly id: string;
	readonly name: string;
	/** False for a cue that was tried but cannot be tried again. */
	readonly isAvailable?: boolean;
}

/** What one session came to: pots and shots by cue. Cues outside the rack are refused by the caller. */
export interface SessionTally {
	readonly tallies: readonly {
		readonly cueId: string;
		readonly hits: number;
		readonly shots: number;
	}[];
}

/** A figure believed best before the trials, in the unit of its name. */
export interface Belief {
	readonly value: number;
	readonly sd: number;
	/** From the advice for this player, or no more than the average of the rack. */
	readonly from: "advice" | "rack";
}

export type Beliefs = Readonly<Record<TrialField, Belief>>;
export type Target = Partial<
	Readonly<Record<TrialField, { readonly value: number; readonly sd: number }>>
>;

export interface Preference {
	readonly before: Beliefs;
	/** Best figures after the trials. */
	readonly best: Readonly<
		Record<TrialField, { readonly value: number; readonly sd: number }>
	>;
	/** Log-odds of each cue of the rack, but for a part common to all. */
	readonly means: readonly number[];
	readonly covariance: Matrix;
	/** Log-odds of the usual session with a cue of mean 0. */
	readonly session: number;
	readonly residual: number;
}

/** Where the advice says nothing the average of the rack stands in, with one fall-off of doubt. */
export function beliefsFrom(rack: readonly RackCue[], target: Target): Beliefs {
	const belief = (field: TrialField): Belief => {
		const known = target[field];
		if (known !== undefined) return { ...known, from: "advice" };
		return {
			value: rack.reduce((sum, cue) => sum + cue[field], 0) / rack.length,
			sd: FALL_OFF[field],
			from: "rack",
		};
	};
	return Object.fromEntries(
		TRIAL_FIELDS.map((field) => [field, belief(field)]),
	) as Record<TrialField, Belief>;
}

/**
 * The player's best figures and the scores of the rack after the sessions. `fallOffSquare` multiplies
 * the squares of the assumed fall-offs. Throws for an empty rack or a tally of a cue outside it.
 */
export function preferenceFrom(p: {
	rack: readonly RackCue[];
	sessions: readonly SessionTally[];
	before: Beliefs;
	fallOffSquare?: number;
}): Preference {
	const { rack, sessions, before } = p;
	if (rack.length === 0) throw new RangeError("preferenceFrom: an empty rack");
	const scale = Math.sqrt(p.fallOffSquare ?? 1);
	const fields = TRIAL_FIELDS.map((field) => ({
		field,
		width: FALL_OFF[field] * scale,
		centre: before[field].value,
	}));
	const placed = rack.map((cue) =>
		fields.map(({ field, width, centre }) => (cue[field] - centre) / width),
	);
	const offsets = placed.map(
		(figures) => -0.5 * figures.reduce((sum, figure) => sum + figure ** 2, 0),
	);
	const size = fields.length + rack.length + sessions.length;
	const covariates = (cue: number): number[] => {
		const x = new Array<number>(size).fill(0);
		for (const [k, figure] of (placed[cue] ?? []).entries()) x[k] = figure;
		x[fields.length + cue] = 1;
		return x;
	};
	const rows = sessions.flatMap(({ tallies }, session) =>
		tallies.map(({ cueId, hits, shots }) => {
			const cue = rack.findIndex(({ id }) => id === cueId);
			if (cue < 0)
				throw new RangeError(`preferenceFrom: no cue ${cueId} in the rack`);
			const x = covariates(cue);
			x[fields.length + rack.length + session] = 1;
			return { x, offset: offsets[cue], hits, shots };
		}),
	);
	const { coefficients, covariance, residual } = fitLogistic(rows, [
		...fields.map(({ field, width }) => ({
			mean: 0,
			sd: before[field].sd / width,
		})),
		...rack.map(() => ({ mean: 0, sd: CUE_SD_LOG_ODDS })),
		...sessions.map(() => ({ mean: 0, sd: SESSION_SD_LOG_ODDS })),
	]);
	const scores = rack.map((_, cue) => covariates(cue));
	const sessionParts = coefficients.slice(fields.length + rack.length);
	return {
		before,
		best: Object.fromEntries(
			fields.map(({ field, width, centre }, k) => [
				field,
				{
					value: centre + width * (coefficients[k] ?? Number.NaN),
					sd: width * Math.sqrt(covariance[k]?.[k] ?? Number.NaN),
				},
			]),
		) as Record<TrialField, { value: number; sd: number }>,
		means: scores.map(
			(x, cue) =>
				(offsets[cue] ?? Number.NaN) +
				x.reduce((sum, value, i) => sum + value * (coefficients[i] ?? 0), 0),
		),
		covariance: scores.map((row) =>
			Float64Array.from(scores, (column) =>
				quadraticForm(row, covariance, column),
			),
		),
		session:
			sessionParts.length === 0
				? 0
				: sessionParts.reduce((sum, part) => sum + part, 0) /
					sessionParts.length,
		residual,
	};
}
