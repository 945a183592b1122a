import {
	accept,
	type Outcome,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import { analyseTrial, type TrialAnalysis } from "./analysis";
import { MOST_SHOTS } from "./assumptions";
import {
	beliefsFrom,
	type Preference,
	preferenceFrom,
	type RackCue,
	type SessionTally,
	type Target,
} from "./preference";
import { type PairProposal, proposePairs } from "./proposal";
import { cuesIn, type Shot, shotsWith } from "./shots";
import { type WishUpdate, wishUpdates } from "./wish-update";

/** One session of a player: the shots in the order they were played. */
export interface TrialSession {
	readonly shots: readonly Shot[];
	readonly isPaired: boolean;
	readonly plannedShots?: number;
}

export interface TrialQuestion {
	/** Cues that can be tried, and those that were. */
	readonly rack: readonly RackCue[];
	/** Earliest first. */
	readonly sessions: readonly TrialSession[];
	/** What the advice holds best for this player, where there is advice. */
	readonly target?: Target;
}

export interface TrialAnswer {
	/** One for each session, in their order. */
	readonly analyses: readonly TrialAnalysis[];
	/** What the player's best figures are believed to be, with all sessions. */
	readonly preference: Pick<Preference, "before" | "best" | "residual">;
	readonly scores: readonly {
		readonly cueId: string;
		/** Log-odds against the best of the rack. */
		readonly belowBest: number;
		/** One standard deviation of that difference; 0 for the best itself. */
		readonly sd: number;
	}[];
	/** The pair that teaches most, then the others. */
	readonly proposals: readonly PairProposal[];
	readonly wishUpdates: readonly WishUpdate[];
}

/** How many of the pairs are told; the rest teach less. */
const TOLD = 5;

export function tallyOf({ shots }: Pick<TrialSession, "shots">): SessionTally {
	return {
		tallies: cuesIn(shots).map((cueId) => {
			const own = shotsWith(shots, cueId);
			return {
				cueId,
				hits: own.filter(({ isPotted }) => isPotted).length,
				shots: own.length,
			};
		}),
	};
}

/**
 * What the sessions say, what they say of the wishes, and which two cues to try next. Refuses a rack
 * with fewer than two cues that can be tried or the same id twice, a shot with a cue that is not in it, and a session
 * of more than MOST_SHOTS.
 */
export function answerTrial(question: TrialQuestion): Outcome<TrialAnswer> {
	const { rack, sessions, target = {} } = question;
	const refusals = refusalsOf(question);
	if (refusals.length > 0) return refuse(...refusals);
	const before = beliefsFrom(rack, target);
	const tallies = sessions.map(tallyOf);
	const preference = preferenceFrom({ rack, sessions: tallies, before });
	return accept({
		analyses: sessions.map((session) =>
			analyseTrial({ ...session, cueIds: cuesIn(session.shots) }),
		),
		preference: {
			before,
			best: preference.best,
			residual: preference.residual,
		},
		scores: scoresOf(rack, preference),
		proposals: proposePairs({ rack, sessions: tallies, preference }).slice(
			0,
			TOLD,
		),
		wishUpdates: wishUpdates({ rack, sessions: tallies, before }),
	});
}

function scoresOf(
	rack: readonly RackCue[],
	{ means, covariance }: Preference,
): TrialAnswer["scores"] {
	const top = means.indexOf(Math.max(...means));
	const cov = (i: number, j: number) => covariance[i]?.[j] ?? Number.NaN;
	return rack.map(({ id }, i) => ({
		cueId: id,
		belowBest: (means[top] ?? Number.NaN) - (means[i] ?? Number.NaN),
		sd: i === top ? 0 : Math.sqrt(cov(i, i) + cov(top, top) - 2 * cov(i, top)),
	}));
}

function refusalsOf({ rack, sessions }: TrialQuestion): Refusal[] {
	const ids = rack.map(({ id }) => id);
	const refusals: Refusal[] = [];
	const offered = rack.filter(({ isAvailable }) => isAvailable !== false);
	if (offered.length < 2)
		refusals.push({
			code: "rack-too-small",
			field: "rack",
			value: offered.length,
			min: 2,
		});
	for (const id of new Set(ids.filter((id, i) => ids.indexOf(id) !== i)))
		refusals.push({ code: "same-cue-twice", field: "rack", value: id });
	for (const [i, { shots }] of sessions.entries()) {
		for (const id of cuesIn(shots))
			if (!ids.includes(id))
				refusals.push({
					code: "unknown-cue",
					field: `sessions.${i}.shots`,
					value: id,
				});
		if (shots.length > MOST_SHOTS)
			refusals.push({
				code: "out-of-range",
				field: `sessions.${i}.shots`,
				value: shots.length,
				max: MOST_SHOTS,
			});
	}
	return refusals;
}
