/** Density of the standard normal, and its distribution after Abramowitz & Stegun 7.1.26 (error below 1.5e-7). */
const normalDensity = (z: number): number =>
	Math.exp(-z * z * 0.5) / Math.sqrt(2 * Math.PI);

function normalShareBelow(z: number): number {
	const t = 1 / (1 + (0.3275911 * Math.abs(z)) / Math.SQRT2);
	const tail =
		t *
		(0.254829592 +
			t *
				(-0.284496736 +
					t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
		Math.exp(-z * z * 0.5);
	return z >= 0 ? 1 - tail / 2 : tail / 2;
}

/** Mean and standard deviation of the lesser of two independent normal quantities. Clark, Oper. Res. 9 (1961) 145, from memory. */
export function lesserOf(
	a: { readonly value: number; readonly sd: number },
	b: { readonly value: number; readonly sd: number },
): { readonly value: number; readonly sd: number } {
	const spread = Math.hypot(a.sd, b.sd);
	if (spread === 0) return { value: Math.min(a.value, b.value), sd: 0 };
	const z = (b.value - a.value) / spread;
	const below = normalShareBelow(z);
	const above = 1 - below;
	const mean = a.value * below + b.value * above - spread * normalDensity(z);
	const square =
		(a.value ** 2 + a.sd ** 2) * below +
		(b.value ** 2 + b.sd ** 2) * above -
		(a.value + b.value) * spread * normalDensity(z);
	return { value: mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) };
}
