import type { Advice } from "@/lib/advice/advise";
import type { CueRequest } from "@/lib/cue/design";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";
import { Z90 } from "@/lib/reference/estimate";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { endMassOfDesignG } from "@/lib/shot/endmass";
import { type TipTradeoff, tipTradeoff } from "@/lib/shot/tip";
import { axisLength, banded, lengthUnit, range, thin } from "./chart-axes";
import type { ChartModel } from "./chart-model";
import { type CostChart, type CostModel, chartOf } from "./cost-chart";
import {
	formatAngle,
	formatLength,
	formatNumber,
	formatRatio,
} from "./figures";

/** Each is a solved cue. */
const TIP_POINTS = 11;

type Shown = Pick<Advice, "gameId" | "tip" | "tipTradeoff">;

interface Asked {
	readonly gameId: GameId;
	/** The cue but for its tip. */
	readonly request: Omit<CueRequest, "tipDiameterMm">;
	readonly fromMm: number;
	readonly toMm: number;
}

type Curve = readonly {
	readonly tipDiameterMm: number;
	readonly trade: TipTradeoff;
}[];

const curveOf = ({ gameId, request, fromMm, toMm }: Asked): Curve =>
	range(fromMm, toMm, TIP_POINTS).map((tipDiameterMm) => {
		const design = must(designFrom({ ...request, tipDiameterMm }));
		return {
			tipDiameterMm,
			trade: tipTradeoff({
				gameId,
				tipDiameterMm,
				domeRadiusMm: design.tip.domeRadiusMm,
				endMassG: endMassOfDesignG(design),
			}),
		};
	});

function modelOf({
	shown,
	asked: { fromMm: from, toMm: to },
	curve: rows,
	reader,
}: CostModel<Shown, Asked, Curve>): ChartModel {
	const { say } = reader;
	const game = GAMES[shown.gameId];
	const [usualLow, usualHigh] = game.usual.tipMm;
	const ruleMax = game.tipMaxDiameterMm?.value;
	const length = (mm: number) => axisLength(mm, reader);
	const { squirtDegAtHalf, sideSpinReachRatio } = shown.tipTradeoff;
	return {
		id: "tip",
		title: say("charts.tip.title"),
		summary: say("charts.tip.summary", {
			tip: formatLength(shown.tip.value, reader, "diameter"),
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
			x: length(shown.tip.value),
			label: formatLength(shown.tip.value, reader, "diameter"),
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

/** Tip size against deflection of the cue ball and reach of side spin. */
export const TIP_COST: CostChart<Shown, Asked, Curve> = {
	partsOf({ gameId, tip, tipTradeoff, build }) {
		const [usualLow, usualHigh] = GAMES[gameId].usual.tipMm;
		const { tipDiameterMm: _, ...request } = build.request;
		return {
			shown: { gameId, tip, tipTradeoff },
			asked: {
				gameId,
				request,
				fromMm: Math.max(7, Math.min(usualLow - 1.5, tip.value - 0.5)),
				toMm: Math.min(14, Math.max(usualHigh + 1.5, tip.value + 0.5)),
			},
		};
	},
	curveOf,
	modelOf,
};

export const tipChart = chartOf(TIP_COST);
