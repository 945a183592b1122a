import type { Advice } from "@/lib/advice/advise";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";
import { Z90 } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
import { endMassOfDesignG } from "@/lib/shot/endmass";
import { tipTradeoff } from "@/lib/shot/tip";
import type { Reader } from "@/lib/words/reader";
import { axisLength, banded, lengthUnit, range, thin } from "./chart-axes";
import type { ChartModel } from "./chart-model";
import {
	formatAngle,
	formatLength,
	formatNumber,
	formatRatio,
} from "./figures";

/** Each is a solved cue. */
const TIP_POINTS = 11;

/** Tip size against deflection of the cue ball and reach of side spin. */
export function tipChart(advice: Advice, reader: Reader): ChartModel {
	const { say } = reader;
	const game = GAMES[advice.gameId];
	const [usualLow, usualHigh] = game.usual.tipMm;
	const ruleMax = game.tipMaxDiameterMm?.value;
	const from = Math.max(7, Math.min(usualLow - 1.5, advice.tip.value - 0.5));
	const to = Math.min(14, Math.max(usualHigh + 1.5, advice.tip.value + 0.5));
	const { request } = advice.build;
	const length = (mm: number) => axisLength(mm, reader);
	const rows = range(from, to, TIP_POINTS).map((tipDiameterMm) => {
		const design = must(designFrom({ ...request, tipDiameterMm }));
		return {
			tipDiameterMm,
			trade: tipTradeoff({
				gameId: advice.gameId,
				tipDiameterMm,
				domeRadiusMm: design.tip.domeRadiusMm,
				endMassG: endMassOfDesignG(design),
			}),
		};
	});
	const { squirtDegAtHalf, sideSpinReachRatio } = advice.tipTradeoff;
	return {
		id: "tip",
		title: say("charts.tip.title"),
		summary: say("charts.tip.summary", {
			tip: formatLength(advice.tip.value, reader, "diameter"),
			angle: formatAngle(squirtDegAtHalf.value, reader),
			spin: formatRatio(sideSpinReachRatio, reader),
		}),
		x: {
			label: say("charts.tip.x"),
			unit: lengthUnit(reader),
			domain: [length(from), length(to)],
		},
		panels: [
			{
				label: say("charts.tip.deflectionAxis"),
				unit: "°",
				lines: [
					{
						name: say("charts.tip.deflection"),
						points: rows.map(({ tipDiameterMm, trade }) =>
							banded(length(tipDiameterMm), trade.squirtDegAtHalf, (v) => v),
						),
					},
				],
				zones: [
					{
						axis: "x",
						from: length(usualLow),
						to: length(usualHigh),
						label: say("charts.usualForGame"),
						kind: "wanted",
					},
					...(ruleMax !== undefined && ruleMax < to
						? [
								{
									axis: "x",
									from: length(ruleMax),
									to: length(to),
									label: say("charts.tip.aboveRule"),
									kind: "limit",
								} as const,
							]
						: []),
				],
			},
			{
				label: say("charts.tip.reachAxis"),
				unit: "",
				lines: [
					{
						name: say("charts.tip.reach"),
						points: rows.map(({ tipDiameterMm, trade }) =>
							banded(length(tipDiameterMm), trade.sideSpinReach, (v) => v),
						),
					},
				],
				zones: [],
			},
		],
		marker: {
			x: length(advice.tip.value),
			label: formatLength(advice.tip.value, reader, "diameter"),
		},
		table: {
			columns: [
				say("charts.tip.x"),
				say("charts.tip.atHalf"),
				say("charts.tip.reach"),
			],
			rows: thin(rows).map(({ tipDiameterMm, trade }) => [
				formatLength(tipDiameterMm, reader, "diameter"),
				`${formatAngle(trade.squirtDegAtHalf.value, reader)} ± ${formatNumber(Z90 * trade.squirtDegAtHalf.sd, reader, 1)}°`,
				formatRatio(trade.sideSpinReachRatio, reader),
			]),
		},
	};
}
