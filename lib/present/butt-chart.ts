import type { Advice } from "@/lib/advice/advise";
import {
	BUTT_LIMITS_MM,
	CLOSURE_TARGET_MM,
	CLOSURE_TOLERANCE_MM,
	GRIP_SLIDE_MM,
} from "@/lib/advice/judgement";
import { diameterAtMm } from "@/lib/cue/taper";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";
import { closureMm } from "@/lib/player/hand";
import type { Reader } from "@/lib/words/reader";
import { axisLength, banded, lengthUnit, range, thin } from "./chart-axes";
import type { ChartModel } from "./chart-model";
import { formatLength, formatLengthBand } from "./figures";

/** Butt diameter against how thumb and finger close along the grip zone. */
export function buttChart(advice: Advice, reader: Reader): ChartModel {
	const { request } = advice.build;
	const { circleMm } = advice.grip;
	const { gripStationMm, closure, figure, rangeMm } = advice.butt;
	const places = [
		{ name: "Hand slid forward", stationMm: gripStationMm - GRIP_SLIDE_MM },
		{ name: "Usual grip", stationMm: gripStationMm },
		{
			name: "Hand slid back",
			stationMm: Math.min(gripStationMm + GRIP_SLIDE_MM, request.lengthMm),
		},
	];
	const butts = range(BUTT_LIMITS_MM.min, BUTT_LIMITS_MM.max, 15);
	const length = (mm: number) => axisLength(mm, reader);
	const closures = butts.map((buttDiameterMm) => {
		const design = must(designFrom({ ...request, buttDiameterMm }));
		return {
			buttDiameterMm,
			at: places.map(({ stationMm }) =>
				closureMm({
					circleMm: circleMm.value,
					diameterMm: diameterAtMm(design, stationMm),
				}),
			),
		};
	});
	const closureSd = Math.PI * circleMm.sd;
	const target = CLOSURE_TARGET_MM[closure];
	const gap = (mm: number) =>
		mm >= 0
			? `${formatLength(mm, reader, "gap")} gap`
			: `${formatLength(-mm, reader, "gap")} overlap`;
	const { gripFromButtMm } = advice.reach;
	return {
		id: "butt",
		title: "Butt diameter: how thumb and finger close",
		summary: `With a ring of ${formatLength(circleMm.value, reader, "diameter")} held ${formatLength(gripFromButtMm.value, reader)} from the butt end, butts of ${formatLengthBand(rangeMm, reader, "diameter")} close as wanted; ${formatLength(figure.value, reader, "diameter")} is chosen. Further forward the cue is slimmer and the ring closes more.`,
		x: {
			label: "Butt diameter",
			unit: lengthUnit(reader),
			domain: [length(BUTT_LIMITS_MM.min), length(BUTT_LIMITS_MM.max)],
		},
		panels: [
			{
				label: "Between the pads: gap above 0, overlap below",
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
						label: "As wanted",
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
			columns: ["Butt diameter", ...places.map(({ name }) => name)],
			rows: thin(closures, 8).map(({ buttDiameterMm, at }) => [
				formatLength(buttDiameterMm, reader, "diameter"),
				...at.map(gap),
			]),
		},
	};
}
