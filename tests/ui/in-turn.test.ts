import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { sameParts } from "@/app/_ui/in-turn/same-parts";
import { Turns } from "@/app/_ui/in-turn/turns";

describe("parts that say the same", () => {
	const before = {
		x: { label: "Weight", domain: [400, 600] },
		lines: [
			{ name: "a", points: [{ x: 1, y: 2 }] },
			{ name: "b", points: [{ x: 1, y: Number.NaN }] },
		],
		marker: { x: 500 },
	};

	test("all of it: the object before", () => {
		expect(sameParts(before, structuredClone(before))).toBe(before);
	});

	test("one part differs: it and what holds it are new, the rest stays", () => {
		const next = structuredClone(before);
		next.marker.x = 510;
		const made = sameParts(before, next);
		expect(made).toEqual(next);
		expect(made.marker).not.toBe(before.marker);
		expect(made.x).toBe(before.x);
		expect(made.lines).toBe(before.lines);
		expect(made).not.toBe(before);
	});

	test.each([
		["a shorter list", [1, 2, 3], [1, 2]],
		["a longer list", [1, 2], [1, 2, 3]],
		["a part gone", { a: 1, b: 2 }, { a: 1 }],
		["a part more", { a: 1 }, { a: 1, b: undefined }],
		["another part under another name", { a: 1 }, { b: 1 }],
		["a list for an object", { 0: 1 }, [1]],
		["nothing for something", { a: { b: 1 } }, { a: null }],
	] as const)("%s is told apart", (_, from: unknown, to: unknown) => {
		const made = sameParts(from, to);
		expect(made).not.toBe(from);
		expect(made).toEqual(to);
	});

	test("what is no plain data is the same only where it is the same object", () => {
		const before = { at: new Date(0) };
		const next = { at: new Date(0) };
		expect(sameParts(before, next).at).toBe(next.at);
		expect(sameParts(before, { at: before.at })).toBe(before);
	});
});

describe("turns", () => {
	beforeEach(() => void vi.useFakeTimers());
	afterEach(() => void vi.useRealTimers());
	const put = (turns: Turns, said: string[], name: string, isNear: boolean) =>
		turns.add({ isNear, run: () => said.push(name) });

	test("near pieces come at once, one to a task; far ones when the page has rested", () => {
		const turns = new Turns();
		const said: string[] = [];
		put(turns, said, "far", false);
		put(turns, said, "near", true);
		put(turns, said, "near too", true);
		expect(said).toEqual([]);
		vi.advanceTimersToNextTimer();
		expect(said).toEqual(["near"]);
		vi.advanceTimersToNextTimer();
		expect(said).toEqual(["near", "near too"]);
		vi.advanceTimersByTime(350);
		put(turns, said, "far too", false);
		vi.advanceTimersByTime(350);
		expect(said).toHaveLength(2);
		vi.runAllTimers();
		expect(said).toEqual(["near", "near too", "far", "far too"]);
	});

	test("what was taken back is not drawn; before paper everything is", () => {
		const turns = new Turns();
		const said: string[] = [];
		put(turns, said, "overtaken", true)();
		put(turns, said, "far", false);
		put(turns, said, "near", true);
		turns.finish();
		expect(said).toEqual(["far", "near"]);
		vi.runAllTimers();
		expect(said).toHaveLength(2);
	});

	test("a piece that fails does not hold the others up", () => {
		const turns = new Turns();
		const said: string[] = [];
		turns.add({
			isNear: true,
			run: () => {
				throw new Error("cannot be drawn");
			},
		});
		put(turns, said, "next", true);
		expect(() => vi.advanceTimersToNextTimer()).toThrow("cannot be drawn");
		vi.runAllTimers();
		expect(said).toEqual(["next"]);
	});
});
