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
function slugLengthMm(
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
function addSlug(
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
const momentOf = (
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

/** How far one drill lets a slug of some weight slide, and the moments at both ends. */
interface Slide {
	readonly bore: BoreTable;
	readonly lowMm: number;
	readonly highMm: number;
	readonly lowMoment: number;
	readonly highMoment: number;
}

/** The slides of every drill that holds the weight, slimmest first, the order planAddedWeight tries them in. */
export function slidesOf(
	bores: readonly BoreTable[],
	d: Densities,
	netG: number,
): readonly Slide[] {
	const slides: Slide[] = [];
	for (const bore of bores) {
		const lowMm = BORE.minPlugMm;
		const rear = slugLengthMm(bore, d, { fromMm: lowMm, netG });
		if (rear < 0) continue;
		// The same reserve as planAddedWeight keeps for softer wood further in.
		const highMm = lowMm + 0.99 * (bore.depthMm - rear - lowMm);
		const front = slugLengthMm(bore, d, { fromMm: highMm, netG });
		if (front < 0) continue;
		slides.push({
			bore,
			lowMm,
			highMm,
			lowMoment: momentOf(bore, d, { fromMm: lowMm, lengthMm: rear }),
			highMoment: momentOf(bore, d, { fromMm: highMm, lengthMm: front }),
		});
	}
	return slides;
}

/** Puts a slug that adds `netG` with the wanted moment into a weighed cue; false where no slide reaches it. */
export function placeForMoment(
	slides: readonly Slide[],
	d: Densities,
	wanted: { netG: number; moment: number },
	out: Load,
): boolean {
	const { netG, moment } = wanted;
	for (const slide of slides) {
		let low = slide.lowMm;
		let high = slide.highMm;
		let lowGap = slide.lowMoment - moment;
		let highGap = slide.highMoment - moment;
		if (lowGap > 0 || highGap < 0) continue;
		const { bore } = slide;
		let fromMm = low;
		let lengthMm = slugLengthMm(bore, d, { fromMm, netG });
		// The moment grows almost straight with the place: false position closes in a few steps.
		for (let step = 0; step < 40 && high - low > 1e-6; step++) {
			fromMm = low + ((high - low) * -lowGap) / (highGap - lowGap);
			lengthMm = slugLengthMm(bore, d, { fromMm, netG });
			if (lengthMm < 0) return false;
			const gap = momentOf(bore, d, { fromMm, lengthMm }) - moment;
			if (gap < 1e-6 * moment && gap > -1e-6 * moment) break;
			if (gap < 0) {
				low = fromMm;
				lowGap = gap;
				highGap /= 2;
			} else {
				high = fromMm;
				highGap = gap;
				lowGap /= 2;
			}
		}
		addSlug(bore, d, { fromMm, lengthMm }, out);
		return true;
	}
	return false;
}

/** What a rearmost slug adds to the moment about the butt end, g·mm. */
export const rearMoment = (slug: RearSlug, d: Densities): number =>
	momentOf(slug.bore, d, {
		fromMm: BORE.minPlugMm,
		lengthMm: slug.lengthMm,
	});

/**
 * Brings a weighed cue to a weight by a slug from the butt end, then its balance forward by
 * `forwardMm` from where the usual slug would have it. `out` holds the natural cue and becomes the
 * loaded one; false, with `out` untouched, where no single bore gives it. The same choice of drill as
 * planAddedWeight makes: slimmest first.
 */
export function loadTable(
	table: GeometryTable,
	d: Densities,
	wish: { massG: number; forwardMm: number },
	out: Load,
): boolean {
	const netG = wish.massG - out.massG;
	if (netG < NEGLIGIBLE_G) return false;
	const usual = usualSlug(table.bores, d, netG);
	if (!usual) return false;
	if (wish.forwardMm <= 0) {
		placeRear(usual, d, out);
		return true;
	}
	const moment = rearMoment(usual, d) + wish.forwardMm * wish.massG;
	return placeForMoment(
		slidesOf(table.bores, d, netG),
		d,
		{ netG, moment },
		out,
	);
}

/** Inertia about a crosswise axis `x` mm from the butt end, kg m². */
export const inertiaAboutKgM2 = (load: Load, x: number): number =>
	(load.secondGMm2 - 2 * x * load.firstGMm + x * x * load.massG) * 1e-9;
