/** Guards for arguments whose range a caller has already checked: a breach is a programmer's error. */
export function positive(name: string, value: number): void {
	if (!(Number.isFinite(value) && value > 0))
		throw new RangeError(`${name} must be positive and finite, got ${value}`);
}

/** Offsets are shares of the ball radius: 0 at the centre, below 1 at the edge. */
export function offsetShare(name: string, value: number): void {
	if (!(value > -1 && value < 1))
		throw new RangeError(`${name} must lie between −1 and 1, got ${value}`);
}

export function share(name: string, value: number): void {
	if (!(value >= 0 && value <= 1))
		throw new RangeError(`${name} must lie between 0 and 1, got ${value}`);
}
