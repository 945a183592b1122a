import { BORE } from "@/lib/build/bore";
import type { BoreTable } from "./bore-table";
import type { GeometryTable } from "./geometry-table";
import {
	addSlug,
	type Densities,
	type Load,
	momentOf,
	NEGLIGIBLE_G,
	placeRear,
	rearMoment,
	slugLengthMm,
	usualSlug,
} from "./loading";

/** How far one drill lets a slug of some weight slide, and the moments at both ends. */
interface Slide {
	readonly bore: BoreTable;
	readonly lowMm: number;
	readonly highMm: number;
	readonly lowMoment: number;
	readonly highMoment: number;
}

/**
 * Of a bore's room. planAddedWeight goes to 0.99, in reserve for softer wood further in; a hair less here,
 * so that whatever is found at the end of a slide is within its reach too.
 */
const FURTHEST_SHARE = 0.9895;

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
		const highMm = lowMm + FURTHEST_SHARE * (bore.depthMm - rear - lowMm);
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
