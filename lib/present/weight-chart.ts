import type { Advice } from "@/lib/advice/advise";
import { usualBalanceMm } from "@/lib/advice/judgement";
import {
	type AddedWeightPlan,
	planAddedWeight,
} from "@/lib/build/added-weight";
import type { CueDesign } from "@/lib/cue/design";
import { band90, type Estimate } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
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
import { type CostChart, type CostModel, chartOf } from "./cost-chart";
import { formatLength, formatMass, formatMassBand } from "./figures";

interface Shown extends Pick<Advice, "gameId" | "length" | "mass" | "balance"> {
	readonly natural: Estimate;
	/** Null where the weight cannot be built. */
	readonly addedMassG: Estimate | null;
}

interface Asked {
	readonly design: CueDesign;
	readonly fromG: number;
	readonly toG: number;
}

type Curve = readonly ({ readonly wantedMassG: number } & Pick<
	AddedWeightPlan,
	"addedMassG" | "balanceAfterFromButtMm"
>)[];

function curveOf({ design, fromG, toG }: Asked): Curve {
	return range(fromG, toG).flatMap((wantedMassG) => {
		const plan = planAddedWeight({ design, wantedMassG });
		if (!plan.ok) return [];
		const { addedMassG, balanceAfterFromButtMm } = plan.value;
		return [{ wantedMassG, addedMassG, balanceAfterFromButtMm }];
	});
}

function modelOf({
	shown,
	asked,
	curve,
	reader,
}: CostModel<Shown, Asked, Curve>): ChartModel {
	const { say } = reader;
	const { natural, addedMassG } = shown;
	const naturalBand = band90(natural);
	const { fromG: from, toG: to } = asked;
	const mass = (g: number) => axisMass(g, reader);
	const length = (mm: number) => axisLength(mm, reader);
	const usual = GAMES[shown.gameId].usual.massG;
	const usualBalance = usualBalanceMm(shown.length.value);
	return {
		id: "weight",
		title: say("charts.weight.title"),
		summary: say("charts.weight.summary", {
			natural: formatMass(natural.value, reader),
			band: formatMassBand(naturalBand, reader),
			plan: addedMassG
				? say("charts.weight.takes", {
						mass: formatMass(shown.mass.value, reader),
						added: formatMass(addedMassG.value, reader, "added"),
						balance: formatLength(shown.balance.exact, reader),
					})
				: say("charts.weight.cannot", {
						mass: formatMass(shown.mass.value, reader),
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
						points: curve.map(({ wantedMassG, addedMassG }) =>
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
						points: curve.map(({ wantedMassG, balanceAfterFromButtMm }) =>
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
			x: mass(shown.mass.value),
			label: formatMass(shown.mass.value, reader),
		},
		table: {
			columns: [
				say("charts.weight.x"),
				say("charts.weight.add"),
				say("charts.weight.balanceAxis"),
			],
			rows: thin(curve).map(({ wantedMassG, ...plan }) => [
				formatMass(wantedMassG, reader),
				formatMass(plan.addedMassG.value, reader, "added"),
				formatLength(plan.balanceAfterFromButtMm.value, reader),
			]),
		},
	};
}

/** Wanted weight against the metal it takes and the balance it gives. */
export const WEIGHT_COST: CostChart<Shown, Asked, Curve> = {
	partsOf({ gameId, length, mass, balance, build }) {
		const { design, plan } = build;
		const natural = build.natural.massG;
		const { low, high } = band90(natural);
		return {
			shown: {
				gameId,
				length,
				mass,
				balance,
				natural,
				addedMassG: plan.ok ? plan.value.addedMassG : null,
			},
			asked: {
				design,
				fromG: outward(Math.min(low - 15, mass.value - 30), Math.floor),
				toG: outward(Math.max(high + 90, mass.value + 30), Math.ceil),
			},
		};
	},
	curveOf,
	modelOf,
};

export const weightChart = chartOf(WEIGHT_COST);

/** The axis ends at whole stretches, so that it stands still while the weight moves within one. */
const outward = (massG: number, to: (stretches: number) => number): number =>
	to(massG / STRETCH_G) * STRETCH_G;
const STRETCH_G = 25;
