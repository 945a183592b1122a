import type { Sex } from "@/lib/reference/body-adult";
import { type LmsRow, STATURE_FOR_AGE } from "@/lib/reference/growth";

/** Box-Cox power, median (mm) and coefficient of variation of stature at an exact age. */
export interface Lms {
	readonly l: number;
	readonly medianMm: number;
	readonly s: number;
}

export const LMS_AGES_MONTHS = { min: 24, max: 240 } as const;

/** L, M and S interpolated linearly between the table's rows. Throws outside 24–240 months. */
export function lmsAt(sex: Sex, ageMonths: number): Lms {
	const rows = STATURE_FOR_AGE[sex];
	if (!(ageMonths >= LMS_AGES_MONTHS.min && ageMonths <= LMS_AGES_MONTHS.max))
		throw new RangeError(`ageMonths ${ageMonths} outside 24–240 months`);
	let low = 0;
	let high = rows.length - 1;
	while (high - low > 1) {
		const middle = (low + high) >> 1;
		if ((rows[middle] as LmsRow)[0] <= ageMonths) low = middle;
		else high = middle;
	}
	const a = rows[low] as LmsRow;
	const b = rows[high] as LmsRow;
	const t = (ageMonths - a[0]) / (b[0] - a[0]);
	const mix = (i: 1 | 2 | 3) => a[i] + t * (b[i] - a[i]);
	return { l: mix(1), medianMm: 10 * mix(2), s: mix(3) };
}

/** Normal score of a stature: Z = ((X/M)^L − 1)/(L·S), or ln(X/M)/S at L = 0. */
export function zScore({ l, medianMm, s }: Lms, statureMm: number): number {
	const x = statureMm / medianMm;
	return l === 0 ? Math.log(x) / s : (x ** l - 1) / (l * s);
}

/** Stature at a normal score: X = M(1 + LSZ)^(1/L), mm; NaN never: throws where the power has no real value. */
export function statureAtZ({ l, medianMm, s }: Lms, z: number): number {
	if (l === 0) return medianMm * Math.exp(s * z);
	const base = 1 + l * s * z;
	if (base <= 0)
		throw new RangeError(`normal score ${z} outside the table's distribution`);
	return medianMm * base ** (1 / l);
}

/** Standard normal distribution, |error| < 1e-14: Taylor series about 0, continued fraction past 3. */
export function normalCdf(z: number): number {
	const x = Math.abs(z);
	const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
	let upper: number;
	if (x < 3) {
		// Φ(x) − ½ = φ(x)·(x + x³/3 + x⁵/(3·5) + …)
		let term = x;
		let sum = x;
		for (let k = 3; Math.abs(term) > 1e-17 * sum && k < 400; k += 2) {
			term *= (x * x) / k;
			sum += term;
		}
		upper = 0.5 - density * sum;
	} else {
		// 1 − Φ(x) = φ(x)/(x + 1/(x + 2/(x + 3/(x + …))))
		let tail = x;
		for (let k = 120; k >= 1; k--) tail = x + k / tail;
		upper = density / tail;
	}
	return z >= 0 ? 1 - upper : upper;
}
