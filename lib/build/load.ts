import type { CueDesign } from "@/lib/cue/design";
import {
	cylinderIntegrals,
	cylinderProbe,
	integrate,
	type PartIntegrals,
	sumParts,
} from "@/lib/cue/integrals";
import { type CueMass, massFrom } from "@/lib/cue/mass";
import { densityKgM3 } from "@/lib/cue/materials";
import { rootBetween } from "@/lib/numerics/roots";
import type { MetalId } from "@/lib/reference/metals";
import { BORE, type EndSlug, type JointSlug, type Placement } from "./bore";

/** A cue to be brought to a weight with one metal. */
export interface Job {
	readonly design: CueDesign;
	readonly naturalParts: readonly PartIntegrals[];
	readonly natural: CueMass;
	readonly metal: MetalId;
	/** Wood inside bores already looked at, by diameter. */
	readonly probes: Map<number, Probe>;
}

type Probe = (fromMm: number, toMm: number) => readonly PartIntegrals[];

/** The wood a bore of this diameter takes out between two stations of the butt. */
function probe(job: Job, diameterMm: number): Probe {
	const known = job.probes.get(diameterMm);
	if (known) return known;
	const made = cylinderProbe(job.design, {
		fromMm: 0,
		toMm: job.design.lengthMm,
		radiusMm: diameterMm / 2,
	});
	job.probes.set(diameterMm, made);
	return made;
}

export function jobFor(design: CueDesign, metal: MetalId): Job {
	const naturalParts = integrate(design);
	return {
		design,
		naturalParts,
		natural: massFrom(design, naturalParts),
		metal,
		probes: new Map(),
	};
}

interface Change {
	readonly metal: readonly PartIntegrals[];
	readonly plug: readonly PartIntegrals[];
	readonly drilled: readonly PartIntegrals[];
}

const NO_CHANGE: Change = { metal: [], plug: [], drilled: [] };

function endChange(job: Job, end: EndSlug): Change {
	const { design } = job;
	const radiusMm = end.diameterMm / 2;
	const rearMm = design.lengthMm - end.slugFromButtMm;
	const frontMm = rearMm - end.slugLengthMm;
	return {
		metal: [
			cylinderIntegrals({
				part: "added weight",
				material: job.metal,
				fromMm: frontMm,
				toMm: rearMm,
				radiusMm,
			}),
		],
		plug: [
			cylinderIntegrals({
				part: "plug",
				material: design.buttWood,
				fromMm: rearMm,
				toMm: design.lengthMm,
				radiusMm,
			}),
		],
		drilled: probe(job, end.diameterMm)(frontMm, design.lengthMm),
	};
}

function jointChange(job: Job, slug: JointSlug): Change {
	const radiusMm = slug.diameterMm / 2;
	const reach = {
		fromMm: slug.fromStationMm,
		toMm: slug.fromStationMm + slug.slugLengthMm,
		radiusMm,
	};
	return {
		metal: [
			cylinderIntegrals({
				part: "added weight",
				material: job.metal,
				...reach,
			}),
		],
		plug: [],
		drilled: probe(job, slug.diameterMm)(reach.fromMm, reach.toMm),
	};
}

const gramsOf = (job: Job, parts: readonly PartIntegrals[]): number =>
	parts.reduce(
		(sum, part) =>
			sum +
			part.volumeMm3 * 1e-6 * densityKgM3(job.design, part.material).value,
		0,
	);

const netG = (job: Job, change: Change): number =>
	gramsOf(job, change.metal) +
	gramsOf(job, change.plug) -
	gramsOf(job, change.drilled);

export const endNetG = (job: Job, end: EndSlug): number =>
	netG(job, endChange(job, end));

export const jointNetG = (job: Job, slug: JointSlug): number =>
	netG(job, jointChange(job, slug));

