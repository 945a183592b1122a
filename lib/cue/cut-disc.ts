/**
 * Area and polar moment of a disc between parallel planes, for the two arrangements every standard
 * splice is made of. Results are written to `out` so that integration makes no garbage. The general
 * case is in disc.ts; the tests hold the two together.
 *
 * A segment beyond a plane at distance p of a disc of radius R, with α = acos(p/R), h = √(R² − p²):
 * area R²α − ph; polar moment R⁴α/2 − p(p²h + h³/3)/2.
 */
export interface AreaPolar {
	area: number;
	polar: number;
}

export function wholeDisc(radius: number, out: AreaPolar): void {
	const r2 = radius * radius;
	out.area = Math.PI * r2;
	out.polar = (Math.PI * r2 * r2) / 2;
}

/** |x| ≤ p. */
export function stripInDisc(radius: number, p: number, out: AreaPolar): void {
	wholeDisc(radius, out);
	takeTwoSegments(radius, p, out);
}

/** |x| ≤ p and |y| ≤ q. */
export function rectangleInDisc(
	radius: number,
	p: number,
	q: number,
	out: AreaPolar,
): void {
	const corner2 = p * p + q * q;
	if (corner2 <= radius * radius) {
		out.area = 4 * p * q;
		out.polar = (out.area * corner2) / 3;
		return;
	}
	wholeDisc(radius, out);
	takeTwoSegments(radius, p, out);
	takeTwoSegments(radius, q, out);
}

function takeTwoSegments(radius: number, p: number, out: AreaPolar): void {
	if (p >= radius) return;
	const r2 = radius * radius;
	const alpha = Math.acos(p / radius);
	const h = Math.sqrt(r2 - p * p);
	out.area -= 2 * (r2 * alpha - p * h);
	out.polar -= r2 * r2 * alpha - p * h * (p * p + (h * h) / 3);
}
