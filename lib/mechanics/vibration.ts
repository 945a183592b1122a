import { multiply } from "@/lib/numerics/banded";
import {
	type EigenScratch,
	eigenScratch,
	lowestAbove,
	lowestPairs,
} from "@/lib/numerics/eigen";
import { type Axis, type Beam, beamOf } from "./beam";
import type { BeamProfile } from "./profile";
import { cutOff, type Hold, heldFreedoms, nodeAt } from "./support";

const TURN = 2 * Math.PI;

/** A way of bending: its frequency, and the stations (mm from the tip) that stay still. */
export interface BendingMode {
	readonly frequencyHz: number;
	readonly nodesMm: readonly number[];
}

/** Reusable storage for `firstFreeFrequencyHz`, for up to `capacity` nodes. */
export interface VibrationScratch {
	readonly eigen: EigenScratch;
	readonly shape: Float64Array;
	readonly momentum: Float64Array;
}

export const vibrationScratch = (capacity: number): VibrationScratch => ({
	eigen: eigenScratch(2 * capacity),
	shape: new Float64Array(2 * capacity),
	momentum: new Float64Array(2 * capacity),
});

/**
 * First bending frequency in hertz of the cue hanging free. Beam theory without shear and rotary
 * inertia, which would lower it by less than 0.1 % at full length (tests/mechanics/shear.test.ts). Throws when the
 * iteration does not settle, which a positive mass and stiffness rule out.
 */
export function firstFreeFrequencyHz(
	beam: Beam,
	axis: Axis,
	scratch: VibrationScratch = vibrationScratch(beam.nodes),
): number {
	const result = lowestAbove({
		stiffness: beam.stiffness[axis],
		mass: beam.mass,
		start: bowl(beam, scratch),
		tolerance: 1e-3,
		scratch: scratch.eigen,
	});
	if (!result.converged)
		throw new Error(
			`first free frequency did not settle: residual ${result.residual}`,
		);
	return Math.sqrt(result.value) / TURN;
}

/**
 * The simplest shape that bends, z², less the shift and the turn it holds: M-orthogonal to 1 and z.
 */
function bowl(beam: Beam, scratch: VibrationScratch): Float64Array {
	const { shape, momentum } = scratch;
	setPowers(beam, shape, { one: 1, z: 0, square: 0 });
	multiply(beam.mass, shape, momentum);
	const m00 = against(beam, momentum, { one: 1, z: 0, square: 0 });
	const m01 = against(beam, momentum, { one: 0, z: 1, square: 0 });
	const m02 = against(beam, momentum, { one: 0, z: 0, square: 1 });
	setPowers(beam, shape, { one: 0, z: 1, square: 0 });
	multiply(beam.mass, shape, momentum);
	const m11 = against(beam, momentum, { one: 0, z: 1, square: 0 });
	const m12 = against(beam, momentum, { one: 0, z: 0, square: 1 });
	const balanceM = m01 / m00;
	const tilt = (m12 - balanceM * m02) / (m11 - balanceM * m01);
	setPowers(beam, shape, {
		one: tilt * balanceM - m02 / m00,
		z: -tilt,
		square: 1,
	});
	return shape;
}

/** A shape one + z·(distance from the tip in metres) + square·(its square). */
interface Powers {
	readonly one: number;
	readonly z: number;
	readonly square: number;
}

function setPowers(beam: Beam, shape: Float64Array, p: Powers): void {
	for (let n = 0; n < beam.nodes; n++) {
		const at = beam.stationsM[n] as number;
		shape[2 * n] = p.one + at * (p.z + at * p.square);
		shape[2 * n + 1] = p.z + 2 * at * p.square;
	}
}

function against(beam: Beam, momentum: Float64Array, p: Powers): number {
	let sum = 0;
	for (let n = 0; n < beam.nodes; n++) {
		const at = beam.stationsM[n] as number;
		sum +=
			(momentum[2 * n] as number) * (p.one + at * (p.z + at * p.square)) +
			(momentum[2 * n + 1] as number) * (p.z + 2 * at * p.square);
	}
	return sum;
}

/** The first `count` ways of bending of the free cue, lowest first. */
export function freeModes(p: {
	profile: BeamProfile;
	axis: Axis;
	count: number;
	fineness?: number;
}): readonly BendingMode[] {
	const beam = beamOf({ profile: p.profile, fineness: p.fineness ?? 4 });
	return modesOf({ ...p, beam, freedoms: [], rigid: 2 });
}

/** The first `count` ways of bending of the cue held in one hand; see `Hold` for what a hand is taken to be. */
export function heldModes(p: {
	profile: BeamProfile;
	axis: Axis;
	count: number;
	gripStationMm: number;
	hold: Hold;
	fineness?: number;
}): readonly BendingMode[] {
	const beam = beamOf({
		profile: p.profile,
		fineness: p.fineness ?? 4,
		extraMm: [p.gripStationMm],
	});
	return modesOf({
		...p,
		beam,
		freedoms: heldFreedoms(nodeAt(beam, p.gripStationMm), p.hold),
		rigid: p.hold === "pinned" ? 1 : 0,
	});
}

function modesOf(p: {
	beam: Beam;
	axis: Axis;
	count: number;
	freedoms: readonly number[];
	/** Ways to move without bending. */
	rigid: number;
}): readonly BendingMode[] {
	const { beam, axis, count, freedoms, rigid } = p;
	const scale = (TURN * firstFreeFrequencyHz(beam, axis)) ** 2;
	const cut = freedoms.length > 0;
	// A freedom held still is given a frequency far above those sought.
	const mass = cut ? cutOff(beam.mass, freedoms, 1) : beam.mass;
	const stiffness = cut
		? cutOff(beam.stiffness[axis], freedoms, 1e8 * scale)
		: beam.stiffness[axis];
	const result = lowestPairs({
		stiffness,
		mass,
		count: count + rigid,
		shift: scale / 4,
	});
	if (!result.converged)
		throw new Error(`modes did not settle: residual ${result.residual}`);
	return result.pairs.slice(rigid).map(({ value, vector }) => ({
		frequencyHz: Math.sqrt(value) / TURN,
		nodesMm: crossingsMm(beam, vector),
	}));
}

/** Stations at which a shape passes through zero, on its own cubics. */
function crossingsMm(beam: Beam, shape: Float64Array): readonly number[] {
	const found: number[] = [];
	for (let e = 0; e + 1 < beam.nodes; e++) {
		const [w0, s0, w1, s1] = shape.subarray(2 * e, 2 * e + 4) as unknown as [
			number,
			number,
			number,
			number,
		];
		if (w0 * w1 > 0 || w0 === 0) continue;
		const from = beam.stationsM[e] as number;
		const h = (beam.stationsM[e + 1] as number) - from;
		const at = (s: number): number =>
			w0 * (1 - 3 * s * s + 2 * s ** 3) +
			h * s0 * (s - 2 * s * s + s ** 3) +
			w1 * (3 * s * s - 2 * s ** 3) +
			h * s1 * (s ** 3 - s * s);
		let low = 0;
		let high = 1;
		for (let step = 0; step < 50; step++) {
			const middle = (low + high) / 2;
			if (at(middle) * w0 > 0) low = middle;
			else high = middle;
		}
		found.push(1000 * (from + (h * (low + high)) / 2));
	}
	return found;
}
