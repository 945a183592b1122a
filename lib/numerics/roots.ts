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
 * A root of `f` between `from` and `to`, where f must change sign.
 * Regula falsi with the Illinois correction, falling back to bisection when a step does not halve
 * the bracket in three tries: always converges on a continuous f. `tolerance` is in x.
 */
export function rootBetween(p: {
	f: (x: number) => number;
	from: number;
	to: number;
	tolerance: number;
}): RootResult {
	let a = p.from;
	let b = p.to;
	let fa = p.f(a);
	let fb = p.f(b);
	if (fa === 0) return { converged: true, root: a, residual: 0, steps: 0 };
	if (fb === 0) return { converged: true, root: b, residual: 0, steps: 0 };
	if (!(fa * fb < 0))
		return {
			converged: false,
			reason: "no-sign-change",
			atFrom: fa,
			atTo: fb,
		};
	let weightA = fa;
	let weightB = fb;
	let slow = 0;
	for (let steps = 1; steps <= 200; steps++) {
		const width = Math.abs(b - a);
		let x =
			slow >= 3
				? (a + b) / 2
				: (a * weightB - b * weightA) / (weightB - weightA);
		if (!(x > Math.min(a, b) && x < Math.max(a, b))) x = (a + b) / 2;
		const fx = p.f(x);
		if (fx === 0 || width <= p.tolerance)
			return { converged: true, root: x, residual: fx, steps };
		if (fx * fa < 0) {
			b = x;
			fb = fx;
			weightB = fb;
			weightA = weightA / 2;
		} else {
			a = x;
			fa = fx;
			weightA = fa;
			weightB = weightB / 2;
		}
		slow = Math.abs(b - a) > width / 2 ? slow + 1 : 0;
	}
	return {
		converged: false,
		reason: "too-many-steps",
		atFrom: fa,
		atTo: fb,
	};
}
