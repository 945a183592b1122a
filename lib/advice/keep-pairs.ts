import type { GeometryTable } from "./geometry-table";
import {
	copyLoad,
	type Densities,
	emptyLoad,
	inertiaAboutKgM2,
	type Load,
	NEGLIGIBLE_G,
	placeMost,
	placeRear,
	usualSlug,
	weighTable,
} from "./loading";
import { placeForMoment, slidesOf } from "./sliding";

export type Kept = "mass" | "balance" | "inertia";

export interface Target {
	readonly massG: number;
	readonly balanceMm: number;
	readonly inertiaKgM2: number;
}

/** A load that meets two of the three as nearly as wood and bore let it. */
export interface Pair {
	readonly keeps: readonly [Kept, Kept];
	readonly isMet: boolean;
	readonly massG: number;
	readonly balanceMm: number;
	readonly inertiaKgM2: number;
	readonly metalG: number;
	readonly boreDiameterMm: number;
	readonly slugLengthMm: number;
	readonly slugFromButtMm: number;
}

/** Weights tried between the wood's own and the bore's most; the root is then closed by halving. */
const MASSES = 60;
/** Places tried along each slide. */
const PLACES = 24;
/** Met: within this share of mass and inertia, and of the cue's balance. */
const MET_SHARE = 1e-4;

/**
 * Solves for weight and balance, balance and inertia, weight and inertia with one slug in the butt.
 * Every load the bores allow lies between the wood's own weight and the fullest bore.
 */
export function solvePairs(p: {
	table: GeometryTable;
	densities: Densities;
	handMm: number;
	target: Target;
}): { naturalG: number; pairs: readonly Pair[] } {
	const { table, densities: d, target } = p;
	const natural = emptyLoad();
	weighTable(table, d, natural);
	const fullest = { ...natural };
	placeMost(table.bores, d, fullest);
	const tools: Tools = { ...p, natural };
	const massG = Math.min(fullest.massG, Math.max(natural.massG, target.massG));
	const pairs = [
		pairFrom(tools, ["mass", "balance"], atBalance(tools, massG)),
		pairFrom(tools, ["mass", "inertia"], atInertia(tools, massG)),
		pairFrom(
			tools,
			["balance", "inertia"],
			balanceAndInertia(tools, { low: natural.massG, high: fullest.massG }),
		),
	];
	return { naturalG: natural.massG, pairs };
}

interface Tools {
	readonly table: GeometryTable;
	readonly densities: Densities;
	readonly handMm: number;
	readonly target: Target;
	readonly natural: Load;
}

const balanceOf = (load: Load): number => load.firstGMm / load.massG;

/** Every place of a slug of that weight, rear to front of each drill; the cue as it is where no metal is needed. */
function placesAt(
	{ table, densities: d, natural }: Tools,
	massG: number,
): Load[] {
	const netG = massG - natural.massG;
	if (netG < NEGLIGIBLE_G) return [{ ...natural }];
	const loads: Load[] = [];
	for (const slide of slidesOf(table.bores, d, netG))
		for (let i = 0; i <= PLACES; i++) {
			const load = { ...natural };
			const moment =
				slide.lowMoment + ((slide.highMoment - slide.lowMoment) * i) / PLACES;
			if (placeForMoment([slide], d, { netG, moment }, load)) loads.push(load);
		}
	if (loads.length > 0) return loads;
	const usual = usualSlug(table.bores, d, netG);
	const load = { ...natural };
	// So little that the plug alone weighs more: the wood's own weight is the nearest.
	if (usual) placeRear(usual, d, load);
	return [load];
}

/** Nearest to the wanted balance at that weight; exact where a slide passes it. */
function atBalance(tools: Tools, massG: number): Load {
	const { table, densities: d, natural, target } = tools;
	const netG = massG - natural.massG;
	if (netG >= NEGLIGIBLE_G) {
		const load = { ...natural };
		const moment = target.balanceMm * massG - natural.firstGMm;
		const slides = slidesOf(table.bores, d, netG);
		if (placeForMoment(slides, d, { netG, moment }, load)) return load;
	}
	return nearest(placesAt(tools, massG), (load) =>
		Math.abs(balanceOf(load) - target.balanceMm),
	);
}

