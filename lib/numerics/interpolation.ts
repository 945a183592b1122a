/** A function of one variable on a closed interval, with its first derivative. */
export interface Curve {
	readonly from: number;
	readonly to: number;
	readonly knots: readonly number[];
	at(x: number): number;
	slopeAt(x: number): number;
	/** The cubic of the piece that x lies in, for many evaluations within it. */
	pieceAt(x: number): Cubic;
}

/** c0 + c1·u + c2·u² + c3·u³ with u = x − origin. */
export interface Cubic {
	readonly origin: number;
	readonly c0: number;
	readonly c1: number;
	readonly c2: number;
	readonly c3: number;
}

export function cubicAt(cubic: Cubic, x: number): number {
	const u = x - cubic.origin;
	return cubic.c0 + u * (cubic.c1 + u * (cubic.c2 + u * cubic.c3));
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
	const pieces: Cubic[] = [];
	for (let i = 0; i < n - 1; i++) {
		const width = at(xs, i + 1) - at(xs, i);
		const secant = (at(ys, i + 1) - at(ys, i)) / width;
		const first = at(slopes, i);
		const last = at(slopes, i + 1);
		pieces.push({
			origin: at(xs, i),
			c0: at(ys, i),
			c1: first,
			c2: (3 * secant - 2 * first - last) / width,
			c3: (first + last - 2 * secant) / (width * width),
		});
	}
	const pieceAt = (x: number): Cubic => {
		if (!(x >= from && x <= to))
			throw new RangeError(`${x} is outside the curve's ${from}–${to}`);
		let i = 0;
		while (i < n - 2 && x > (xs[i + 1] ?? 0)) i++;
		const piece = pieces[i];
		if (!piece) throw new RangeError(`no piece ${i} of ${pieces.length}`);
		return piece;
	};
	return {
		from,
		to,
		knots: xs,
		pieceAt,
		at: (x) => (x === to ? at(ys, n - 1) : cubicAt(pieceAt(x), x)),
		slopeAt(x) {
			const { origin, c1, c2, c3 } = pieceAt(x);
			const u = x - origin;
			return c1 + u * (2 * c2 + 3 * u * c3);
		},
	};
}
