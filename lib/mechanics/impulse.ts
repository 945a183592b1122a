import {
	dot,
	multiply,
	STRIDE,
	type SymmetricBand,
	withoutFirst,
} from "@/lib/numerics/banded";
import {
	type MotionScratch,
	motionScratch,
	velocityFromRest,
} from "@/lib/numerics/ode";
import { type Axis, type Beam, cutShort, spreadM2PerS } from "./beam";

/**
 * What drives the tip sideways during contact. "following-ball": friction keeps the tip on the ball's
 * turning surface, whose speed rises with the impulse of a half-sine forward force, so the tip moves
 * as 1 − cos(πt/τ). "half-sine-force": the sideways force is itself a half sine. A real tip lets go
 * when the forward force fades, so it lies between.
 */
export type Drive = "following-ball" | "half-sine-force";

/** Steps over the contact: 16 keep the end mass within 0.4 % of the exact transient on the same mesh. */
const STEPS = 16;
/**
 * Bending spreads by about √(τ√(EI/m′)) during the contact. What lies beyond this many such lengths
 * changes the stepped end mass by less than 0.05 % and is left out of the transient; finer steps let
 * faster waves through and want more.
 */
const REACHES = 5;

/** Reusable storage for `endMassOfBeamG`, for up to `capacity` nodes. */
export interface ImpulseScratch {
	readonly mass: Float64Array;
	readonly stiffness: Float64Array;
	readonly motion: MotionScratch;
	readonly shift: Float64Array;
	readonly momentum: Float64Array;
}

export const impulseScratch = (capacity: number): ImpulseScratch => ({
	// One node more: the element that is taken off reaches there.
	mass: new Float64Array(2 * STRIDE * (capacity + 1)),
	stiffness: new Float64Array(2 * STRIDE * (capacity + 1)),
	motion: motionScratch(2 * capacity),
	shift: new Float64Array(2 * capacity),
	momentum: new Float64Array(2 * capacity),
});

/** Half-sine pulse at the steps, and its trapezoidal sum: the stepping's own integral, in steps. */
interface Pulse {
	readonly amplitudes: Float64Array;
	readonly sum: number;
}

const pulses = new Map<number, Pulse>();

function pulseOf(steps: number): Pulse {
	const known = pulses.get(steps);
	if (known) return known;
	const amplitudes = Float64Array.from({ length: steps + 1 }, (_, i) =>
		i === 0 || i === steps ? 0 : Math.sin((Math.PI * i) / steps),
	);
	const pulse = { amplitudes, sum: 1 / Math.tan(Math.PI / (2 * steps)) };
	pulses.set(steps, pulse);
	return pulse;
}

/**
 * Effective end mass in grams: sideways impulse on the tip over the tip's sideways speed when contact
 * ends, from the transient of the free cue. The tip's own leather and the ferrule are in the beam.
 * Throws unless contactTimeMs is positive.
 */
export function endMassOfBeamG(p: {
	beam: Beam;
	axis: Axis;
	contactTimeMs: number;
	drive?: Drive;
	steps?: number;
	reaches?: number;
	scratch?: ImpulseScratch;
}): number {
	const { beam, axis, contactTimeMs } = p;
	if (!(Number.isFinite(contactTimeMs) && contactTimeMs > 0))
		throw new RangeError(
			`contactTimeMs must be positive, got ${contactTimeMs} ms`,
		);
	const steps = p.steps ?? STEPS;
	const durationS = contactTimeMs / 1000;
	const nodes = nodesWithin(beam, durationS, p.reaches ?? REACHES);
	const scratch = p.scratch ?? impulseScratch(beam.nodes);
	const { mass, stiffness } = cutShort({
		beam,
		axis,
		nodes,
		into: scratch,
	});
	const transient: Transient = {
		mass,
		stiffness,
		pulse: pulseOf(steps),
		stepS: durationS / steps,
		scratch,
	};
	return p.drive === "half-sine-force"
		? pushed(transient)
		: following(transient);
}

function nodesWithin(beam: Beam, durationS: number, reaches: number): number {
	let travelled = 0;
	for (let e = 0; e + 1 < beam.nodes; e++) {
		const lengthM =
			(beam.stationsM[e + 1] as number) - (beam.stationsM[e] as number);
		travelled += lengthM / Math.sqrt(durationS * spreadM2PerS(beam, e));
		if (travelled >= reaches) return e + 2;
	}
	return beam.nodes;
}

interface Transient {
	readonly mass: SymmetricBand;
	readonly stiffness: SymmetricBand;
	readonly pulse: Pulse;
	readonly stepS: number;
	readonly scratch: ImpulseScratch;
}

/**
 * The tip's acceleration is the pulse. With u = r·w_tip + q, r the rigid shift and q zero at the tip,
 * M q̈ + K q = −M r ẅ_tip, and the impulse is the momentum gained: rᵀM r·v + rᵀM q̇.
 */
function following({
	mass,
	stiffness,
	pulse,
	stepS,
	scratch,
}: Transient): number {
	const { shift, momentum, motion } = scratch;
	for (let i = 0; i < mass.size; i += 2) {
		shift[i] = 1;
		shift[i + 1] = 0;
	}
	multiply(mass, shift, momentum);
	const rigidKg = dot(shift, momentum, mass.size);
	const shape = momentum.subarray(1);
	const velocity = velocityFromRest({
		mass: withoutFirst(mass),
		stiffness: withoutFirst(stiffness),
		shape,
		amplitudes: pulse.amplitudes,
		stepS,
		scratch: motion,
	});
	// The pull was given the opposite sign, so the relative momentum is taken off.
	const relative = dot(shape, velocity, mass.size - 1) / (pulse.sum * stepS);
	return 1000 * (rigidKg - relative);
}

function pushed({ mass, stiffness, pulse, stepS, scratch }: Transient): number {
	const { shift, motion } = scratch;
	shift.fill(0, 0, mass.size);
	shift[0] = 1;
	const velocity = velocityFromRest({
		mass,
		stiffness,
		shape: shift,
		amplitudes: pulse.amplitudes,
		stepS,
		scratch: motion,
	});
	return (1000 * pulse.sum * stepS) / (velocity[0] as number);
}