/** The slug's length that adds `wantedNetG`, or null where the bore cannot hold it. */
export function endSlugFor(
	job: Job,
	p: {
		diameterMm: number;
		depthMm: number;
		slugFromButtMm: number;
		wantedNetG: number;
	},
): EndSlug | null {
	const { diameterMm, slugFromButtMm } = p;
	const slug = (slugLengthMm: number): EndSlug => ({
		diameterMm,
		slugLengthMm,
		slugFromButtMm,
	});
	const lengthMm = lengthFor(job, {
		diameterMm,
		longestMm: p.depthMm - slugFromButtMm,
		excessG: (length) => endNetG(job, slug(length)) - p.wantedNetG,
	});
	return lengthMm === null ? null : slug(lengthMm);
}

/** As `endSlugFor`, for the slug behind the joint. */
export function jointSlugFor(
	job: Job,
	p: {
		bore: { fromStationMm: number; diameterMm: number; maxLengthMm: number };
		wantedNetG: number;
	},
): JointSlug | null {
	const { fromStationMm, diameterMm, maxLengthMm } = p.bore;
	const slug = (slugLengthMm: number): JointSlug => ({
		fromStationMm,
		diameterMm,
		slugLengthMm,
	});
	const lengthMm = lengthFor(job, {
		diameterMm,
		longestMm: maxLengthMm,
		excessG: (length) => jointNetG(job, slug(length)) - p.wantedNetG,
	});
	return lengthMm === null ? null : slug(lengthMm);
}

/** Net grams a millimetre of slug adds, taking all wood for butt wood: right to a few per cent. */
export function gramsPerMm(job: Job, diameterMm: number): number {
	const { design } = job;
	const netKgM3 =
		densityKgM3(design, job.metal).value -
		densityKgM3(design, design.buttWood).value;
	return ((Math.PI * diameterMm * diameterMm) / 4) * netKgM3 * 1e-6;
}

/** Where the nearly straight excess over the length is nil: secant steps, bracketed search if they stray. */
function lengthFor(
	job: Job,
	p: {
		diameterMm: number;
		longestMm: number;
		excessG: (lengthMm: number) => number;
	},
): number | null {
	const { longestMm, excessG } = p;
	if (!(longestMm > 0)) return null;
	let rate = gramsPerMm(job, p.diameterMm);
	let lengthMm = 0;
	let excess = excessG(0);
	for (let step = 0; step < 8; step++) {
		const next = lengthMm - excess / rate;
		if (!(next >= 0 && next <= longestMm)) break;
		const nextExcess = excessG(next);
		if (Math.abs(nextExcess) < 1e-10) return next;
		if (next !== lengthMm) rate = (nextExcess - excess) / (next - lengthMm);
		lengthMm = next;
		excess = nextExcess;
	}
	const result = rootBetween({
		f: excessG,
		from: 0,
		to: longestMm,
		tolerance: 1e-9,
	});
	return result.converged ? result.root : null;
}

export interface Loaded {
	readonly placement: Placement;
	readonly mass: CueMass;
	readonly metalMassG: number;
	readonly plugMassG: number;
	readonly drilledOutMassG: number;
}

/** The cue with a placement in it, without integrating the whole cue again. */
export function load(job: Job, placement: Placement): Loaded {
	const changes = [
		placement.end ? endChange(job, placement.end) : NO_CHANGE,
		placement.joint ? jointChange(job, placement.joint) : NO_CHANGE,
	];
	const metal = changes.flatMap((change) => change.metal);
	const plug = changes.flatMap((change) => change.plug);
	const drilled = changes.flatMap((change) => change.drilled);
	return {
		placement,
		mass: massFrom(
			job.design,
			sumParts([
				{ parts: job.naturalParts, factor: 1 },
				{ parts: drilled, factor: -1 },
				{ parts: metal, factor: 1 },
				{ parts: plug, factor: 1 },
			]),
		),
		metalMassG: gramsOf(job, metal),
		plugMassG: gramsOf(job, plug),
		drilledOutMassG: gramsOf(job, drilled),
	};
}

/** Whether two bores keep wood between them. */
export function boresClear(job: Job, placement: Placement): boolean {
	const { end, joint } = placement;
	if (!end || !joint) return true;
	const endFrontMm =
		job.design.lengthMm - end.slugFromButtMm - end.slugLengthMm;
	return (
		joint.fromStationMm + joint.slugLengthMm + BORE.clearanceMm <= endFrontMm
	);
}
