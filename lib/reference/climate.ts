/**
 * Air a cue may live in, dry half and damp half of the year. This project's judgement, no source:
 * round figures to show a swing with, to be replaced by readings of the place where there are any.
 */
export type PlaceId =
	| "heated-room"
	| "cool-club-room"
	| "warm-humid-coast"
	| "dry-inland";

export interface Place {
	readonly id: PlaceId;
	readonly name: string;
	readonly seasons: readonly {
		readonly name: string;
		readonly air: {
			readonly temperatureC: number;
			readonly relativeHumidityPct: number;
		};
	}[];
}

const place = (
	id: PlaceId,
	name: string,
	dry: readonly [number, number],
	damp: readonly [number, number],
): Place => ({
	id,
	name,
	seasons: [
		{
			name: "dry half",
			air: { temperatureC: dry[0], relativeHumidityPct: dry[1] },
		},
		{
			name: "damp half",
			air: { temperatureC: damp[0], relativeHumidityPct: damp[1] },
		},
	],
});

export const PLACES: Readonly<Record<PlaceId, Place>> = {
	"heated-room": place("heated-room", "Heated room", [21, 35], [23, 55]),
	"cool-club-room": place(
		"cool-club-room",
		"Cool club room",
		[16, 50],
		[20, 65],
	),
	"warm-humid-coast": place(
		"warm-humid-coast",
		"Warm, humid coast",
		[26, 65],
		[29, 80],
	),
	"dry-inland": place("dry-inland", "Dry inland place", [24, 20], [22, 40]),
};
