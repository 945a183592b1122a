/** Nodes and weights of a rule on [−1, 1]. */
export interface QuadratureRule {
	readonly nodes: Float64Array;
	readonly weights: Float64Array;
}

const rules = new Map<number, QuadratureRule>();

/**
 * Gauss–Legendre rule of `count` points, exact for polynomials up to degree 2·count − 1.
 * Roots of the Legendre polynomial by Newton's method from Tricomi's starting values.
 * Throws RangeError unless 1 ≤ count ≤ 256.
 */
export function gaussLegendre(count: number): QuadratureRule {
	if (!Number.isInteger(count) || count < 1 || count > 256)
		throw new RangeError(`count must be an integer 1–256, got ${count}`);
	const known = rules.get(count);
	if (known) return known;
	const nodes = new Float64Array(count);
	const weights = new Float64Array(count);
	for (let i = 0; i < count; i++) {
		let x =
			(1 - (count - 1) / (8 * count ** 3)) *
			Math.cos((Math.PI * (4 * i + 3)) / (4 * count + 2));
		let derivative = 1;
		for (let step = 0; step < 50; step++) {
			let previous = 1;
			let value = x;
			for (let k = 2; k <= count; k++) {
				const next = ((2 * k - 1) * x * value - (k - 1) * previous) / k;
				previous = value;
				value = next;
			}
			derivative = (count * (x * value - previous)) / (x * x - 1);
			const change = value / derivative;
			x -= change;
			if (Math.abs(change) < 1e-15) break;
		}
		nodes[count - 1 - i] = x;
		weights[count - 1 - i] = 2 / ((1 - x * x) * derivative * derivative);
	}
	const rule = { nodes, weights };
	rules.set(count, rule);
	return rule;
}

/** ∫ f over [from, to] by one Gauss–Legendre panel. */
export function integratePanel(p: {
	integrand: (x: number) => number;
	from: number;
	to: number;
	count: number;
}): number {
	const { nodes, weights } = gaussLegendre(p.count);
	const middle = (p.from + p.to) / 2;
	const half = (p.to - p.from) / 2;
	let sum = 0;
	for (let i = 0; i < p.count; i++)
		sum += (weights[i] ?? 0) * p.integrand(middle + half * (nodes[i] ?? 0));
	return sum * half;
}
