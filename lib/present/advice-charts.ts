import type { Advice } from "@/lib/advice/advise";
import {
	BUTT_LIMITS_MM,
	CLOSURE_TARGET_MM,
	CLOSURE_TOLERANCE_MM,
	GRIP_SLIDE_MM,
	usualBalanceMm,
} from "@/lib/advice/judgement";
import { planAddedWeight } from "@/lib/build/added-weight";
import { diameterAtMm } from "@/lib/cue/taper";
import { designFrom } from "@/lib/cue/template";
import { must } from "@/lib/numerics/outcome";
import { closureMm } from "@/lib/player/hand";
import { band90, type Estimate, Z90 } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
import { endMassOfDesignG } from "@/lib/shot/endmass";
import { tipTradeoff } from "@/lib/shot/tip";
import { BRIDGE_SLACK_MM, GRIP_LIMITS_MM } from "@/lib/stance/assumptions";
import { overhangMm } from "@/lib/stance/reach";
import {
	gramsToOunces,
	mmToInches,
	type UnitSystem,
} from "@/lib/units/quantity";
import type { ChartModel, ChartPoint } from "./chart-model";
import {
	formatAngle,
	formatLength,
	formatLengthBand,
	formatMass,
	formatMassBand,
	formatNumber,
	formatRatio,
} from "./figures";

/** Points along each axis: enough for a smooth line, few enough for a table to be read. */
const POINTS = 25;
/** Each is a solved cue. */
const TIP_POINTS = 11;

const range = (from: number, to: number, count = POINTS): number[] =>
	Array.from(
		{ length: count },
		(_, i) => from + ((to - from) * i) / (count - 1),
	);

const axisLength = (mm: number, system: UnitSystem) =>
	system === "metric" ? mm : mmToInches(mm);
const axisMass = (g: number, system: UnitSystem) =>
	system === "metric" ? g : gramsToOunces(g);
const lengthUnit = (system: UnitSystem) => (system === "metric" ? "mm" : "in");
const massUnit = (system: UnitSystem) => (system === "metric" ? "g" : "oz");

const banded = (
	x: number,
	{ value, sd }: { value: number; sd: number },
	scale: (v: number) => number,
): ChartPoint => ({
	x,
	y: scale(value),
	low: scale(value - Z90 * sd),
	high: scale(value + Z90 * sd),
});

/** A few rows of a chart for its table: first, last and those between, evenly. */
const thin = <T>(rows: readonly T[], keep = 9): T[] =>
	rows.filter((_, i) => i % Math.ceil((rows.length - 1) / (keep - 1)) === 0);

/** Wanted weight against the metal it takes and the balance it gives. */
export function weightChart(advice: Advice, system: UnitSystem): ChartModel {
	const { design, natural } = advice.build;
	const naturalBand = band90(natural.massG);
	const from = Math.min(naturalBand.low - 15, advice.mass.value - 30);
	const to = Math.max(naturalBand.high + 90, advice.mass.value + 30);
	const plans = range(from, to).flatMap((wantedMassG) => {
		const plan = planAddedWeight({ design, wantedMassG });
		return plan.ok ? [{ wantedMassG, plan: plan.value }] : [];
	});
	const mass = (g: number) => axisMass(g, system);
	const length = (mm: number) => axisLength(mm, system);
	const usual = GAMES[advice.gameId].usual.massG;
	const usualBalance = usualBalanceMm(advice.length.value);
	const { plan } = advice.build;
	return {
		id: "weight",
		title: "Weight: what the wood gives and what is added",
		summary: `Unweighted, this build weighs ${formatMass(natural.massG.value, system)} (nine in ten ${formatMassBand(naturalBand, system)}). ${
			plan.ok
				? `At ${formatMass(advice.mass.value, system)} it takes ${formatMass(plan.value.addedMassG.value, system, "added")} net and balances ${formatLength(advice.balance.exact, system)} from the butt end.`
				: `${formatMass(advice.mass.value, system)} cannot be built.`
		} Metal in the butt moves the balance back.`,
		x: {
			label: "Finished weight",
			unit: massUnit(system),
			domain: [mass(from), mass(to)],
		},
		panels: [
			{
				label: "Weight to add, net",
				unit: massUnit(system),
				lines: [
					{
						name: "Added weight",
						points: plans.map(({ wantedMassG, plan: { addedMassG } }) =>
							banded(mass(wantedMassG), addedMassG, mass),
						),
					},
				],
				zones: [
					{
						axis: "x",
						from: mass(naturalBand.low),
						to: mass(naturalBand.high),
						label: "Natural weight",
						kind: "limit",
					},
					{
						axis: "x",
						from: mass(usual[0]),
						to: mass(usual[1]),
						label: "Usual for the game",
						kind: "wanted",
					},
				],
			},
			{
				label: "Balance from the butt end",
				unit: lengthUnit(system),
				lines: [
					{
						name: "Balance point",
						points: plans.map(
							({ wantedMassG, plan: { balanceAfterFromButtMm } }) =>
								banded(mass(wantedMassG), balanceAfterFromButtMm, length),
						),
					},
				],
				zones: [
					{
						axis: "y",
						from: length(usualBalance.min),
						to: length(usualBalance.max),
						label: "Usual",
						kind: "wanted",
					},
				],
			},
		],
		marker: {
			x: mass(advice.mass.value),
			label: formatMass(advice.mass.value, system),
		},
		table: {
			columns: [
				"Finished weight",
				"Weight to add, net",
				"Balance from the butt end",
			],
			rows: thin(plans).map(({ wantedMassG, plan: p }) => [
				formatMass(wantedMassG, system),
				formatMass(p.addedMassG.value, system, "added"),
				formatLength(p.balanceAfterFromButtMm.value, system),
			]),
		},
	};
}

