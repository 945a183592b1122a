/**
 * `next`, in which every part that says the same as in `before` is the one of `before`, all of it where
 * all is the same: what is drawn from such a part needs no drawing anew. For plain data; anything else
 * counts as the same only where it is the same object.
 */
export function sameParts<T>(before: T, next: T): T {
	if (Object.is(before, next)) return before;
	if (Array.isArray(before) && Array.isArray(next)) {
		const made = next.map((part, i) =>
			i < before.length ? sameParts(before[i], part) : part,
		);
		return made.length === before.length &&
			made.every((part, i) => Object.is(part, before[i]))
			? before
			: (made as T);
	}
	if (!isPlain(before) || !isPlain(next)) return next;
	const made: Record<string, unknown> = {};
	let isSame = Object.keys(before).length === Object.keys(next).length;
	for (const [key, part] of Object.entries(next)) {
		const was = Object.hasOwn(before, key);
		made[key] = was ? sameParts(before[key], part) : part;
		isSame &&= was && Object.is(made[key], before[key]);
	}
	return isSame ? before : (made as T);
}

const isPlain = (value: unknown): value is Record<string, unknown> =>
	typeof value === "object" &&
	value !== null &&
	Object.getPrototypeOf(value) === Object.prototype;
