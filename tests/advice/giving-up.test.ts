import { describe, expect, test } from "vitest";
import { CRITERION_COUNT, CRITERION_IDS } from "@/lib/advice/criteria";
import { givingUp } from "@/lib/advice/giving-up";
import { withStature } from "../support/inputs";
import { searched } from "./support";

const { pool } = searched(withStature(1750), { optionCount: 1 });

describe("what the others give up as one quantity moves", () => {
	test.each(["weight", "tip", "price", "balance"] as const)(
		"along %s is the best of each stretch, by looking at every cue",
		(criterion) => {
			const column = CRITERION_IDS.indexOf(criterion);
			const found = givingUp({ pool, criterion, stretches: 7 });
			expect(found).toHaveLength(7);
			found.forEach(({ from, to, row, overall }, i) => {
				let best = 0;
				for (let k = 0; k < pool.count; k++) {
					const value = pool.measures[k * CRITERION_COUNT + column] as number;
					const inside =
						i === 6
							? value >= from && value <= to
							: value >= from && value < to;
					if (inside) best = Math.max(best, pool.overall[k] as number);
				}
				expect(overall).toBeCloseTo(best, 9);
				if (row !== null) expect(pool.overall[row]).toBe(overall);
			});
		},
	);
	test("somewhere along it is the best of all, elsewhere something is lost", () => {
		const along = givingUp({ pool, criterion: "weight", stretches: 9 });
		const worth = along.map(({ overall }) => overall);
		expect(Math.max(...worth)).toBe(Math.max(...pool.overall));
		expect(Math.min(...worth)).toBeLessThan(Math.max(...worth) - 0.05);
		for (const { row, desirabilities } of along)
			expect(desirabilities).toHaveLength(row === null ? 0 : CRITERION_COUNT);
	});
	test("one stretch is the whole scan, none is a programmer's error", () => {
		const [whole] = givingUp({ pool, criterion: "reach", stretches: 1 });
		expect(whole?.overall).toBe(Math.max(...pool.overall));
		expect(() => givingUp({ pool, criterion: "reach", stretches: 0 })).toThrow(
			/whole number/,
		);
	});
});
