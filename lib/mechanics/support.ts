import { HALF_WIDTH, STRIDE, type SymmetricBand } from "@/lib/numerics/banded";
import type { Beam } from "./beam";

/**
 * How a hand is taken to hold the cue, at one station. "pinned": it stops the cue moving sideways
 * there and leaves it free to turn; "clamped": it stops both. A real hand is soft and lies between,
 * nearer to pinned for a light grip; no published stiffness of a grip on a cue was found.
 */
export type Hold = "pinned" | "clamped";

/** Index of the node at a station that the mesh was asked to hold an end at. */
export function nodeAt(beam: Beam, stationMm: number): number {
	const index = beam.stationsM
		.subarray(0, beam.nodes)
		.findIndex((station) => Math.abs(1000 * station - stationMm) < 1e-6);
	if (index < 0)
		throw new RangeError(`no element ends at station ${stationMm} mm`);
	return index;
}

export const heldFreedoms = (node: number, hold: Hold): readonly number[] =>
	hold === "pinned" ? [2 * node] : [2 * node, 2 * node + 1];

/** A copy with the given freedoms cut off from the rest, `diagonal` left in their place. */
export function cutOff(
	a: SymmetricBand,
	freedoms: readonly number[],
	diagonal: number,
): SymmetricBand {
	const values = a.values.slice(0, a.size * STRIDE);
	for (const i of freedoms) {
		for (let k = 0; k <= HALF_WIDTH; k++) {
			if (k <= i) values[i * STRIDE + k] = 0;
			if (i + k < a.size) values[(i + k) * STRIDE + k] = 0;
		}
		values[i * STRIDE] = diagonal;
	}
	return { size: a.size, values };
}
