import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type HungLabel, placeLabels } from "@/lib/present/place-labels";

interface Laid extends HungLabel {
	readonly row: number;
	readonly left: number;
}
const lay = (labels: readonly HungLabel[], widthPx: number): Laid[] => {
	const placed = placeLabels(labels, widthPx);
	return labels.map((label, i) => {
		const at = placed[i];
		if (!at) throw new Error(`label ${i} was not placed`);
		return { ...label, ...at };
	});
};
const right = (one: Laid) => one.left + one.widthPx;

/** Texts that lie over each other, and leaders that run through a text. */
function collisions(laid: readonly Laid[]): string[] {
	const found: string[] = [];
	for (const [i, a] of laid.entries())
		for (const [j, b] of laid.entries()) {
			if (i === j) continue;
			if (i < j && a.row === b.row && a.left < right(b) && b.left < right(a))
				found.push(`texts ${i} and ${j}`);
			if (b.row <= a.row && a.x > b.left && a.x < right(b))
				found.push(`leader ${i} through text ${j}`);
		}
	return found;
}

/** Up to six labels, no two nearer than 12 px: what a cue's marks on a page come to. */
const anyLabels = fc
	.array(
		fc.record({
			x: fc.double({ min: 0, max: 1000, noNaN: true }),
			widthPx: fc.double({ min: 40, max: 160, noNaN: true }),
		}),
		{ maxLength: 6 },
	)
	.filter((labels) =>
		labels.every((a, i) =>
			labels.every((b, j) => i === j || Math.abs(a.x - b.x) >= 12),
		),
	);

describe("labels hung under a picture", () => {
	test("nothing over anything, every text within the width", () => {
		fc.assert(
			fc.property(anyLabels, (labels) => {
				const laid = lay(labels, 1000);
				expect(collisions(laid)).toEqual([]);
				for (const one of laid) {
					expect(one.left).toBeGreaterThanOrEqual(0);
					expect(right(one)).toBeLessThanOrEqual(1000 + 1e-9);
				}
			}),
			{ numRuns: 300, seed: 3 },
		);
	});
	test("labels far apart share one row", () => {
		const labels = [100, 400, 700].map((x) => ({ x, widthPx: 120 }));
		expect(placeLabels(labels, 1000).map(({ row }) => row)).toEqual([0, 0, 0]);
	});
	test("two labels at one place stand on both sides of it", () => {
		const laid = lay(
			[
				{ x: 500, widthPx: 150 },
				{ x: 509, widthPx: 150 },
			],
			1000,
		);
		expect(collisions(laid)).toEqual([]);
		expect(laid.map(({ row }) => row)).toEqual([0, 0]);
	});
	test("three at one place have to cross, but never lie over each other", () => {
		const found = collisions(
			lay(
				[500, 500, 500].map((x) => ({ x, widthPx: 150 })),
				1000,
			),
		);
		expect(found.filter((one) => one.startsWith("texts"))).toEqual([]);
	});
	test("at both edges the text turns inwards", () => {
		const [first, last] = lay(
			[
				{ x: 2, widthPx: 100 },
				{ x: 998, widthPx: 100 },
			],
			1000,
		);
		expect(first?.left).toBeLessThan(10);
		expect(last && right(last)).toBeLessThanOrEqual(1000);
		expect(first?.row).toBe(0);
		expect(last?.row).toBe(0);
	});
	test("the order asked is the order answered", () => {
		const labels = [
			{ x: 900, widthPx: 60 },
			{ x: 100, widthPx: 60 },
		];
		const [one, two] = placeLabels(labels, 1000);
		expect(one?.left).toBeGreaterThan(500);
		expect(two?.left).toBeLessThan(500);
	});
	test("none asked, none answered; more than the search tries still placed", () => {
		expect(placeLabels([], 500)).toEqual([]);
		const many = Array.from({ length: 12 }, (_, i) => ({
			x: 40 * i,
			widthPx: 30,
		}));
		expect(placeLabels(many, 500)).toHaveLength(12);
	});
	test("the check would notice a collision", () => {
		expect(
			collisions([
				{ x: 10, widthPx: 50, row: 0, left: 10 },
				{ x: 20, widthPx: 50, row: 0, left: 20 },
				{ x: 30, widthPx: 50, row: 1, left: 30 },
			]),
		).toEqual([
			"texts 0 and 1",
			"leader 1 through text 0",
			"leader 2 through text 0",
			"leader 2 through text 1",
		]);
	});
});
