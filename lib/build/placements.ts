import type { CueDesign } from "@/lib/cue/design";
import { rememberLast } from "@/lib/numerics/remember-last";
import { rootBetween } from "@/lib/numerics/roots";
import {
	BORE,
	deepestBoreMm,
	type EndSlug,
	jointBore,
	type Placement,
} from "./bore";
import {
	boresClear,
	endNetG,
	endSlugFor,
	gramsPerMm,
	type Job,
	jointNetG,
	jointSlugFor,
	type Loaded,
	load,
} from "./load";

interface EndBore {
	readonly diameterMm: number;
	readonly depthMm: number;
}

/** Drills that leave a bore of some length from the butt end. */
export function endBores(job: Job): readonly EndBore[] {
	return boresOf(job.design);
}

const boresOf = rememberLast((design: CueDesign): readonly EndBore[] =>
	BORE.diametersMm
		.map((diameterMm) => ({
			diameterMm,
			depthMm: deepestBoreMm(design, diameterMm),
		}))
		.filter((bore) => bore.depthMm > BORE.minPlugMm),
);

/** Most that a full bore adds, g. */
const capacityG = (job: Job, bore: EndBore): number =>
	endNetG(job, {
		diameterMm: bore.diameterMm,
		slugLengthMm: bore.depthMm - BORE.minPlugMm,
		slugFromButtMm: BORE.minPlugMm,
	});

/** The bore from the butt end that holds most, and how much that is. */
export function mostMetal(job: Job): { netG: number; diameterMm: number } {
	let most = { netG: 0, diameterMm: 0 };
	for (const bore of endBores(job)) {
		const netG = capacityG(job, bore);
		if (netG > most.netG) most = { netG, diameterMm: bore.diameterMm };
	}
	return most;
}

/** The slug in a bore as far back as its plug allows; null where it does not fit. */
function rearmost(job: Job, bore: EndBore, netG: number): Placement | null {
	const end = endSlugFor(job, {
		...bore,
		slugFromButtMm: BORE.minPlugMm,
		wantedNetG: netG,
	});
	return end && { metal: job.metal, end, joint: null };
}

/** The slimmest drill whose slug is not over-long, else the widest that holds it. */
export function usualPlacement(job: Job, netG: number): Placement | null {
	const bores = endBores(job);
	for (const bore of bores) {
		const roughMm = netG / gramsPerMm(job, bore.diameterMm);
		if (roughMm > 1.1 * BORE.preferredSlugMm) continue;
		const placement = rearmost(job, bore, netG);
		if (placement?.end && placement.end.slugLengthMm <= BORE.preferredSlugMm)
			return placement;
	}
	for (const bore of bores.toReversed()) {
		const placement = rearmost(job, bore, netG);
		if (placement) return placement;
	}
	return null;
}

/** A figure of the loaded cue that is asked for: its balance or an inertia. */
export type Figure = (loaded: Loaded) => number;

/** A continuous family of placements that all add the same weight; `at(0)` and `at(1)` are its ends. */
export interface Family {
	at(share: number): Loaded | null;
}

/** A slug sliding along each bore from the butt end, then weight moving from the butt end to the joint. */
export function familiesFor(
	job: Job,
	netG: number,
	which: "all" | "widest" = "all",
): readonly Family[] {
	const holding: { bore: EndBore; rear: EndSlug }[] = [];
	for (const bore of endBores(job).toReversed()) {
		const rear = rearmost(job, bore, netG)?.end;
		if (rear) holding.push({ bore, rear });
		if (rear && which === "widest") break;
	}
	holding.reverse();
	const families = holding.map(({ bore, rear }): Family => {
		const roomMm = bore.depthMm - rear.slugLengthMm - rear.slugFromButtMm;
		return {
			at: (share) => {
				// Ahead, more of the softer wood may be drilled: keep the last hundredth in reserve.
				const end = endSlugFor(job, {
					...bore,
					slugFromButtMm: BORE.minPlugMm + 0.99 * share * roomMm,
					wantedNetG: netG,
				});
				return end && load(job, { metal: job.metal, end, joint: null });
			},
		};
	});
	const joint = jointBore(job.design);
	if (!joint) return families;
	const jointMostG = jointNetG(job, {
		...joint,
		slugLengthMm: joint.maxLengthMm,
	});
	const shareLimit = Math.min(1, (0.999 * jointMostG) / netG);
	return [
		...families,
		...holding.map(
			({ bore }): Family => ({
				at: (share) =>
					split(job, { bore, joint, netG, share: share * shareLimit }),
			}),
		),
	];
}

