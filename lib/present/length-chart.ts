import type { Advice } from "@/lib/advice/advise";
import type { Estimate } from "@/lib/reference/estimate";
import { BRIDGE_SLACK_MM, GRIP_LIMITS_MM } from "@/lib/stance/assumptions";
import { overhangMm } from "@/lib/stance/reach";
import type { Reader } from "@/lib/words/reader";
import { axisLength, banded, lengthUnit, range, thin } from "./chart-axes";
import type { ChartModel } from "./chart-model";
import { formatLength, formatLengthBand } from "./figures";

/** Length against what is left behind the hand, and in front of the bridge. */
export function lengthChart(advice: Advice, reader: Reader): ChartModel {
	const { say } = reader;
	const { reach } = advice;
	const { low, high } = reach.lengthWindowMm;
	const margin = 40;
	const from = Math.min(low, advice.length.value) - margin;
	const to = Math.max(high, advice.length.value) + margin;
	const length = (mm: number) => axisLength(mm, reader);
	const bridgeAt = (lengthMm: number): Estimate => ({
		...reach.bridgeLengthMm,
		value: lengthMm - reach.bridgeToGripMm.value - reach.gripFromButtMm.value,
		sd: Math.hypot(reach.bridgeToGripMm.sd, reach.gripFromButtMm.sd),
	});
	const rows = range(from, to).map((lengthMm) => ({
		lengthMm,
		behind: overhangMm({ reach, lengthMm }),
		bridge: bridgeAt(lengthMm),
	}));
	return {
		id: "length",
		title: say("charts.length.title"),
		summary: say("charts.length.summary", {
			window: formatLengthBand({ low, high }, reader),
			length: formatLength(advice.length.value, reader),
			behind: formatLength(
				overhangMm({ reach, lengthMm: advice.length.value }).value,
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
			x: length(advice.length.value),
			label: formatLength(advice.length.value, reader),
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