/** Nearest to the wanted inertia at that weight: the slide's moments searched, then halved to the root. */
function atInertia(tools: Tools, massG: number): Load {
	const { table, densities: d, natural, handMm, target } = tools;
	const netG = massG - natural.massG;
	const gapOf = (load: Load) =>
		inertiaAboutKgM2(load, handMm) - target.inertiaKgM2;
	if (netG >= NEGLIGIBLE_G)
		for (const slide of slidesOf(table.bores, d, netG)) {
			const at = (moment: number): Load | null => {
				const load = { ...natural };
				return placeForMoment([slide], d, { netG, moment }, load) ? load : null;
			};
			const found = bracketed({
				from: slide.lowMoment,
				to: slide.highMoment,
				steps: PLACES,
				at,
				gapOf,
			});
			if (found) return found;
		}
	return nearest(placesAt(tools, massG), (load) => Math.abs(gapOf(load)));
}

/** Along the weights that allow the wanted balance, the one with the wanted inertia; else the nearest. */
function balanceAndInertia(
	tools: Tools,
	range: { low: number; high: number },
): Load {
	const { handMm, target } = tools;
	const gapOf = (load: Load) =>
		inertiaAboutKgM2(load, handMm) - target.inertiaKgM2;
	const meetsBalance = (load: Load) =>
		Math.abs(balanceOf(load) - target.balanceMm) < MET_SHARE * target.balanceMm;
	const at = (massG: number): Load | null => {
		const load = atBalance(tools, massG);
		return meetsBalance(load) ? load : null;
	};
	const found = bracketed({
		from: range.low + NEGLIGIBLE_G,
		to: range.high,
		steps: MASSES,
		at,
		gapOf,
	});
	if (found) return found;
	const all = Array.from({ length: MASSES + 1 }, (_, i) =>
		atBalance(tools, range.low + ((range.high - range.low) * i) / MASSES),
	);
	return nearest(all, (load) =>
		Math.hypot(
			(balanceOf(load) - target.balanceMm) / target.balanceMm,
			gapOf(load) / target.inertiaKgM2,
		),
	);
}

/** A root of the gap between neighbouring steps that both exist, closed by halving; null where none is bracketed. */
function bracketed(p: {
	from: number;
	to: number;
	steps: number;
	at: (x: number) => Load | null;
	gapOf: (load: Load) => number;
}): Load | null {
	let before: { x: number; gap: number } | null = null;
	for (let i = 0; i <= p.steps; i++) {
		const x = p.from + ((p.to - p.from) * i) / p.steps;
		const load = p.at(x);
		if (!load) {
			before = null;
			continue;
		}
		const gap = p.gapOf(load);
		if (before && before.gap < 0 !== gap < 0) {
			let low = before.x;
			let high = x;
			let best = load;
			for (let step = 0; step < 60; step++) {
				const middle = (low + high) / 2;
				const tried = p.at(middle);
				if (!tried) break;
				best = tried;
				if (p.gapOf(tried) < 0 === before.gap < 0) low = middle;
				else high = middle;
			}
			return best;
		}
		before = { x, gap };
	}
	return null;
}

function nearest(loads: readonly Load[], miss: (load: Load) => number): Load {
	const [first, ...others] = loads;
	if (!first) throw new RangeError("nearest: no loads");
	return others.reduce(
		(best, load) => (miss(load) < miss(best) ? load : best),
		first,
	);
}

function pairFrom(
	{ handMm, target }: Tools,
	keeps: readonly [Kept, Kept],
	load: Load,
): Pair {
	const out = emptyLoad();
	copyLoad(load, out);
	const figures = {
		massG: out.massG,
		balanceMm: balanceOf(out),
		inertiaKgM2: inertiaAboutKgM2(out, handMm),
	};
	const meets: Readonly<Record<Kept, boolean>> = {
		mass: near(figures.massG, target.massG),
		balance: near(figures.balanceMm, target.balanceMm),
		inertia: near(figures.inertiaKgM2, target.inertiaKgM2),
	};
	return {
		keeps,
		isMet: keeps.every((name) => meets[name]),
		...figures,
		metalG: out.metalG,
		boreDiameterMm: out.boreDiameterMm,
		slugLengthMm: out.slugLengthMm,
		slugFromButtMm: out.slugFromButtMm,
	};
}

const near = (value: number, wanted: number): boolean =>
	Math.abs(value - wanted) <= MET_SHARE * Math.abs(wanted);
