/** A function of one variable on a closed interval, with its first derivative. */
export interface Curve {
	readonly from: number;
	readonly to: number;
	readonly knots: readonly number[];
	at(x: number): number;
	slopeAt(x: number): number;
}

/**
 * Slopes at the knots that keep every piece monotone where the data are.
 * Fritsch & Carlson, SIAM J. Numer. Anal. 17 (1980) 238 (from memory): start from the three-point
 * parabola's slopes, then pull (m_i, m_{i+1})/secant back into the circle of radius 3.
 * Slopes scale with the data, so scaling y by a constant (and shifting it) scales the curve with it.
 */
function monotoneSlopes(
	xs: readonly number[],
	ys: readonly number[],
): Float64Array {
	const n = xs.length;
	const secants = new Float64Array(n - 1);
	for (let i = 0; i < n - 1; i++)
		secants[i] = (at(ys, i + 1) - at(ys, i)) / (at(xs, i + 1) - at(xs, i));
	const slopes = new Float64Array(n);
	if (n === 2) return slopes.fill(at(secants, 0));
	for (let i = 1; i < n - 1; i++) {
		const before = at(secants, i - 1);
		const after = at(secants, i);
		const left = at(xs, i) - at(xs, i - 1);
		const right = at(xs, i + 1) - at(xs, i);
		slopes[i] =
			before * after <= 0
				? 0
				: (before * right + after * left) / (left + right);
	}
	slopes[0] = endSlope({
		near: at(secants, 0),
		next: at(secants, 1),
		nearWidth: at(xs, 1) - at(xs, 0),
		nextWidth: at(xs, 2) - at(xs, 1),
	});
	slopes[n - 1] = endSlope({
		near: at(secants, n - 2),
		next: at(secants, n - 3),
		nearWidth: at(xs, n - 1) - at(xs, n - 2),
		nextWidth: at(xs, n - 2) - at(xs, n - 3),
	});
	for (let i = 0; i < n - 1; i++) {
		const secant = at(secants, i);
		if (secant === 0) {
			slopes[i] = 0;
			slopes[i + 1] = 0;
			continue;
		}
		const size = Math.hypot(at(slopes, i), at(slopes, i + 1));
		if (size > 3 * Math.abs(secant)) {
			const shrink = (3 * Math.abs(secant)) / size;
			slopes[i] = shrink * at(slopes, i);
			slopes[i + 1] = shrink * at(slopes, i + 1);
		}
	}
	return slopes;
}

/** One-sided parabola slope at an end, held to the sign of the end secant. */
function endSlope(p: {
	near: number;
	next: number;
	nearWidth: number;
	nextWidth: number;
}): number {
	const slope =
		p.near + ((p.near - p.next) * p.nearWidth) / (p.nearWidth + p.nextWidth);
	return slope * p.near <= 0 ? 0 : slope;
}

function at(values: ArrayLike<number>, index: number): number {
	const value = values[index];
	if (value === undefined)
		throw new RangeError(`index ${index} outside 0–${values.length - 1}`);
	return value;
}

/**
 * The monotone cubic through (xs, ys): continuous first derivative, no overshoot.
 * Throws RangeError when xs does not rise strictly, when fewer than two points are given, and when
 * the curve is asked for outside its interval.
 */
export function monotoneCubic(
	xs: readonly number[],
	ys: readonly number[],
): Curve {
	const n = xs.length;
	if (n < 2 || ys.length !== n)
		throw new RangeError(
			`monotoneCubic needs two or more points of equal count, got ${n} and ${ys.length}`,
		);
	for (let i = 0; i < n; i++) {
		if (!Number.isFinite(at(xs, i)) || !Number.isFinite(at(ys, i)))
			throw new RangeError(`point ${i} is not finite`);
		if (i > 0 && at(xs, i) <= at(xs, i - 1))
			throw new RangeError(
				`x must rise strictly: ${at(xs, i - 1)} then ${at(xs, i)}`,
			);
	}
	const slopes = monotoneSlopes(xs, ys);
	const from = at(xs, 0);
	const to = at(xs, n - 1);
	const pieceOf = (x: number): number => {
		if (!(x >= from && x <= to))
			throw new RangeError(`${x} is outside the curve's ${from}–${to}`);
		let i = 0;
		while (i < n - 2 && x > at(xs, i + 1)) i++;
		return i;
	};
	return {
		from,
		to,
		knots: xs,
		at(x) {
			const i = pieceOf(x);
			const width = at(xs, i + 1) - at(xs, i);
			const t = (x - at(xs, i)) / width;
			const rest = 1 - t;
			return (
				at(ys, i) * rest * rest * (1 + 2 * t) +
				at(ys, i + 1) * t * t * (3 - 2 * t) +
				width * t * rest * (at(slopes, i) * rest - at(slopes, i + 1) * t)
			);
		},
		slopeAt(x) {
			const i = pieceOf(x);
			const width = at(xs, i + 1) - at(xs, i);
			const t = (x - at(xs, i)) / width;
			return (
				(6 * t * (1 - t) * (at(ys, i + 1) - at(ys, i))) / width +
				at(slopes, i) * (1 - t) * (1 - 3 * t) +
				at(slopes, i + 1) * t * (3 * t - 2)
			);
		},
	};
}
