import { BORE } from "@/lib/build/bore";
import type { BoreTable } from "./bore-table";
import type { AboutButt, GeometryTable } from "./geometry-table";

/** Densities in g/mm³ that a table is weighed with. */
export interface Densities {
	readonly shaft: number;
	readonly butt: number;
	/** Of the added metal. */
	readonly metal: number;
}

/** Mass, first and second moment about the butt end and half the polar moment; g, mm. */
export interface Load {
	massG: number;
	firstGMm: number;
	secondGMm2: number;
	metalG: number;
	boreDiameterMm: number;
	slugLengthMm: number;
	slugFromButtMm: number;
}

export const emptyLoad = (): Load => ({
	massG: 0,
	firstGMm: 0,
	secondGMm2: 0,
	metalG: 0,
	boreDiameterMm: 0,
	slugLengthMm: 0,
	slugFromButtMm: 0,
});

export function copyLoad(from: Load, to: Load): void {
	to.massG = from.massG;
	to.firstGMm = from.firstGMm;
	to.secondGMm2 = from.secondGMm2;
	to.metalG = from.metalG;
	to.boreDiameterMm = from.boreDiameterMm;
	to.slugLengthMm = from.slugLengthMm;
	to.slugFromButtMm = from.slugFromButtMm;
}

/** Less than this is left to the finish and the tip, as in planAddedWeight. */
export const NEGLIGIBLE_G = 0.5;

/** The cue without added metal. `secondGMm2` is about a crosswise axis at the butt end. */
export function weighTable(
	table: GeometryTable,
	{ shaft, butt }: Densities,
	out: Load,
): void {
	const sum = (of: keyof AboutButt): number =>
		table.fixed[of] + shaft * table.shaft[of] + butt * table.butt[of];
	out.massG = sum("zeroth");
	out.firstGMm = sum("first");
	out.secondGMm2 = sum("second") + sum("polar") / 2;
	out.metalG = 0;
	out.boreDiameterMm = 0;
	out.slugLengthMm = 0;
	out.slugFromButtMm = 0;
}

/** Area of a bore. */
const areaMm2 = (bore: BoreTable): number =>
	(Math.PI * bore.diameterMm * bore.diameterMm) / 4;

/**
 * Length of the slug from `fromMm` that adds `netG`, or −1 where the bore cannot hold it. With the
 * plug and the bored wood, net = A·ℓ(ρm − ρb) + (ρb − ρs)·V_s(from + ℓ): nearly straight in ℓ.
 */
export function slugLengthMm(
	bore: BoreTable,
	d: Densities,
	p: { fromMm: number; netG: number },
): number {
	const rate = areaMm2(bore) * (d.metal - d.butt);
	const lean = d.butt - d.shaft;
	const roomMm = bore.depthMm - p.fromMm;
	if (!(roomMm > 0)) return -1;
	let length = 0;
	for (let step = 0; step < 12; step++) {
		const depth = p.fromMm + length;
		const next =
			(p.netG - lean * bore.shaftMoment(0, Math.min(depth, bore.depthMm))) /
			rate;
		if (!(next > 0)) return -1;
		const change = next - length;
		length = next;
		if (change < 1e-7 && change > -1e-7) break;
		// Past the bore for good: the wood's share moves the length by a few per cent at most.
		if (length > 1.3 * roomMm) return -1;
	}
	return length <= roomMm ? length : -1;
}

/** Adds slug and plug of a bore to a weighed cue, and takes the bored wood out. */
export function addSlug(
	bore: BoreTable,
	d: Densities,
	p: { fromMm: number; lengthMm: number },
	out: Load,
): void {
	const s = p.fromMm;
	const e = s + p.lengthMm;
	const area = areaMm2(bore);
	const lean = d.butt - d.shaft;
	const v = bore.shaftMoment(0, e);
	const quarterR2 = (bore.diameterMm * bore.diameterMm) / 16;
	const net0 = d.metal * (e - s) + d.butt * (s - e);
	const added = area * net0 + lean * v;
	out.massG += added;
	out.firstGMm +=
		area * ((d.metal * (e * e - s * s)) / 2 + (d.butt * (s * s - e * e)) / 2) +
		lean * bore.shaftMoment(1, e);
	out.secondGMm2 +=
		area * (((d.metal - d.butt) * (e * e * e - s * s * s)) / 3) +
		lean * bore.shaftMoment(2, e) +
		added * quarterR2;
	out.metalG = area * d.metal * p.lengthMm;
	out.boreDiameterMm = bore.diameterMm;
	out.slugLengthMm = p.lengthMm;
	out.slugFromButtMm = s;
}

export interface RearSlug {
	readonly bore: BoreTable;
	readonly lengthMm: number;
}

/** Rearmost slug as the bench usually places it: the slimmest drill whose slug is not over-long, else the widest that holds. */
export function usualSlug(
	bores: readonly BoreTable[],
	d: Densities,
	netG: number,
): RearSlug | null {
	const fromMm = BORE.minPlugMm;
	for (const bore of bores) {
		const roughMm = netG / (areaMm2(bore) * (d.metal - d.butt));
		if (roughMm > 1.1 * BORE.preferredSlugMm) continue;
		const lengthMm = slugLengthMm(bore, d, { fromMm, netG });
		if (lengthMm >= 0 && lengthMm <= BORE.preferredSlugMm)
			return { bore, lengthMm };
	}
	for (let i = bores.length - 1; i >= 0; i--) {
		const bore = bores[i] as BoreTable;
		const lengthMm = slugLengthMm(bore, d, { fromMm, netG });
		if (lengthMm >= 0) return { bore, lengthMm };
	}
	return null;
}

/** Fills the bore that holds most; false where there is no bore. */
export function placeMost(
	bores: readonly BoreTable[],
	d: Densities,
	out: Load,
): boolean {
	let most: Load | null = null;
	for (const bore of bores) {
		const filled = { ...out };
		addSlug(
			bore,
			d,
			{
				fromMm: BORE.minPlugMm,
				lengthMm: bore.depthMm - BORE.minPlugMm,
			},
			filled,
		);
		if (most === null || filled.massG > most.massG) most = filled;
	}
	if (most === null) return false;
	copyLoad(most, out);
	return true;
}

/** Puts a rearmost slug into a weighed cue. */
export const placeRear = (slug: RearSlug, d: Densities, out: Load): void =>
	addSlug(
		slug.bore,
		d,
		{ fromMm: BORE.minPlugMm, lengthMm: slug.lengthMm },
		out,
	);

/** Moment a slug and its plug add about the butt end, less the bored wood's; g·mm. */
export const momentOf = (
	bore: BoreTable,
	d: Densities,
	p: { fromMm: number; lengthMm: number },
): number => {
	const e = p.fromMm + p.lengthMm;
	return (
		(areaMm2(bore) * (d.metal - d.butt) * (e * e - p.fromMm * p.fromMm)) / 2 +
		(d.butt - d.shaft) * bore.shaftMoment(1, e)
	);
};

/** What a rearmost slug adds to the moment about the butt end, g·mm. */
export const rearMoment = (slug: RearSlug, d: Densities): number =>
	momentOf(slug.bore, d, {
		fromMm: BORE.minPlugMm,
		lengthMm: slug.lengthMm,
	});

/** Inertia about a crosswise axis `x` mm from the butt end, kg m². */
export const inertiaAboutKgM2 = (load: Load, x: number): number =>
	(load.secondGMm2 - 2 * x * load.firstGMm + x * x * load.massG) * 1e-9;
