/** What the bench holds a finished cue to, either side. Common practice, no source. */
export const FINISHED_TOLERANCE = {
	lengthMm: 3,
	massG: 7,
	balanceMm: 13,
	diameterMm: 0.25,
} as const;
