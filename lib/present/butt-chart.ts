import type { Advice } from "@/lib/advice/advise";
import {
	BUTT_LIMITS_MM,
	CLOSURE_TARGET_MM,
	CLOSURE_TOLERANCE_MM,
	GRIP_SLIDE_MM,
} from "@/lib/advice/judgement";
import type { CueRequest } from "@/lib/cue/design";
import { diameterAtMm } from "@/lib/cue/taper";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";
import { closureMm } from "@/lib/player/hand";
import type { Estimate } from "@/lib/reference/estimate";
import { axisLength, banded, lengthUnit, range, thin } from "./chart-axes";
import type { ChartModel } from "./chart-model";
import { type CostChart, type CostModel, chartOf } from "./cost-chart";
import { formatLength, formatLengthBand } from "./figures";

interface Shown {
	readonly butt: Advice["butt"];
	readonly gripFromButtMm: Estimate;
}

interface Asked {
	/** The cue but for its butt. */
	readonly request: Omit<CueRequest, "buttDiameterMm">;
	readonly circleMm: Estimate;
	readonly gripStationMm: number;
}

/** In the order of `PLACES`. */
type Curve = readonly {
	readonly buttDiameterMm: number;
	readonly at: readonly number[];
}[];

/** Along the grip, from the tip's side. */
const PLACES = ["forward", "usual", "back"] as const;

function curveOf({ request, circleMm, gripStationMm }: Asked): Curve {
	const stationsMm = [
		gripStationMm - GRIP_SLIDE_MM,
		gripStationMm,
		Math.min(gripStationMm + GRIP_SLIDE_MM, request.lengthMm),
	];
	return range(BUTT_LIMITS_MM.min, BUTT_LIMITS_MM.max, 15).map(
		(buttDiameterMm) => {
			const design = must(designFrom({ ...request, buttDiameterMm }));
			return {
				buttDiameterMm,
				at: stationsMm.map((stationMm) =>
					closureMm({
						circleMm: circleMm.value,
						diameterMm: diameterAtMm(design, stationMm),
					}),
				),
			};
		},
	);
}

function modelOf({
	shown: { butt, gripFromButtMm },
	asked: { circleMm },
	curve: closures,
	reader,
}: CostModel<Shown, Asked, Curve>): ChartModel {
	const { say } = reader;
	const { closure, figure, rangeMm } = butt;
	const places = PLACES.map((place) => ({
		name: say(`charts.butt.${place}`),
	}));
	const length = (mm: number) => axisLength(mm, reader);
	const closureSd = Math.PI * circleMm.sd;
	const target = CLOSURE_TARGET_MM[closure];
	const gap = (mm: number) =>
		mm >= 0
			? say("charts.butt.gap", { by: formatLength(mm, reader, "gap") })
			: say("charts.butt.overlap", { by: formatLength(-mm, reader, "gap") });
	return {
		id: "butt",
		title: say("charts.butt.title"),
		summary: say("charts.butt.summary", {
			ring: formatLength(circleMm.value, reader, "diameter"),
			held: formatLength(gripFromButtMm.value, reader),
			range: formatLengthBand(rangeMm, reader, "diameter"),
			chosen: formatLength(figure.value, reader, "diameter"),
		}),
		x: {
			label: say("charts.butt.x"),
			unit: lengthUnit(reader),
			domain: [length(BUTT_LIMITS_MM.min), length(BUTT_LIMITS_MM.max)],
		},
		panels: [
			{
				label: say("charts.butt.y"),
				unit: lengthUnit(reader),
				lines: places.map(({ name }, place) => ({
					name,
					points: closures.map(({ buttDiameterMm, at }) => {
						const y = at[place] ?? Number.NaN;
						return place === 1
							? banded(
									length(buttDiameterMm),
									{ value: y, sd: closureSd },
									length,
								)
							: { x: length(buttDiameterMm), y: length(y) };
					}),
				})),
				zones: [
					{
						axis: "y",
						from: length(target - CLOSURE_TOLERANCE_MM),
						to: length(target + CLOSURE_TOLERANCE_MM),
						label: say("charts.butt.wanted"),
						kind: "wanted",
					},
				],
			},
		],
		marker: {
			x: length(figure.value),
			label: formatLength(figure.value, reader, "diameter"),
		},
		table: {
			columns: [say("charts.butt.x"), ...places.map(({ name }) => name)],
			rows: thin(closures, 8).map(({ buttDiameterMm, at }) => [
				formatLength(buttDiameterMm, reader, "diameter"),
				...at.map(gap),
			]),
		},
	};
}

/** Butt diameter against how thumb and finger close along the grip zone. */
export const BUTT_COST: CostChart<Shown, Asked, Curve> = {
	partsOf({ butt, grip, reach, build }) {
		const { buttDiameterMm: _, ...request } = build.request;
		return {
			shown: { butt, gripFromButtMm: reach.gripFromButtMm },
			asked: {
				request,
				circleMm: grip.circleMm,
				gripStationMm: butt.gripStationMm,
			},
		};
	},
	curveOf,
	modelOf,
};

export const buttChart = chartOf(BUTT_COST);
