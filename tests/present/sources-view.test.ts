import { describe, expect, test } from "vitest";
import * as judgement from "@/lib/advice/judgement";
import {
	ASSUMED_IN,
	assumptionsIn,
	RESTING_ON,
} from "@/lib/present/assumption-rows";
import { constantGroups, sourceRows } from "@/lib/present/sources-view";
import { CITATIONS } from "@/lib/reference/citations";
import * as stance from "@/lib/stance/assumptions";
import * as trial from "@/lib/trial/assumptions";
import type { MessageKey } from "@/lib/words/reader";
import { METRIC, reading } from "../support/readers";

const FILES = Object.keys(ASSUMED_IN) as (keyof typeof ASSUMED_IN)[];

/** Every number anywhere inside a value. */
const numbersIn = (value: unknown): number[] => {
	if (typeof value === "number") return [value];
	return typeof value === "object" && value !== null
		? Object.values(value).flatMap(numbersIn)
		: [];
};

describe("assumptions on the sources page", () => {
	test.each([
		["stance", stance],
		["trial", trial],
		["advice", judgement],
	] as const)("every number of the file of the %s is on it", (file, source) => {
		const shown = assumptionsIn(file).flatMap(({ value, sd }) => [
			...numbersIn(typeof value === "object" ? value : [value]),
			...(sd === null ? [] : [sd]),
		]);
		const left = [...shown];
		const missing = numbersIn({ ...source }).filter((number) => {
			const at = left.indexOf(number);
			if (at >= 0) left.splice(at, 1);
			return at < 0;
		});
		expect(missing).toEqual([]);
		expect(numbersIn({ ...source }).length).toBeGreaterThan(20);
	});

	test("names, units, spreads and standing are read off the data", () => {
		const row = (name: string) => {
			const all = constantGroups(METRIC).flatMap(({ rows }) => rows);
			const found = all.filter((one) => one.name === name);
			expect(found, name).toHaveLength(1);
			return found[0];
		};
		const { value, sd } = stance.SHOULDER_YAW_DEG["side-on"];
		expect(row("Shoulder yaw, side on")).toMatchObject({
			value: `${value} deg`,
			spread: `± ${sd}`,
			source: CITATIONS["project-judgement"].title,
		});
		expect(row("Fall off, length")).toMatchObject({
			value: `${trial.FALL_OFF.lengthMm} mm`,
			spread: "",
		});
		expect(row("Drift sd")?.value).toBe(`${trial.DRIFT_SD_LOG_ODDS} log-odds`);
		expect(row("Prior count")?.source).toBe(
			CITATIONS["brown-cai-dasgupta-2001"].title,
		);
		expect(row("Butt limits, max")?.value).toBe(
			`${judgement.BUTT_LIMITS_MM.max} mm`,
		);
	});

	test("no name stands twice in a group, and what is said to be sourced exists", () => {
		for (const { title, rows } of constantGroups(METRIC)) {
			const names = rows.map(({ name }) => name);
			expect(new Set(names).size, title).toBe(names.length);
		}
		const exported = FILES.flatMap((file) => Object.keys(ASSUMED_IN[file]));
		expect(
			Object.keys(RESTING_ON).filter((name) => !exported.includes(name)),
		).toEqual([]);
	});
});

test("every citation is listed once", () => {
	expect(sourceRows(METRIC).map(({ id }) => id)).toEqual(
		Object.keys(CITATIONS),
	);
});

test("nothing on the page but titles and bare figures is left in English", () => {
	const german = reading("metric", "de");
	const missed: string[] = [];
	const noting = Object.assign(
		((...given: Parameters<typeof german.say>) =>
			german.say(...given)) as typeof german.say,
		{
			has: (key: MessageKey) => {
				if (!german.say.has(key)) missed.push(key);
				return german.say.has(key);
			},
		},
	);
	const reader = { ...german, say: noting };
	expect(constantGroups(reader)).toEqual(constantGroups(german));
	expect(sourceRows(reader)).toEqual(sourceRows(german));
	expect(missed).toContain("citation.wood-handbook-2021");
	const left = [...new Set(missed)].filter(
		(key) => !key.startsWith("citation."),
	);
	expect(left.filter((key) => key.startsWith("constant."))).toEqual([]);
	// Units of measure, and figures with no word in them.
	expect(
		left
			.filter((key) => !key.startsWith("constantUnit."))
			.filter((key) => /[a-z]{4}/.test(key.replace("locator.", ""))),
	).toEqual([]);
});
