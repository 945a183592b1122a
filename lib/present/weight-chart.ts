import type { Advice } from "@/lib/advice/advise";
import { usualBalanceMm } from "@/lib/advice/judgement";
import { planAddedWeight } from "@/lib/build/added-weight";
import { band90 } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
import type { Reader } from "@/lib/words/reader";
import {
	axisLength,
	axisMass,
	banded,
	lengthUnit,
	massUnit,
	range,
	thin,
} from "./chart-axes";
import type { ChartModel } from "./chart-model";
import { formatLength, formatMass, formatMassBand } from "./figures";

/** Wanted weight against the metal it takes and the balance it gives. */
export function weightChart(advice: Advice, reader: Reader): ChartModel {
	const { say } = reader;
	const { design, natural } = advice.build;
	const naturalBand = band90(natural.massG);
	const from = outward(
		Math.min(naturalBand.low - 15, advice.mass.value - 30),
		Math.floor,
	);
	const to = outward(
		Math.max(naturalBand.high + 90, advice.mass.value + 30),
		Math.ceil,
	);
	const plans = range(from, to).flatMap((wantedMassG) => {
		const plan = planAddedWeight({ design, wantedMassG });
		return plan.ok ? [{ wantedMassG, plan: plan.value }] : [];
	});
	const mass = (g: number) => axisMass(g, reader);
	const length = (mm: number) => axisLength(mm, reader);
	const usual = GAMES[advice.gameId].usual.massG;
	const usualBalance = usualBalanceMm(advice.length.value);
	const { plan } = advice.build;
	return {
		id: "weight",
		title: say("charts.weight.title"),
		summary: say("charts.weight.summary", {
			natural: formatMass(natural.massG.value, reader),
			band: formatMassBand(naturalBand, reader),
			plan: plan.ok
				? say("charts.weight.takes", {
						mass: formatMass(advice.mass.value, reader),
						added: formatMass(plan.value.addedMassG.value, reader, "added"),
						balance: formatLength(advice.balance.exact, reader),
					})
				: say("charts.weight.cannot", {
						mass: formatMass(advice.mass.value, reader),
					}),
		}),
		x: {
			label: say("charts.weight.x"),
			unit: massUnit(reader),
			domain: [mass(from), mass(to)],
		},
		panels: [
			{
				label: say("charts.weight.add"),
				unit: massUnit(reader),
				lines: [
					{
						name: say("charts.weight.added"),
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
						label: say("charts.weight.natural"),
						kind: "limit",
					},
					{
						axis: "x",
						from: mass(usual[0]),
						to: mass(usual[1]),
						label: say("charts.usualForGame"),
						kind: "wanted",
					},
				],
			},
			{
				label: say("charts.weight.balanceAxis"),
				unit: lengthUnit(reader),
				lines: [
					{
						name: say("charts.weight.balance"),
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
						label: say("charts.weight.usual"),
						kind: "wanted",
					},
				],
			},
		],
		marker: {
			x: mass(advice.mass.value),
			label: formatMass(advice.mass.value, reader),
		},
		table: {
			columns: [
				say("charts.weight.x"),
				say("charts.weight.add"),
				say("charts.weight.balanceAxis"),
			],
			rows: thin(plans).map(({ wantedMassG, plan: p }) => [
				formatMass(wantedMassG, reader),
				formatMass(p.addedMassG.value, reader, "added"),
				formatLength(p.balanceAfterFromButtMm.value, reader),
			]),
		},
	};
}

/** The axis ends at whole stretches, so that it stands still while the weight moves within one. */
const outward = (massG: number, to: (stretches: number) => number): number =>
	to(massG / STRETCH_G) * STRETCH_G;
const STRETCH_G = 25;
