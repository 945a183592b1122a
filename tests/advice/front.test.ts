import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nonDominated } from "@/lib/advice/front";

/** The definition, word for word, over plain arrays: every row against every other. */
function bruteForce(rows: readonly (readonly number[])[]): number[] {
	const beats = (a: readonly number[], b: readonly number[]) =>
		a.every((value, j) => value >= (b[j] as number)) &&
		a.some((value, j) => value > (b[j] as number));
	return rows.flatMap((row, i) =>
		rows.some((other) => beats(other, row)) ? [] : [i],
	);
}

const found = (rows: readonly (readonly number[])[]): number[] =>
	Array.from(
		nonDominated({
			values: Float64Array.from(rows.flat()),
			width: rows[0]?.length ?? 1,
			count: rows.length,
		}),
	);

/** Rows with many ties: coarse values beside fine ones. */
const anyRows = fc.integer({ min: 1, max: 6 }).chain((width) =>
	fc.array(
		fc.array(
			fc.oneof(
				fc.constantFrom(0, 0.25, 0.5, 1),
				// Not so small that halving would round it away.
				fc
					.double({ min: 0, max: 1, noNaN: true })
					.map((value) => (value < 1e-300 ? 0 : value)),
			),
			{ minLength: width, maxLength: width },
		),
		{ minLength: 1, maxLength: 60 },
	),
);

describe("rows no other row beats", () => {
	test("are those of the definition", () => {
		fc.assert(
			fc.property(anyRows, (rows) => {
				expect(found(rows)).toEqual(bruteForce(rows));
			}),
			{ numRuns: 400 },
		);
	});
	test("stay the same when a worse row is added", () => {
		fc.assert(
			fc.property(
				anyRows,
				fc.nat(),
				fc.double({ min: 0.01, max: 1, noNaN: true }),
				(rows, pick, by) => {
					const beaten = (rows[pick % rows.length] as number[]).map(
						(value) => value - by,
					);
					expect(found([...rows, beaten])).toEqual(found(rows));
				},
			),
		);
	});
	test("do not depend on the units of a column, nor on the order of rows", () => {
		fc.assert(
			fc.property(
				anyRows,
				fc.integer({ min: -6, max: 6 }),
				fc.nat(),
				(rows, power, column) => {
					// Powers of two scale without rounding.
					const scaled = rows.map((row) =>
						row.map((value, j) =>
							j === column % row.length ? value * 2 ** power : value,
						),
					);
					expect(found(scaled)).toEqual(found(rows));
					const last = rows.length - 1;
					expect(
						found([...rows].reverse())
							.map((i) => last - i)
							.sort((a, b) => a - b),
					).toEqual(found(rows));
				},
			),
		);
	});
	test("keep every equal row", () => {
		expect(
			found([
				[1, 0],
				[1, 0],
				[0, 1],
				[0, 0],
			]),
		).toEqual([0, 1, 2]);
	});
	test("a sum that rounding makes equal hides no beaten row", () => {
		// 1e16 + 1 = 1e16: both sums are equal, the second row beats the first.
		expect(
			found([
				[1e16, 0],
				[1e16, 1],
			]),
		).toEqual([1]);
	});
	test("NaN is a programmer's error", () => {
		expect(() => found([[1, Number.NaN]])).toThrow(/NaN/);
	});
});
