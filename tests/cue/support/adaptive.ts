/** Adaptive Simpson quadrature, for checks only: knows nothing of where a design's breaks are. */
export function adaptiveSimpson(p: {
	f: (x: number) => number;
	from: number;
	to: number;
	tolerance: number;
}): number {
	const rule = (a: number, b: number, fa: number, fm: number, fb: number) =>
		((b - a) / 6) * (fa + 4 * fm + fb);
	const refine = (
		a: number,
		b: number,
		fa: number,
		fm: number,
		fb: number,
		whole: number,
		tolerance: number,
		depth: number,
	): number => {
		const middle = (a + b) / 2;
		const fLeft = p.f((a + middle) / 2);
		const fRight = p.f((middle + b) / 2);
		const left = rule(a, middle, fa, fLeft, fm);
		const right = rule(middle, b, fm, fRight, fb);
		const change = left + right - whole;
		if (depth <= 0 || Math.abs(change) <= 15 * tolerance)
			return left + right + change / 15;
		return (
			refine(a, middle, fa, fLeft, fm, left, tolerance / 2, depth - 1) +
			refine(middle, b, fm, fRight, fb, right, tolerance / 2, depth - 1)
		);
	};
	// Start from many equal pieces so that no short metal part is stepped over.
	const pieces = 1000;
	let sum = 0;
	for (let i = 0; i < pieces; i++) {
		const a = p.from + ((p.to - p.from) * i) / pieces;
		const b = p.from + ((p.to - p.from) * (i + 1)) / pieces;
		const fa = p.f(a);
		const fm = p.f((a + b) / 2);
		const fb = p.f(b);
		const whole = rule(a, b, fa, fm, fb);
		sum += refine(a, b, fa, fm, fb, whole, p.tolerance / pieces, 24);
	}
	return sum;
}
