import { bendingModulusGPa } from "@/lib/cue/materials";
import { diameterAtMm } from "@/lib/cue/taper";
import { closureMm } from "@/lib/player/hand";
import { type Band, Z90 } from "@/lib/reference/estimate";
import { METALS } from "@/lib/reference/metals";
import { GAMES } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import { squirtDeg } from "@/lib/shot/deflection";
import { AT, type CompiledCriteria, CRITERION_COUNT } from "./criteria";
import {
	type Candidate,
	densityOf,
	densitySdOf,
	measureLoad,
	overallOf,
	type Setting,
} from "./evaluate";
import { type HandPlace, handFromButtMm } from "./fitting-needs";
import { tipGiveMmPerN } from "./geometry-table";
import type { Draw, Spreads } from "./latent";
import {
	type Densities,
	emptyLoad,
	type Load,
	NEGLIGIBLE_G,
	placeMost,
	placeRear,
	usualSlug,
	weighTable,
} from "./loading";
import { quantile } from "./normal";
import type { ReferenceCue } from "./reference-evaluate";
import type { Valued } from "./refine";
import { placeForMoment, slidesOf } from "./sliding";

/** A cue's measures and worth over many possible truths. */
export interface Outlook {
	/** Central 90 % bands of each measure, in the order of the criteria. */
	readonly bands: readonly Band[];
	readonly overallBand: Band;
	readonly overallMean: number;
	/** Overall desirability draw by draw. */
	readonly overall: Float64Array;
	/** Share of draws in which the woods let the wanted weight be reached. */
	readonly weightReachedShare: number;
}

export interface OutlookInput {
	readonly valued: Valued;
	readonly reference: ReferenceCue;
	readonly setting: Setting;
	readonly compiled: CompiledCriteria;
	readonly spreads: Spreads;
	/** Of the price list, as a share: a central 90 % band. */
	readonly priceSpreadFraction: number;
}

/** A modulus or density never falls below this share of its mean, however far out a draw is. */
const LEAST_SHARE = 0.3;

/**
 * In a draw that puts a need out of a cue's reach, the broken criterion counts as this and not as
 * nothing: draws stay comparable. Assumed.
 */
const LEAST_WORTH = 0.01;

/**
 * Carries reading spread, estimated segments, density spread and model error through the same models to
 * every measure and to the overall desirability. A cue is made as ordered: the bench brings whatever
 * wood it has to the ordered weight and balance, as far as bore and wood let it. What is only wanted
 * (the needs) shifts the criteria, not the cue.
 */
export function outlookOf(
	input: OutlookInput,
	draws: readonly Draw[],
): Outlook {
	const { compiled } = input;
	const columns = Array.from(
		{ length: CRITERION_COUNT },
		() => new Float64Array(draws.length),
	);
	const overall = new Float64Array(draws.length);
	const row = new Float64Array(CRITERION_COUNT);
	const drawn = measureUnder(input);
	let reached = 0;
	draws.forEach((draw, k) => {
		if (drawn(draw, row)) reached++;
		for (let i = 0; i < CRITERION_COUNT; i++)
			(columns[i] as Float64Array)[k] = row[i] as number;
		shiftByNeeds(row, draw, input);
		overall[k] = overallOf(compiled, row, LEAST_WORTH);
	});
	const bandOf = (values: Float64Array): Band => {
		const sorted = Float64Array.from(values).sort();
		return { low: quantile(sorted, 0.05), high: quantile(sorted, 0.95) };
	};
	return {
		bands: columns.map(bandOf),
		overallBand: bandOf(overall),
		overallMean: overall.reduce((sum, one) => sum + one, 0) / draws.length,
		overall,
		weightReachedShare: reached / draws.length,
	};
}

/** Fills a row with the measures of the cue under a draw; false where the weight could not be reached. */
export function measureUnder({
	valued,
	reference,
	setting,
	spreads,
	priceSpreadFraction,
}: OutlookInput): (draw: Draw, row: Float64Array) => boolean {
	const { candidate, measured } = valued;
	const { request } = candidate;
	const { table } = measured;
	const { design, tipTradeoff } = reference;
	const { endMassG } = tipTradeoff;
	const ball = GAMES[setting.gameId].cueBall.massG;
	const load = emptyLoad();
	const wantedBalanceMm =
		candidate.forwardMm > 0 ? (measured.row[AT.balance] as number) : null;
	return (draw, row) => {
		row.set(measured.row);
		const hand = handUnder(setting.hand, draw, spreads);
		const handMm = handFromButtMm(hand, request.lengthMm);
		row[AT.closure] = closureMm({
			circleMm: setting.ringMm + spreads.ringMm * draw.ring,
			diameterMm: diameterAtMm(design, request.lengthMm - handMm),
		});
		row[AT.deflection] = squirtDeg({
			offsetRatio: 0.5,
			ballMassG: ball.value + ball.sd * draw.ball,
			endMassG:
				measured.endMassG *
				Math.max(
					LEAST_SHARE,
					1 + (endMassG.sd / endMassG.value) * draw.endMass,
				),
		});
		row[AT.stiffness] = tipGiveMmPerN(table, {
			shaftGPa: modulusUnder(request.shaftWood, draw),
			buttGPa: modulusUnder(request.buttWood, draw),
		});
		const reached = loadUnder(
			{ candidate, wantedBalanceMm, valued },
			{
				shaft: densityUnder(request.shaftWood, draw, setting),
				butt: densityUnder(request.buttWood, draw, setting),
				metal: METALS[setting.addedMetal].densityKgM3.value * 1e-6,
			},
			load,
		);
		measureLoad(row, {
			load,
			handMm,
			coreHalfWidthMm: table.coreHalfWidthMm,
			priceMinor:
				(measured.row[AT.price] as number) *
				(1 + (priceSpreadFraction / Z90) * draw.bill),
		});
		return reached;
	};
}

