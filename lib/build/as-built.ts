import type { Estimate } from "@/lib/reference/estimate";
import type { SheetStation } from "./stations";
import { FINISHED_TOLERANCE } from "./tolerance";

/**
 * Where a bench measures a cue, in the order of the work. `billets`: the woods picked, before the saw.
 * `blank-glued`: glued up and oversize. `turned`: to size, without leather. `before-weighting`: with
 * leather, ferrule and joint, no metal added. `finished`: as it is handed over. Common practice of the
 * trade, no source.
 */
export const BENCH_STAGES = [
	"billets",
	"blank-glued",
	"turned",
	"before-weighting",
	"finished",
] as const;
export type BenchStage = (typeof BENCH_STAGES)[number];

export const AS_BUILT_FIGURES = [
	"length",
	"mass",
	"balance",
	"butt",
	"tip",
] as const;
export type AsBuiltFigure = (typeof AS_BUILT_FIGURES)[number];

/** What was read on the cue; what was not is left out. */
export interface AsBuiltReadings {
	readonly lengthMm?: number;
	readonly massG?: number;
	readonly balanceFromButtMm?: number;
	readonly buttDiameterMm?: number;
	readonly tipDiameterMm?: number;
	readonly stations?: readonly {
		readonly stationMm: number;
		readonly diameterMm: number;
	}[];
}

/** The figures of a build that a check holds a cue to. */
export interface BuildToHold {
	readonly targets: Readonly<Record<AsBuiltFigure, { readonly value: number }>>;
	readonly stations: readonly SheetStation[];
	readonly naturalBalanceFromButtMm: Pick<Estimate, "value">;
	readonly design: { readonly tip: { readonly heightMm: number } };
}

/**
 * `at-least`: there may still be more to take off; `at-most`: there may still be something to add;
 * `none`: compared and told, held to nothing.
 */
export type Hold = "either-side" | "at-least" | "at-most" | "none";

/** One reading against what was wanted. Unit mm, for the mass g. */
export interface Finding {
	readonly figure: AsBuiltFigure | "diameter";
	/** Of a diameter: where; null otherwise. */
	readonly stationMm: number | null;
	readonly fromButtMm: number | null;
	readonly measured: number;
	readonly wanted: number;
	readonly deviation: number;
	readonly tolerance: number;
	readonly hold: Hold;
	readonly isOut: boolean;
}

export interface AsBuiltComparison {
	readonly findings: readonly Finding[];
	readonly isWithin: boolean;
	/** Diameters read where the sheet has no station, as after a change of the taper: compared with nothing. */
	readonly unplacedStationsMm: readonly number[];
}

/** What a stage compares: nothing before the saw, and little before the cue is turned. */
const HELD: Readonly<
	Record<BenchStage, Partial<Readonly<Record<Finding["figure"], Hold>>>>
> = {
	billets: {},
	"blank-glued": { length: "at-least", diameter: "at-least" },
	turned: { length: "at-least", diameter: "either-side" },
	"before-weighting": {
		length: "either-side",
		mass: "at-most",
		balance: "none",
		butt: "either-side",
		tip: "either-side",
		diameter: "either-side",
	},
	finished: {
		length: "either-side",
		mass: "either-side",
		balance: "either-side",
		butt: "either-side",
		tip: "either-side",
		diameter: "either-side",
	},
};

/** Two stations closer than this are the same one. */
const SAME_STATION_MM = 0.05;
/** A reading in ounces or inches that is the bound itself may come out a hair past it. */
const HAIR = 1e-9;

const TOLERANCES: Readonly<Record<AsBuiltFigure, number>> = {
	length: FINISHED_TOLERANCE.lengthMm,
	mass: FINISHED_TOLERANCE.massG,
	balance: FINISHED_TOLERANCE.balanceMm,
	butt: FINISHED_TOLERANCE.diameterMm,
	tip: FINISHED_TOLERANCE.diameterMm,
};

/** Readings of one stage against the build: the figures, then the diameters in the order they were read. */
export function compareAsBuilt(
	build: BuildToHold,
	readings: AsBuiltReadings,
	stage: BenchStage,
): AsBuiltComparison {
	const held = HELD[stage];
	const read: Readonly<Record<AsBuiltFigure, number | undefined>> = {
		length: readings.lengthMm,
		mass: readings.massG,
		balance: readings.balanceFromButtMm,
		butt: readings.buttDiameterMm,
		tip: readings.tipDiameterMm,
	};
	const findings: Finding[] = AS_BUILT_FIGURES.flatMap((figure) => {
		const measured = read[figure];
		const hold = held[figure];
		if (measured === undefined || hold === undefined) return [];
		return [
			finding({
				figure,
				at: null,
				measured,
				wanted: wantedAt(build, figure, stage),
				tolerance: TOLERANCES[figure],
				hold,
			}),
		];
	});
	const hold = held.diameter;
	const unplacedStationsMm: number[] = [];
	for (const { stationMm, diameterMm } of readings.stations ?? []) {
		const station = build.stations.find(
			(one) => Math.abs(one.stationMm - stationMm) < SAME_STATION_MM,
		);
		if (station === undefined) unplacedStationsMm.push(stationMm);
		else if (hold !== undefined)
			findings.push(
				finding({
					figure: "diameter",
					at: station,
					measured: diameterMm,
					wanted: station.diameterMm,
					tolerance: station.toleranceMm,
					hold,
				}),
			);
	}
	return {
		findings,
		isWithin: findings.every(({ isOut }) => !isOut),
		unplacedStationsMm,
	};
}

/** What a figure should come to at a stage: without metal the natural weight and balance, without leather the length to it. */
function wantedAt(
	build: BuildToHold,
	figure: AsBuiltFigure,
	stage: BenchStage,
): number {
	const { targets, design } = build;
	const hasLeather = stage === "before-weighting" || stage === "finished";
	if (figure === "length" && !hasLeather)
		return targets.length.value - design.tip.heightMm;
	if (figure === "balance" && stage === "before-weighting")
		return build.naturalBalanceFromButtMm.value;
	return targets[figure].value;
}

function finding(p: {
	figure: Finding["figure"];
	at: SheetStation | null;
	measured: number;
	wanted: number;
	tolerance: number;
	hold: Hold;
}): Finding {
	const { measured, wanted, tolerance, hold, at } = p;
	const deviation = measured - wanted;
	const bound = tolerance + HAIR;
	const isOut =
		((hold === "either-side" || hold === "at-least") && deviation < -bound) ||
		((hold === "either-side" || hold === "at-most") && deviation > bound);
	return {
		figure: p.figure,
		stationMm: at?.stationMm ?? null,
		fromButtMm: at?.fromButtMm ?? null,
		measured,
		wanted,
		deviation,
		tolerance,
		hold,
		isOut,
	};
}
