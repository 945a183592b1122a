import type { CueDesign } from "@/lib/cue/design";
import {
	cylinderIntegrals,
	integrate,
	type PartIntegrals,
	sumParts,
	woodInCylinder,
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
}

export function jobFor(design: CueDesign, metal: MetalId): Job {
	const naturalParts = integrate(design);
	return {
		design,
		naturalParts,
		natural: massFrom(design, naturalParts),
		metal,
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
		drilled: woodInCylinder(design, {
			fromMm: frontMm,
			toMm: design.lengthMm,
			radiusMm,
		}),
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
		drilled: woodInCylinder(job.design, reach),
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
	const longestMm = p.depthMm - slugFromButtMm;
	if (longestMm <= 0) return null;
	const result = rootBetween({
		f: (lengthMm) => endNetG(job, slug(lengthMm)) - p.wantedNetG,
		from: 0,
		to: longestMm,
		tolerance: 1e-9,
	});
	return result.converged ? slug(result.root) : null;
}

/** As `endSlugFor`, for the slug behind the joint. */
export function jointSlugFor(
	job: Job,
	p: {
		bore: { fromStationMm: number; diameterMm: number; maxLengthMm: number };
		wantedNetG: number;
	},
): JointSlug | null {
	const slug = (slugLengthMm: number): JointSlug => ({
		fromStationMm: p.bore.fromStationMm,
		diameterMm: p.bore.diameterMm,
		slugLengthMm,
	});
	const result = rootBetween({
		f: (lengthMm) => jointNetG(job, slug(lengthMm)) - p.wantedNetG,
		from: 0,
		to: p.bore.maxLengthMm,
		tolerance: 1e-9,
	});
	return result.converged ? slug(result.root) : null;
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
