/** What the bench holds a finished cue to, either side. Common practice, no source. */
export const FINISHED_TOLERANCE = {
	lengthMm: 3,
	massG: 7,
	balanceMm: 13,
	diameterMm: 0.25,
} as const;

/**
 * Turning tolerances of a diameter at a station, mm, either side. This project's judgement: closer
 * where the bridge hand runs.
 */
export const TURNING_TOLERANCE = {
	ferruleMm: 0.05,
	shaftMm: 0.1,
	buttMm: 0.2,
} as const;
