import { expect, test } from "vitest";
import { seededChance, shuffled } from "@/lib/trial/chance";

test("the same seed gives the same numbers, another seed others", () => {
	const draw = (seed: number) => {
		const chance = seededChance(seed);
		return Array.from({ length: 5 }, chance);
	};
	expect(draw(7)).toEqual(draw(7));
	expect(draw(7)).not.toEqual(draw(8));
});

test("numbers lie in [0, 1), evenly: chi-square over 20 cells of 20,000 draws", () => {
	const chance = seededChance(2024);
	const cells = new Array<number>(20).fill(0);
	for (let i = 0; i < 20_000; i++) {
		const draw = chance();
		expect(draw >= 0 && draw < 1).toBe(true);
		const cell = Math.floor(draw * 20);
		cells[cell] = (cells[cell] ?? 0) + 1;
	}
	const chiSquare = cells.reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
	// 43.8 is the 0.1 % point of chi-square with 19 degrees of freedom (tables; from memory).
	expect(chiSquare).toBeLessThan(43.8);
});

test("shuffling keeps every item, and every order of three comes as often", () => {
	const chance = seededChance(5);
	const orders = new Map<string, number>();
	for (let i = 0; i < 6000; i++) {
		const order = shuffled(["a", "b", "c"], chance).join("");
		orders.set(order, (orders.get(order) ?? 0) + 1);
	}
	expect([...orders.keys()].sort()).toEqual([
		"abc",
		"acb",
		"bac",
		"bca",
		"cab",
		"cba",
	]);
	for (const count of orders.values())
		expect(Math.abs(count - 1000)).toBeLessThan(4 * Math.sqrt(1000 * (5 / 6)));
});

test.each([-1, 0.5, 2 ** 32, Number.NaN])("seed %f is refused", (seed) => {
	expect(() => seededChance(seed)).toThrow(/seed/);
});
