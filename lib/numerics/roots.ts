/** A root with its residual, or the reason there is none. */
export type RootResult =
	| {
			readonly converged: true;
			readonly root: number;
			readonly residual: number;
			readonly steps: number;
	  }
	| {
			readonly converged: false;
			readonly reason: "no-sign-change" | "too-many-steps";
			readonly atFrom: number;
			readonly atTo: number;
	  };

/**
 * A root of `f` between `from` and `to`, where f must change sign; within `tolerance` in x.
 * Chandrupatla, Adv. Eng. Softw. 28 (1997) 145 (from memory): inverse quadratic steps where the last
 * three points allow it, bisection otherwise, so it always converges on a continuous f.
 */
export function rootBetween(p: {
	f: (x: number) => number;
	from: number;
	to: number;
	tolerance: number;
}): RootResult {
	let x1 = p.from;
	let x2 = p.to;
	let f1 = p.f(x1);
	let f2 = p.f(x2);
	if (f1 === 0) return { converged: true, root: x1, residual: 0, steps: 0 };
	if (f2 === 0) return { converged: true, root: x2, residual: 0, steps: 0 };
	if (!(f1 < 0 !== f2 < 0) || Number.isNaN(f1) || Number.isNaN(f2))
		return {
			converged: false,
			reason: "no-sign-change",
			atFrom: f1,
			atTo: f2,
		};
	let t = 0.5;
	for (let steps = 1; steps <= 200; steps++) {
		const x = x1 + t * (x2 - x1);
		const fx = p.f(x);
		let x3: number;
		let f3: number;
		if (fx < 0 === f1 < 0) {
			x3 = x1;
			f3 = f1;
		} else {
			x3 = x2;
			f3 = f2;
			x2 = x1;
			f2 = f1;
		}
		x1 = x;
		f1 = fx;
		const near1 = Math.abs(f1) < Math.abs(f2);
		const least = p.tolerance / Math.abs(x2 - x1);
		if (f1 === 0 || f2 === 0 || least > 0.5)
			return {
				converged: true,
				root: near1 ? x1 : x2,
				residual: near1 ? f1 : f2,
				steps,
			};
		const xi = (x1 - x2) / (x3 - x2);
		const phi = (f1 - f2) / (f3 - f2);
		t =
			phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
				? (f1 / (f2 - f1)) * (f3 / (f2 - f3)) +
					((((x3 - x1) / (x2 - x1)) * f1) / (f3 - f1)) * (f2 / (f3 - f2))
				: 0.5;
		t = Math.min(Math.max(t, least), 1 - least);
	}
	return {
		converged: false,
		reason: "too-many-steps",
		atFrom: f1,
		atTo: f2,
	};
}
