/** A point or direction: x along the shot, y to the player's bridge side, z up. */
export interface Vec3 {
	readonly x: number;
	readonly y: number;
	readonly z: number;
}

export const vec = (x: number, y: number, z: number): Vec3 => ({ x, y, z });

export const plus = (a: Vec3, b: Vec3): Vec3 =>
	vec(a.x + b.x, a.y + b.y, a.z + b.z);

export const minus = (a: Vec3, b: Vec3): Vec3 =>
	vec(a.x - b.x, a.y - b.y, a.z - b.z);

export const times = (a: Vec3, k: number): Vec3 =>
	vec(a.x * k, a.y * k, a.z * k);

export const dot = (a: Vec3, b: Vec3): number =>
	a.x * b.x + a.y * b.y + a.z * b.z;

export const cross = (a: Vec3, b: Vec3): Vec3 =>
	vec(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);

export const norm = (a: Vec3): number => Math.sqrt(dot(a, a));

export const distance = (a: Vec3, b: Vec3): number => norm(minus(a, b));

export function unit(a: Vec3): Vec3 {
	const length = norm(a);
	if (!(length > 0)) throw new RangeError(`direction of length ${length} mm`);
	return times(a, 1 / length);
}

/** a + b·k */
export const along = (a: Vec3, b: Vec3, k: number): Vec3 =>
	plus(a, times(b, k));

const RAD = Math.PI / 180;
export const radians = (deg: number): number => deg * RAD;
export const degrees = (rad: number): number => rad / RAD;

/** Angle at `corner` between the directions to `a` and `b`, deg. */
export function angleAtDeg(corner: Vec3, a: Vec3, b: Vec3): number {
	const u = minus(a, corner);
	const v = minus(b, corner);
	return degrees(Math.atan2(norm(cross(u, v)), dot(u, v)));
}

/**
 * Middle joint of a two-link chain from `from` to `to`, bent toward `toward`: the exact triangle.
 * Null when the ends are further apart, or closer, than the links allow.
 */
export function middleJoint(p: {
	from: Vec3;
	to: Vec3;
	firstMm: number;
	secondMm: number;
	toward: Vec3;
}): Vec3 | null {
	const line = minus(p.to, p.from);
	const gap = norm(line);
	const base = (gap ** 2 + p.firstMm ** 2 - p.secondMm ** 2) / (2 * gap);
	const height2 = p.firstMm ** 2 - base ** 2;
	if (!(height2 >= 0)) return null;
	const axis = times(line, 1 / gap);
	const side = minus(p.toward, times(axis, dot(p.toward, axis)));
	return along(along(p.from, axis, base), unit(side), Math.sqrt(height2));
}
