import { STRIDE, type SymmetricBand } from "@/lib/numerics/banded";
import { endsWith, meshInto } from "./mesh";
import type { BeamProfile } from "./profile";

/** A bending plane: the axis moves along x or along y of the section. */
export type Axis = "x" | "y";

/**
 * Euler–Bernoulli bar in cubic (Hermite) elements: two freedoms a node, deflection in metres and
 * slope, from tip to butt. SI units. Arrays may be longer than `nodes` needs.
 */
export interface Beam {
	readonly nodes: number;
	readonly stationsM: Float64Array;
	readonly mass: SymmetricBand;
	readonly stiffness: Readonly<Record<Axis, SymmetricBand>>;
	/** Mass per length and stiffness at the two samples of each element. */
	readonly samples: Readonly<Record<"mass" | Axis, Float64Array>>;
	/** Both bending planes are equally stiff everywhere. */
	readonly isSymmetric: boolean;
}

/** Reusable storage for meshes of up to `capacity` nodes. */
export interface BeamScratch {
	readonly stationsM: Float64Array;
	readonly samples: Readonly<Record<"mass" | Axis, Float64Array>>;
	readonly bands: Readonly<Record<"mass" | Axis, Float64Array>>;
}

export const beamScratch = (capacity: number): BeamScratch => ({
	stationsM: new Float64Array(capacity),
	samples: {
		mass: new Float64Array(2 * capacity),
		x: new Float64Array(2 * capacity),
		y: new Float64Array(2 * capacity),
	},
	bands: {
		mass: new Float64Array(2 * STRIDE * capacity),
		x: new Float64Array(2 * STRIDE * capacity),
		y: new Float64Array(2 * STRIDE * capacity),
	},
});

/** Gauss points of two, as fractions of an element, and the line through two samples at its ends. */
const FIRST = 0.5 - Math.sqrt(3) / 6;
const END_NEAR = (1 + Math.sqrt(3)) / 2;
const END_FAR = (1 - Math.sqrt(3)) / 2;

/**
 * Assembles a profile. Mass and stiffness run linearly through two samples an element, which keeps
 * their integrals against cubics; the element matrices of a linear bar are exact.
 */
export function beamOf(p: {
	profile: BeamProfile;
	fineness: number;
	extraMm?: readonly number[];
	scratch?: BeamScratch;
}): Beam {
	const { profile, fineness } = p;
	const scratch = p.scratch ?? beamScratch(Math.ceil(40 + 30 * fineness));
	const { stationsM, samples, bands } = scratch;
	const nodes = meshInto({
		endsMm: endsWith(profile, p.extraMm ?? []),
		fineness,
		into: stationsM,
	});
	for (let e = 0; e + 1 < nodes; e++) {
		const from = 1000 * (stationsM[e] as number);
		const h = 1000 * (stationsM[e + 1] as number) - from;
		const a = profile.sectionAt(from + FIRST * h);
		const b = profile.sectionAt(from + (1 - FIRST) * h);
		samples.mass[2 * e] = a.massPerLengthKgM;
		samples.mass[2 * e + 1] = b.massPerLengthKgM;
		samples.x[2 * e] = a.stiffnessXNm2;
		samples.x[2 * e + 1] = b.stiffnessXNm2;
		samples.y[2 * e] = a.stiffnessYNm2;
		samples.y[2 * e + 1] = b.stiffnessYNm2;
	}
	const isSymmetric = agree(samples.x, samples.y, 2 * (nodes - 1));
	const size = 2 * nodes;
	bands.mass.fill(0, 0, size * STRIDE);
	bands.x.fill(0, 0, size * STRIDE);
	if (!isSymmetric) bands.y.fill(0, 0, size * STRIDE);
	for (let e = 0; e + 1 < nodes; e++) {
		addMass(bands.mass, { e, stationsM, samples: samples.mass, sign: 1 });
		addStiffness(bands.x, { e, stationsM, samples: samples.x, sign: 1 });
		if (!isSymmetric)
			addStiffness(bands.y, { e, stationsM, samples: samples.y, sign: 1 });
	}
	const x = { size, values: bands.x };
	return {
		nodes,
		stationsM,
		samples,
		isSymmetric,
		mass: { size, values: bands.mass },
		stiffness: { x, y: isSymmetric ? x : { size, values: bands.y } },
	};
}

function agree(a: Float64Array, b: Float64Array, count: number): boolean {
	for (let i = 0; i < count; i++)
		if (Math.abs((a[i] as number) - (b[i] as number)) > 1e-9 * (a[i] as number))
			return false;
	return true;
}

