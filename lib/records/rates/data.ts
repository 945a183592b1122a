import "server-only";

/** How often something may be asked within an hour: from one place, and by everybody together. */
export interface RateLimit {
	readonly perPlace: number;
	readonly inAll: number;
}

/**
 * This project's judgement: a club's evening behind one address gets through, and what a workshop
 * cannot read in a day does not.
 */
export const RATE_LIMITS = {
	"keep-online-cue": { perPlace: 60, inAll: 1200 },
	"change-online-cue": { perPlace: 900, inAll: 20_000 },
	"send-online-cue": { perPlace: 8, inAll: 80 },
} as const satisfies Record<string, RateLimit>;

export type RatedAction = keyof typeof RATE_LIMITS;

export const WINDOW_MS = 3_600_000;
/** Counts are kept so long after their hour, then deleted. */
export const COUNTS_KEPT_MS = 86_400_000;

/** A turn was given, or there is none before the hour is over. */
export type Turn =
	| { readonly ok: true }
	| { readonly ok: false; readonly tryAgainAt: Date };
