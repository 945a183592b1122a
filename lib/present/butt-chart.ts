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
	const { say } = reader;
	const { request } = advice.build;
	const { circleMm } = advice.grip;
	const { gripStationMm, closure, figure, rangeMm } = advice.butt;
	const places = [
		{
			name: say("charts.butt.forward"),
			stationMm: gripStationMm - GRIP_SLIDE_MM,
		},
		{ name: say("charts.butt.usual"), stationMm: gripStationMm },
		{
			name: say("charts.butt.back"),
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
			? say("charts.butt.gap", { by: formatLength(mm, reader, "gap") })
			: say("charts.butt.overlap", { by: formatLength(-mm, reader, "gap") });
	const { gripFromButtMm } = advice.reach;
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