/** Butt diameter against how thumb and finger close along the grip zone. */
export function buttChart(advice: Advice, system: UnitSystem): ChartModel {
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
	const length = (mm: number) => axisLength(mm, system);
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
			? `${formatLength(mm, system, "gap")} gap`
			: `${formatLength(-mm, system, "gap")} overlap`;
	const { gripFromButtMm } = advice.reach;
	return {
		id: "butt",
		title: "Butt diameter: how thumb and finger close",
		summary: `With a ring of ${formatLength(circleMm.value, system, "diameter")} held ${formatLength(gripFromButtMm.value, system)} from the butt end, butts of ${formatLengthBand(rangeMm, system, "diameter")} close as wanted; ${formatLength(figure.value, system, "diameter")} is chosen. Further forward the cue is slimmer and the ring closes more.`,
		x: {
			label: "Butt diameter",
			unit: lengthUnit(system),
			domain: [length(BUTT_LIMITS_MM.min), length(BUTT_LIMITS_MM.max)],
		},
		panels: [
			{
				label: "Between the pads: gap above 0, overlap below",
				unit: lengthUnit(system),
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
			label: formatLength(figure.value, system, "diameter"),
		},
		table: {
			columns: ["Butt diameter", ...places.map(({ name }) => name)],
			rows: thin(closures, 8).map(({ buttDiameterMm, at }) => [
				formatLength(buttDiameterMm, system, "diameter"),
				...at.map(gap),
			]),
		},
	};
}

/** Length against what is left behind the hand, and in front of the bridge. */
export function lengthChart(advice: Advice, system: UnitSystem): ChartModel {
	const { reach } = advice;
	const { low, high } = reach.lengthWindowMm;
	const margin = 40;
	const from = Math.min(low, advice.length.value) - margin;
	const to = Math.max(high, advice.length.value) + margin;
	const length = (mm: number) => axisLength(mm, system);
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
		title: "Length: reach in front, wood behind the hand",
		summary: `The stance leaves room for ${formatLengthBand({ low, high }, system)}. At ${formatLength(advice.length.value, system)} and the usual bridge, ${formatLength(overhangMm({ reach, lengthMm: advice.length.value }).value, system)} of butt stands behind the middle of the grip hand.`,
		x: {
			label: "Cue length",
			unit: lengthUnit(system),
			domain: [length(from), length(to)],
		},
		panels: [
			{
				label: "Behind the hand, bridge kept",
				unit: lengthUnit(system),
				lines: [
					{
						name: "Behind the hand",
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
						label: "Enough and not too much",
						kind: "wanted",
					},
					{
						axis: "x",
						from: length(low),
						to: length(high),
						label: "Window of the stance",
						kind: "wanted",
					},
				],
			},
			{
				label: "Bridge length, grip kept",
				unit: lengthUnit(system),
				lines: [
					{
						name: "Bridge length",
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
						label: "Near the usual bridge",
						kind: "wanted",
					},
				],
			},
		],
		marker: {
			x: length(advice.length.value),
			label: formatLength(advice.length.value, system),
		},
		table: {
			columns: [
				"Length",
				"Behind the hand, bridge kept",
				"Bridge length, grip kept",
			],
			rows: thin(rows).map(({ lengthMm, behind, bridge }) => [
				formatLength(lengthMm, system),
				formatLength(behind.value, system),
				formatLength(bridge.value, system),
			]),
		},
	};
}

/** Tip size against deflection of the cue ball and reach of side spin. */
export function tipChart(advice: Advice, system: UnitSystem): ChartModel {
	const game = GAMES[advice.gameId];
	const [usualLow, usualHigh] = game.usual.tipMm;
	const ruleMax = game.tipMaxDiameterMm?.value;
	const from = Math.max(7, Math.min(usualLow - 1.5, advice.tip.value - 0.5));
	const to = Math.min(14, Math.max(usualHigh + 1.5, advice.tip.value + 0.5));
	const { request } = advice.build;
	const length = (mm: number) => axisLength(mm, system);
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
		title: "Tip size: deflection and side spin",
		summary: `A ${formatLength(advice.tip.value, system, "diameter")} tip turns the cue ball about ${formatAngle(squirtDegAtHalf.value)} off line at half a ball radius of side, and reaches a side spin of ${formatRatio(sideSpinReachRatio)} times rolling speed. A bigger tip is heavier at the end and deflects more; a very small one runs out of dome.`,
		x: {
			label: "Tip diameter",
			unit: lengthUnit(system),
			domain: [length(from), length(to)],
		},
		panels: [
			{
				label: "Cue-ball deflection, half a radius of side",
				unit: "°",
				lines: [
					{
						name: "Deflection",
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
						label: "Usual for the game",
						kind: "wanted",
					},
					...(ruleMax !== undefined && ruleMax < to
						? [
								{
									axis: "x",
									from: length(ruleMax),
									to: length(to),
									label: "Above the rule",
									kind: "limit",
								} as const,
							]
						: []),
				],
			},
			{
				label: "Side-spin reach, spin over speed",
				unit: "",
				lines: [
					{
						name: "Side-spin reach",
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
			label: formatLength(advice.tip.value, system, "diameter"),
		},
		table: {
			columns: [
				"Tip diameter",
				"Deflection at half a radius",
				"Side-spin reach",
			],
			rows: thin(rows).map(({ tipDiameterMm, trade }) => [
				formatLength(tipDiameterMm, system, "diameter"),
				`${formatAngle(trade.squirtDegAtHalf.value)} ± ${formatNumber(Z90 * trade.squirtDegAtHalf.sd, 1)}°`,
				formatRatio(trade.sideSpinReachRatio),
			]),
		},
	};
}
