import { GAMES, type GameId } from "@/lib/reference/rules";
import type { ShotProfile } from "@/lib/shot/profile";
import type { Reader } from "@/lib/words/reader";
import {
	axisLength,
	axisMass,
	banded,
	lengthUnit,
	massUnit,
	thin,
} from "./chart-axes";
import type { ChartModel } from "./chart-model";
import {
	formatAngle,
	formatLength,
	formatMass,
	formatNumber,
	formatPercent,
	formatRatio,
} from "./figures";

/** Cue weight against ball speed: at equal effort, and at equal cue speed. */
export function weightSpeedChart(p: {
	profile: ShotProfile;
	cueMassG: number;
	gameId: GameId;
	reader: Reader;
}): ChartModel {
	const { profile, cueMassG, gameId, reader } = p;
	const { say } = reader;
	const { weights, bestMassG } = profile;
	const first = weights[0];
	const last = weights[weights.length - 1];
	if (!first || !last) throw new RangeError("a shot profile without weights");
	const mass = (g: number) => axisMass(g, reader);
	const percent = (fraction: number) => 100 * fraction;
	const usual = GAMES[gameId].usual.massG;
	const usualZone = {
		axis: "x",
		from: mass(usual[0]),
		to: mass(usual[1]),
		label: say("cueBench.chart.usual"),
		kind: "wanted",
	} as const;
	const slowest = Math.min(
		...weights.map(({ equalEffortFraction }) => equalEffortFraction.value),
	);
	return {
		id: "weight-speed",
		title: say("cueBench.chart.weight.title"),
		summary: say("cueBench.chart.weight.summary", {
			best: formatMass(bestMassG.value, reader),
			from: formatMass(first.cueMassG, reader),
			to: formatMass(last.cueMassG, reader),
			loss: formatPercent(1 - slowest, reader, 1),
		}),
		x: {
			label: say("cueBench.chart.weight.x"),
			unit: massUnit(reader),
			domain: [mass(first.cueMassG), mass(last.cueMassG)],
		},
		panels: [
			{
				label: say("cueBench.chart.weight.effortAxis"),
				unit: "%",
				lines: [
					{
						name: say("cueBench.chart.weight.effort"),
						points: weights.map((one) =>
							banded(mass(one.cueMassG), one.equalEffortFraction, percent),
						),
					},
				],
				zones: [usualZone],
			},
			{
				label: say("cueBench.chart.weight.speedAxis"),
				unit: "",
				lines: [
					{
						name: say("cueBench.chart.weight.speed"),
						points: weights.map((one) =>
							banded(mass(one.cueMassG), one.equalSpeedRatio, (v) => v),
						),
					},
				],
				zones: [usualZone],
			},
		],
		marker: { x: mass(cueMassG), label: formatMass(cueMassG, reader) },
		table: {
			columns: [
				say("cueBench.chart.weight.x"),
				say("cueBench.chart.weight.effort"),
				say("cueBench.chart.weight.speed"),
			],
			rows: thin(weights).map((one) => [
				formatMass(one.cueMassG, reader),
				formatPercent(one.equalEffortFraction.value, reader, 1),
				formatRatio(one.equalSpeedRatio.value, reader),
			]),
		},
	};
}

interface OffsetQuestion {
	readonly profile: ShotProfile;
	readonly gameId: GameId;
	readonly reader: Reader;
}

/** What both charts over the contact's offset share. */
function overOffset({ profile, gameId, reader }: OffsetQuestion) {
	const { offsets, usableOffsetRatio } = profile;
	const last = offsets[offsets.length - 1];
	const half = offsets.find(({ offsetRatio }) => offsetRatio === 0.5);
	if (!last || !half) throw new RangeError("a shot profile without offsets");
	const radiusMm = GAMES[gameId].cueBall.diameterMm.value / 2;
	const x = (offsetRatio: number) => axisLength(offsetRatio * radiusMm, reader);
	return {
		offsets,
		half,
		x,
		axis: {
			label: reader.say("cueBench.chart.offset"),
			unit: lengthUnit(reader),
			domain: [0, x(last.offsetRatio)],
		} as const,
		offsetText: (offsetRatio: number) =>
			formatLength(offsetRatio * radiusMm, reader, "gap"),
		/** Named where the line leaves room at the foot of the panel. */
		beyond: (label: string) =>
			usableOffsetRatio < last.offsetRatio
				? [
						{
							axis: "x",
							from: x(usableOffsetRatio),
							to: x(last.offsetRatio),
							label,
							kind: "limit",
						} as const,
					]
				: [],
	};
}