/** Part of the weight behind the joint, the rest at the butt end. */
function split(
	job: Job,
	p: {
		bore: EndBore;
		joint: { fromStationMm: number; diameterMm: number; maxLengthMm: number };
		netG: number;
		share: number;
	},
): Loaded | null {
	const jointG = p.netG * p.share;
	const atJoint = jointSlugFor(job, { bore: p.joint, wantedNetG: jointG });
	if (!atJoint) return null;
	const whole = p.share > 1 - 1e-12;
	const end = whole
		? null
		: endSlugFor(job, {
				...p.bore,
				slugFromButtMm: BORE.minPlugMm,
				wantedNetG: p.netG - jointG,
			});
	if (!whole && !end) return null;
	const placement = { metal: job.metal, end, joint: atJoint };
	return boresClear(job, placement) ? load(job, placement) : null;
}

export interface Reach {
	/** The placement that gives the wanted figure, or null. */
	readonly found: Loaded | null;
	readonly low: number;
	readonly high: number;
	/** The placement nearest the wanted figure where none gives it. */
	readonly nearest: Loaded | null;
}

/**
 * Looks for a figure in every family. The figure changes continuously along a family, so a wanted
 * value between its ends is met somewhere; a value outside every family's ends is out of reach.
 */
export function reachOf(
	job: Job,
	p: { netG: number; figure: Figure; wanted: number },
): Reach {
	let low = Number.POSITIVE_INFINITY;
	let high = Number.NEGATIVE_INFINITY;
	let nearest: Loaded | null = null;
	let nearestGap = Number.POSITIVE_INFINITY;
	for (const family of familiesFor(job, p.netG)) {
		const ends = [family.at(0), family.at(1)];
		for (const end of ends) {
			if (!end) continue;
			const value = p.figure(end);
			low = Math.min(low, value);
			high = Math.max(high, value);
			if (Math.abs(value - p.wanted) < nearestGap) {
				nearestGap = Math.abs(value - p.wanted);
				nearest = end;
			}
		}
		const found = within(family, ends, p);
		if (found) return { found, low, high, nearest: found };
	}
	return { found: null, low, high, nearest };
}

/** A share of a family and the cue loaded so. */
interface Placed {
	readonly share: number;
	readonly loaded: Loaded;
}

/** Bisections that find the edge of a gap, and gaps that are looked past: more than any family has. */
const EDGE_STEPS = 40;
const MOST_GAPS = 4;

/**
 * Where a family meets the wanted figure. A family may have a gap, such as a rest so light that the plug
 * alone outweighs it: the stretches on both sides of it are then looked at by themselves.
 */
function within(
	family: Family,
	ends: readonly (Loaded | null)[],
	p: { figure: Figure; wanted: number },
	gapsLeft = MOST_GAPS,
	[from, to]: readonly [number, number] = [0, 1],
): Loaded | null {
	const [rear, front] = ends;
	if (!rear || !front) return null;
	if ((p.figure(rear) - p.wanted) * (p.figure(front) - p.wanted) > 0)
		return null;
	const result = rootBetween({
		f: (share) => {
			const loaded = family.at(share);
			// A gap stops the search there; it is told from a root below.
			return loaded ? p.figure(loaded) - p.wanted : 0;
		},
		from,
		to,
		tolerance: 1e-10,
	});
	if (!result.converged) return null;
	const met = family.at(result.root);
	if (met || gapsLeft === 0) return met;
	const before = edgeOf(family, { share: from, loaded: rear }, result.root);
	const after = edgeOf(family, { share: to, loaded: front }, result.root);
	return (
		within(family, [rear, before.loaded], p, gapsLeft - 1, [
			from,
			before.share,
		]) ??
		within(family, [after.loaded, front], p, gapsLeft - 1, [after.share, to])
	);
}

/** The last placement on the way from one that exists to a share where there is none. */
function edgeOf(family: Family, there: Placed, gapShare: number): Placed {
	let edge = there;
	let gone = gapShare;
	for (let step = 0; step < EDGE_STEPS; step++) {
		const share = (edge.share + gone) / 2;
		const loaded = family.at(share);
		if (loaded) edge = { share, loaded };
		else gone = share;
	}
	return edge;
}