const handUnder = (
	hand: HandPlace,
	draw: Draw,
	spreads: Spreads,
): HandPlace => ({
	...hand,
	stationMm: {
		...hand.stationMm,
		value: hand.stationMm.value + spreads.handMm * draw.hand,
	},
});

function modulusUnder(wood: WoodId, { modulus }: Draw): number {
	const { value, sd } = bendingModulusGPa(wood);
	return Math.max(LEAST_SHARE * value, value + sd * (modulus[wood] ?? 0));
}

function densityUnder(
	wood: WoodId,
	{ density }: Draw,
	{ densities }: Setting,
): number {
	const mean = densityOf(wood, densities);
	const drawn = mean + densitySdOf(wood, densities) * (density[wood] ?? 0);
	return Math.max(LEAST_SHARE * mean, drawn) * 1e-6;
}

/** Makes the ordered cue of the drawn wood: ordered weight, then ordered balance, each as near as it can be had. */
function loadUnder(
	order: {
		candidate: Candidate;
		wantedBalanceMm: number | null;
		valued: Valued;
	},
	d: Densities,
	load: Load,
): boolean {
	const { table } = order.valued.measured;
	weighTable(table, d, load);
	const { massG } = order.candidate;
	if (massG === null) return true;
	const netG = massG - load.massG;
	if (netG < NEGLIGIBLE_G) return netG > -NEGLIGIBLE_G;
	if (order.wantedBalanceMm !== null) {
		const moment = order.wantedBalanceMm * massG - load.firstGMm;
		const slides = slidesOf(table.bores, d, netG);
		if (placeForMoment(slides, d, { netG, moment }, load)) return true;
	}
	const usual = usualSlug(table.bores, d, netG);
	if (usual) {
		placeRear(usual, d, load);
		return true;
	}
	placeMost(table.bores, d, load);
	return false;
}

/** Moves a row as far as the drawn needs lie from the estimated ones, so that it meets them as they would be. */
function shiftByNeeds(
	row: Float64Array,
	draw: Draw,
	{ spreads, compiled }: OutlookInput,
): void {
	const counts = (i: number) => (compiled.weights[i] as number) > 0;
	if (counts(AT.reach))
		row[AT.reach] =
			(row[AT.reach] as number) -
			spreads.lengthShareOfReach *
				(spreads.handMm * draw.hand + spreads.overhangMm * draw.overhang) -
			spreads.lengthRestMm * draw.length;
	if (counts(AT.weight))
		row[AT.weight] = (row[AT.weight] as number) - spreads.massG * draw.mass;
	if (counts(AT.tip))
		row[AT.tip] = (row[AT.tip] as number) - spreads.tipMm * draw.tip;
	if (counts(AT.steadiness))
		row[AT.steadiness] =
			(row[AT.steadiness] as number) /
			Math.max(LEAST_SHARE, 1 + spreads.inertia * draw.inertia);
	if (counts(AT.stiffness))
		row[AT.stiffness] =
			(row[AT.stiffness] as number) /
			Math.max(LEAST_SHARE, 1 + spreads.give * draw.give);
}

/** Two cues under the same truths. */
export interface Closeness {
	/** Share of draws in which the first is better; equal draws count half. */
	readonly firstBetterShare: number;
	/** Central 90 % band of first minus second. */
	readonly differenceBand: Band;
	/** The mean worth of each lies inside the other's band. */
	readonly insideEachOther: boolean;
	/** And neither is better in nineteen draws of twenty: too close to call. */
	readonly tooClose: boolean;
}

export function closenessOf(first: Outlook, second: Outlook): Closeness {
	const a = first.overall;
	const b = second.overall;
	if (a.length !== b.length)
		throw new RangeError(`${a.length} and ${b.length} draws do not pair`);
	const gaps = Float64Array.from(a, (one, k) => one - (b[k] as number));
	let better = 0;
	for (const gap of gaps) better += gap > 0 ? 1 : gap === 0 ? 0.5 : 0;
	gaps.sort();
	const firstBetterShare = better / gaps.length;
	const within = (value: number, { low, high }: Band) =>
		value >= low && value <= high;
	const insideEachOther =
		within(first.overallMean, second.overallBand) &&
		within(second.overallMean, first.overallBand);
	return {
		firstBetterShare,
		differenceBand: { low: quantile(gaps, 0.05), high: quantile(gaps, 0.95) },
		insideEachOther,
		tooClose:
			insideEachOther && firstBetterShare > 0.05 && firstBetterShare < 0.95,
	};
}