/** Ball speed and spin over the contact's offset, side, follow and draw alike. */
export function spinChart(
	p: OffsetQuestion & { cueSpeedMPerS: number },
): ChartModel {
	const { profile, cueSpeedMPerS, reader } = p;
	const { say } = reader;
	const { offsets, half, x, axis, offsetText, beyond } = overOffset(p);
	const gap = half.modelGapFraction;
	return {
		id: "offset-spin",
		title: say("cueBench.chart.spin.title"),
		summary: say("cueBench.chart.spin.summary", {
			cueSpeed: formatNumber(cueSpeedMPerS, reader, 1),
			ballSpeed: formatNumber(half.ballSpeedMPerS.value, reader, 1),
			turns: formatNumber(half.spinRevPerS.value, reader),
			models:
				gap === null
					? ""
					: say("cueBench.chart.spin.models", {
							gap: formatPercent(gap, reader),
						}),
			usable: offsetText(profile.usableOffsetRatio),
		}),
		x: axis,
		panels: [
			{
				label: say("cueBench.chart.spin.speed"),
				unit: "m/s",
				lines: [
					{
						name: say("cueBench.chart.spin.speed"),
						points: offsets.map((one) =>
							banded(x(one.offsetRatio), one.ballSpeedMPerS, (v) => v),
						),
					},
				],
				zones: beyond(""),
			},
			{
				label: say("cueBench.chart.spin.spin"),
				unit: say("cueBench.chart.spin.turns"),
				lines: [
					{
						name: say("cueBench.chart.spin.spin"),
						points: offsets.map((one) =>
							banded(x(one.offsetRatio), one.spinRevPerS, (v) => v),
						),
					},
				],
				zones: beyond(say("cueBench.chart.miscue")),
			},
		],
		table: {
			columns: [
				say("cueBench.chart.offColumn"),
				say("cueBench.chart.spin.speed"),
				say("cueBench.chart.spin.spin"),
			],
			rows: offsets.map((one) => [
				offsetText(one.offsetRatio),
				`${formatNumber(one.ballSpeedMPerS.value, reader, 2)}\u00a0m/s`,
				`${formatNumber(one.spinRevPerS.value, reader, 1)}\u00a0/s`,
			]),
		},
	};
}

/** Deflection of the cue ball, and the bridge length that cancels it, over the offset of side. */
export function deflectionChart(p: OffsetQuestion): ChartModel {
	const { reader } = p;
	const { say } = reader;
	const { offsets, half, x, axis, offsetText, beyond } = overOffset(p);
	const length = (mm: number) => axisLength(mm, reader);
	const pivots = offsets.flatMap(({ offsetRatio, pivotLengthMm }) =>
		pivotLengthMm === null ? [] : [{ offsetRatio, pivotLengthMm }],
	);
	return {
		id: "offset-deflection",
		title: say("cueBench.chart.deflection.title"),
		summary: say("cueBench.chart.deflection.summary", {
			angle: formatAngle(half.squirtDeg.value, reader),
			pivot:
				half.pivotLengthMm === null
					? ""
					: say("cueBench.chart.deflection.pivot", {
							length: formatLength(half.pivotLengthMm.value, reader),
						}),
		}),
		x: axis,
		panels: [
			{
				label: say("cueBench.chart.deflection.axis"),
				unit: "°",
				lines: [
					{
						name: say("cueBench.chart.deflection.name"),
						points: offsets.map((one) =>
							banded(x(one.offsetRatio), one.squirtDeg, (v) => v),
						),
					},
				],
				zones: beyond(say("cueBench.chart.miscue")),
			},
			{
				label: say("cueBench.chart.deflection.pivotAxis"),
				unit: lengthUnit(reader),
				lines: [
					{
						name: say("cueBench.chart.deflection.pivotName"),
						points: pivots.map((one) =>
							banded(x(one.offsetRatio), one.pivotLengthMm, length),
						),
					},
				],
				zones: beyond(say("cueBench.chart.miscue")),
			},
		],
		table: {
			columns: [
				say("cueBench.chart.offColumn"),
				say("cueBench.chart.deflection.name"),
				say("cueBench.chart.deflection.pivotName"),
			],
			rows: offsets.map((one) => [
				offsetText(one.offsetRatio),
				formatAngle(one.squirtDeg.value, reader, 2),
				one.pivotLengthMm === null
					? "–"
					: formatLength(one.pivotLengthMm.value, reader),
			]),
		},
	};
}
