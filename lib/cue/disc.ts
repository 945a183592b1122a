/**
 * Exact integrals over a disc cut by half-planes. Each half-plane keeps n·(x, y) ≤ offset with n at
 * an angle from the x axis. By Green's theorem in polar form,
 *   area ½∮r²dφ, polar moment ¼∮r⁴dφ, ∬(x+iy)dA = ⅓∮r³e^{iφ}dφ, ∬(x+iy)²dA = ¼∮r⁴e^{2iφ}dφ,
 * and r²dφ = offset·dt along a boundary line with t measured from its foot, so each line piece and
 * each arc has a closed form.
 */
export interface HalfPlane {
	readonly angleRad: number;
	readonly offset: number;
}

/** Lengths in the unit of the radius. */
export interface DiscMoments {
	readonly area: number;
	/** ∬ r² dA */
	readonly polar: number;
	/** ∬ x dA, ∬ y dA */
	readonly firstX: number;
	readonly firstY: number;
	/** ∬ x² − y² dA and ∬ 2xy dA */
	readonly difference: number;
	readonly product: number;
}

const TURN = 2 * Math.PI;
const NOTHING: DiscMoments = {
	area: 0,
	polar: 0,
	firstX: 0,
	firstY: 0,
	difference: 0,
	product: 0,
};

/** Moments of the disc of `radius` within all half-planes. */
export function discWithin(
	radius: number,
	planes: readonly HalfPlane[],
): DiscMoments {
	if (!(radius > 0)) return NOTHING;
	const active = planes.filter((plane) => plane.offset < radius);
	if (active.some((plane) => plane.offset <= -radius)) return NOTHING;
	const sums = {
		area: 0,
		polar: 0,
		firstX: 0,
		firstY: 0,
		difference: 0,
		product: 0,
	};
	for (const plane of active) addLine(sums, radius, plane, active);
	for (const [from, to] of keptArcs(radius, active))
		addArc(sums, { radius, from, to });
	return sums;
}

type Sums = { -readonly [K in keyof DiscMoments]: number };

function addLine(
	sums: Sums,
	radius: number,
	plane: HalfPlane,
	planes: readonly HalfPlane[],
): void {
	const p = plane.offset;
	let high = Math.sqrt(radius * radius - p * p);
	let low = -high;
	for (const other of planes) {
		if (other === plane) continue;
		const turn = plane.angleRad - other.angleRad;
		// On the line, n'·(x, y) = p cos(turn) − t sin(turn) must not pass the other's offset.
		const room = other.offset - p * Math.cos(turn);
		const lean = -Math.sin(turn);
		if (Math.abs(lean) < 1e-12) {
			const same = Math.cos(turn) > 0;
			const first = planes.indexOf(other) < planes.indexOf(plane);
			if (room < 0 || (room === 0 && same && first)) return;
		} else if (lean > 0) high = Math.min(high, room / lean);
		else low = Math.max(low, room / lean);
		if (high <= low) return;
	}
	const one = high - low;
	const two = (high * high - low * low) / 2;
	const three = (high ** 3 - low ** 3) / 3;
	const c = Math.cos(plane.angleRad);
	const s = Math.sin(plane.angleRad);
	sums.area += (p * one) / 2;
	sums.polar += (p * (p * p * one + three)) / 4;
	sums.firstX += (p * (p * one * c - two * s)) / 3;
	sums.firstY += (p * (p * one * s + two * c)) / 3;
	const real = p * (p * p * one - three);
	const imaginary = 2 * p * p * two;
	const c2 = c * c - s * s;
	const s2 = 2 * s * c;
	sums.difference += (real * c2 - imaginary * s2) / 4;
	sums.product += (real * s2 + imaginary * c2) / 4;
}

function addArc(
	sums: Sums,
	arc: { radius: number; from: number; to: number },
): void {
	const { radius, from, to } = arc;
	const r2 = radius * radius;
	sums.area += (r2 * (to - from)) / 2;
	sums.polar += (r2 * r2 * (to - from)) / 4;
	sums.firstX += (r2 * radius * (Math.sin(to) - Math.sin(from))) / 3;
	sums.firstY += (r2 * radius * (Math.cos(from) - Math.cos(to))) / 3;
	sums.difference += (r2 * r2 * (Math.sin(2 * to) - Math.sin(2 * from))) / 8;
	sums.product += (r2 * r2 * (Math.cos(2 * from) - Math.cos(2 * to))) / 8;
}

/** Arcs of the circle inside every half-plane, as [from, to] within one turn from 0. */
function keptArcs(
	radius: number,
	planes: readonly HalfPlane[],
): readonly (readonly [number, number])[] {
	if (planes.length === 0) return [[0, TURN]];
	const removed: (readonly [number, number])[] = [];
	for (const plane of planes) {
		const half = Math.acos(plane.offset / radius);
		const from = plane.angleRad - half;
		const start = from - Math.floor(from / TURN) * TURN;
		removed.push([start, start + 2 * half]);
		if (start + 2 * half > TURN) removed.push([0, start + 2 * half - TURN]);
	}
	removed.sort((a, b) => a[0] - b[0]);
	const kept: (readonly [number, number])[] = [];
	let reached = 0;
	for (const [from, to] of removed) {
		if (from > reached) kept.push([reached, Math.min(from, TURN)]);
		reached = Math.max(reached, to);
	}
	if (reached < TURN) kept.push([reached, TURN]);
	return kept;
}
