/** What goes with a cue beside the cue itself; null where nothing was chosen. In the workshop's own names. */
export interface JobExtras {
	readonly case: string | null;
	readonly tip: string | null;
	readonly gripNotes: string;
}

export const NO_EXTRAS: JobExtras = { case: null, tip: null, gripNotes: "" };