/** √(EI/m′) of an element in m²/s: how fast bending spreads there. */
export function spreadM2PerS(beam: Beam, element: number): number {
	const { mass, x } = beam.samples;
	return Math.sqrt(
		((x[2 * element] as number) + (x[2 * element + 1] as number)) /
			((mass[2 * element] as number) + (mass[2 * element + 1] as number)),
	);
}

/** The bar cut off free after its first `nodes` nodes, written to `into`. */
export function cutShort(p: {
	beam: Beam;
	axis: Axis;
	nodes: number;
	into: { readonly mass: Float64Array; readonly stiffness: Float64Array };
}): { readonly mass: SymmetricBand; readonly stiffness: SymmetricBand } {
	const { beam, axis, nodes, into } = p;
	const size = 2 * nodes;
	const { stationsM, samples } = beam;
	const whole = beam.stiffness[axis].values;
	for (let i = 0; i < size * STRIDE; i++) {
		into.mass[i] = beam.mass.values[i] as number;
		into.stiffness[i] = whole[i] as number;
	}
	if (nodes < beam.nodes) {
		// What the first element beyond put on the last node is taken off again.
		const e = nodes - 1;
		addMass(into.mass, { e, stationsM, samples: samples.mass, sign: -1 });
		addStiffness(into.stiffness, {
			e,
			stationsM,
			samples: samples[axis],
			sign: -1,
		});
	}
	return {
		mass: { size, values: into.mass },
		stiffness: { size, values: into.stiffness },
	};
}

interface Element {
	/** Element number from the tip. */
	readonly e: number;
	readonly stationsM: Float64Array;
	readonly samples: Float64Array;
	readonly sign: 1 | -1;
}

/** Adds ∫ m N Nᵀ of one element. */
function addMass(values: Float64Array, p: Element): void {
	const { e, stationsM, samples } = p;
	const at = 2 * e * STRIDE;
	const h = (stationsM[e + 1] as number) - (stationsM[e] as number);
	const ma = p.sign * (samples[2 * e] as number);
	const mb = p.sign * (samples[2 * e + 1] as number);
	const m0 = END_NEAR * ma + END_FAR * mb;
	const m1 = END_FAR * ma + END_NEAR * mb;
	const u = h / 840;
	const uh = u * h;
	const uhh = uh * h;
	add(values, at, u * (240 * m0 + 72 * m1));
	add(values, at + 5, uh * (30 * m0 + 14 * m1));
	add(values, at + 4, uhh * (5 * m0 + 3 * m1));
	add(values, at + 10, u * 54 * (m0 + m1));
	add(values, at + 9, uh * (12 * m0 + 14 * m1));
	add(values, at + 8, u * (72 * m0 + 240 * m1));
	add(values, at + 15, -uh * (14 * m0 + 12 * m1));
	add(values, at + 14, -uhh * 3 * (m0 + m1));
	add(values, at + 13, -uh * (14 * m0 + 30 * m1));
	add(values, at + 12, uhh * (3 * m0 + 5 * m1));
}

/** Adds ∫ EI N″ N″ᵀ of one element. */
function addStiffness(values: Float64Array, p: Element): void {
	const { e, stationsM, samples } = p;
	const at = 2 * e * STRIDE;
	const h = (stationsM[e + 1] as number) - (stationsM[e] as number);
	const ka = p.sign * (samples[2 * e] as number);
	const kb = p.sign * (samples[2 * e + 1] as number);
	const k0 = END_NEAR * ka + END_FAR * kb;
	const k1 = END_FAR * ka + END_NEAR * kb;
	const u = 1 / h;
	const uu = u * u;
	const both = 6 * (k0 + k1) * uu * u;
	const left = (4 * k0 + 2 * k1) * uu;
	const right = (2 * k0 + 4 * k1) * uu;
	add(values, at, both);
	add(values, at + 5, left);
	add(values, at + 4, (3 * k0 + k1) * u);
	add(values, at + 10, -both);
	add(values, at + 9, -left);
	add(values, at + 8, both);
	add(values, at + 15, right);
	add(values, at + 14, (k0 + k1) * u);
	add(values, at + 13, -right);
	add(values, at + 12, (k0 + 3 * k1) * u);
}

function add(values: Float64Array, at: number, value: number): void {
	values[at] = (values[at] as number) + value;
}

/** The unit shift of the whole bar sideways: 1 for deflections, 0 for slopes. */
export function sidewaysShift(
	beam: Beam,
	into = new Float64Array(beam.mass.size),
): Float64Array {
	for (let i = 0; i < beam.mass.size; i += 2) {
		into[i] = 1;
		into[i + 1] = 0;
	}
	return into;
}
