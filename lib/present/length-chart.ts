import type { Advice } from "@/lib/advice/advise";
import type { Estimate } from "@/lib/reference/estimate";
import { BRIDGE_SLACK_MM, GRIP_LIMITS_MM } from "@/lib/stance/assumptions";
import { type CueReach, overhangMm } from "@/lib/stance/reach";
import { axisLength, banded, lengthUnit, range, thin } from "./chart-axes";
import type { ChartModel } from "./chart-model";
import { type CostChart, type CostModel, chartOf } from "./cost-chart";
import { formatLength, formatLengthBand } from "./figures";

type Shown = Pick<Advice, "length">;

interface Asked {
	readonly reach: CueReach;
	readonly fromMm: number;
	readonly toMm: number;
}

type Curve = readonly {
	readonly lengthMm: number;
	readonly behind: Estimate;
	readonly bridge: Estimate;
}[];

/** Shown past either end of what the stance leaves room for. */
const MARGIN_MM = 40;

function curveOf({ reach, fromMm, toMm }: Asked): Curve {
	const bridgeAt = (lengthMm: number): Estimate => ({
		...reach.bridgeLengthMm,
		value: lengthMm - reach.bridgeToGripMm.value - reach.gripFromButtMm.value,
		sd: Math.hypot(reach.bridgeToGripMm.sd, reach.gripFromButtMm.sd),
	});
	return range(fromMm, toMm).map((lengthMm) => ({
		lengthMm,
		behind: overhangMm({ reach, lengthMm }),
		bridge: bridgeAt(lengthMm),
	}));
}

function modelOf({
	shown,
	asked: { reach, fromMm: from, toMm: to },
	curve: rows,
	reader,
}: CostModel<Shown, Asked, Curve>): ChartModel {
	const { say } = reader;
	const { low, high } = reach.lengthWindowMm;
	const length = (mm: number) => axisLength(mm, reader);
	return {
		id: "length",
		title: say("charts.length.title"),
		summary: say("charts.length.summary", {
			window: formatLengthBand({ low, high }, reader),
			length: formatLength(shown.length.value, reader),
			behind: formatLength(
				overhangMm({ reach, lengthMm: shown.length.value }).value,
				reader,
			),
		}),
		x: {
			label: say("charts.length.x"),
			unit: lengthUnit(reader),
			domain: [length(from), length(to)],
		},
		panels: [
			{
				label: say("charts.length.behindAxis"),
				unit: lengthUnit(reader),
				lines: [
					{
						name: say("charts.length.behind"),
						points: rows.map(({ lengthMm, behind }) =>
							banded(length(lengthMm), behind, length),
						),
					},
				],
				zones: [
					{
						axis: "y",
						from: length(GRIP_LIMITS_MM.least),
						to: length(GRIP_LIMITS_MM.most),
						label: say("charts.length.enough"),
						kind: "wanted",
					},
					{
						axis: "x",
						from: length(low),
						to: length(high),
						label: say("charts.length.window"),
						kind: "wanted",
					},
				],
			},
			{
				label: say("charts.length.bridgeAxis"),
				unit: lengthUnit(reader),
				lines: [
					{
						name: say("charts.length.bridge"),
						points: rows.map(({ lengthMm, bridge }) =>
							banded(length(lengthMm), bridge, length),
						),
					},
				],
				zones: [
					{
						axis: "y",
						from: length(reach.bridgeLengthMm.value - BRIDGE_SLACK_MM.shorter),
						to: length(reach.bridgeLengthMm.value + BRIDGE_SLACK_MM.longer),
						label: say("charts.length.usualBridge"),
						kind: "wanted",
					},
				],
			},
		],
		marker: {
			x: length(shown.length.value),
			label: formatLength(shown.length.value, reader),
		},
		table: {
			columns: [
				say("charts.length.column"),
				say("charts.length.behindAxis"),
				say("charts.length.bridgeAxis"),
			],
			rows: thin(rows).map(({ lengthMm, behind, bridge }) => [
				formatLength(lengthMm, reader),
				formatLength(behind.value, reader),
				formatLength(bridge.value, reader),
			]),
		},
	};
}

/** Length against what is left behind the hand, and in front of the bridge. */
export const LENGTH_COST: CostChart<Shown, Asked, Curve> = {
	partsOf({ length, reach }) {
		const { low, high } = reach.lengthWindowMm;
		return {
			shown: { length },
			asked: {
				reach,
				fromMm: Math.min(low, length.value) - MARGIN_MM,
				toMm: Math.max(high, length.value) + MARGIN_MM,
			},
		};
	},
	curveOf,
	modelOf,
};

export const lengthChart = chartOf(LENGTH_COST);
