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
		label: "Usual for the game",
		kind: "wanted",
	} as const;
	const slowest = Math.min(
		...weights.map(({ equalEffortFraction }) => equalEffortFraction.value),
	);
	return {
		id: "weight-speed",
		title: "Weight and ball speed",
		summary: `With the same effort the ball leaves fastest from a cue of about ${formatMass(bestMassG.value, reader)}, but the best is flat: from ${formatMass(first.cueMassG, reader)} to ${formatMass(last.cueMassG, reader)} the ball loses ${formatPercent(1 - slowest, reader, 1)} of its speed at most. Swung equally fast, a heavier cue always sends it faster.`,
		x: {
			label: "Cue weight",
			unit: massUnit(reader),
			domain: [mass(first.cueMassG), mass(last.cueMassG)],
		},
		panels: [
			{
				label: "Ball speed at equal effort, of the best",
				unit: "%",
				lines: [
					{
						name: "Equal effort",
						points: weights.map((one) =>
							banded(mass(one.cueMassG), one.equalEffortFraction, percent),
						),
					},
				],
				zones: [usualZone],
			},
			{
				label: "Ball speed over cue speed, centre hit",
				unit: "",
				lines: [
					{
						name: "Equal cue speed",
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
			columns: ["Cue weight", "Equal effort", "Equal cue speed"],
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
			label: "Contact off the ball’s centre",
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
	const { offsets, half, x, axis, offsetText, beyond } = overOffset(p);
	const gap = half.modelGapFraction;
	return {
		id: "offset-spin",
		title: "Spin and speed off centre",
		summary: `At a cue speed of ${formatNumber(cueSpeedMPerS, reader, 1)}\u00a0m/s and half a ball radius off centre, the ball leaves at ${formatNumber(half.ballSpeedMPerS.value, reader, 1)}\u00a0m/s and spins ${formatNumber(half.spinRevPerS.value, reader)} times a second. ${gap === null ? "" : `Published models of the speed part by ${formatPercent(gap, reader)} there; the band holds both. `}Past ${offsetText(profile.usableOffsetRatio)} the tip slips or runs out of dome.`,
		x: axis,
		panels: [
			{
				label: "Ball speed",
				unit: "m/s",
				lines: [
					{
						name: "Ball speed",
						points: offsets.map((one) =>
							banded(x(one.offsetRatio), one.ballSpeedMPerS, (v) => v),
						),
					},
				],
				zones: beyond(""),
			},
			{
				label: "Spin",
				unit: "turns/s",
				lines: [
					{
						name: "Spin",
						points: offsets.map((one) =>
							banded(x(one.offsetRatio), one.spinRevPerS, (v) => v),
						),
					},
				],
				zones: beyond("Miscue"),
			},
		],
		table: {
			columns: ["Off centre", "Ball speed", "Spin"],
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
	const { offsets, half, x, axis, offsetText, beyond } = overOffset(p);
	const length = (mm: number) => axisLength(mm, reader);
	const pivots = offsets.flatMap(({ offsetRatio, pivotLengthMm }) =>
		pivotLengthMm === null ? [] : [{ offsetRatio, pivotLengthMm }],
	);
	return {
		id: "offset-deflection",
		title: "Deflection with side",
		summary: `With side of half a ball radius the cue ball leaves ${formatAngle(half.squirtDeg.value, reader)} off the cue’s line, whatever the speed.${half.pivotLengthMm === null ? "" : ` Turned about a bridge ${formatLength(half.pivotLengthMm.value, reader)} from the tip, the cue would cancel it.`} Less mass at the end deflects less.`,
		x: axis,
		panels: [
			{
				label: "Cue-ball deflection, with side",
				unit: "°",
				lines: [
					{
						name: "Deflection",
						points: offsets.map((one) =>
							banded(x(one.offsetRatio), one.squirtDeg, (v) => v),
						),
					},
				],
				zones: beyond("Miscue"),
			},
			{
				label: "Pivot length, tip to bridge",
				unit: lengthUnit(reader),
				lines: [
					{
						name: "Pivot length",
						points: pivots.map((one) =>
							banded(x(one.offsetRatio), one.pivotLengthMm, length),
						),
					},
				],
				zones: beyond("Miscue"),
			},
		],
		table: {
			columns: ["Off centre", "Deflection", "Pivot length"],
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
