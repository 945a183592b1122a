/**
 * A pure function that keeps its last answer, by identity of its argument. For values looked up many
 * times in a row for one object; holds on to that one object and no more.
 */
export function rememberLast<K extends object, V>(
	compute: (key: K) => V,
): (key: K) => V {
	let lastKey: K | null = null;
	let lastValue: V | null = null;
	return (key) => {
		if (key === lastKey) return lastValue as V;
		const value = compute(key);
		lastKey = key;
		lastValue = value;
		return value;
	};
}
