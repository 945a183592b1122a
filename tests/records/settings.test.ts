import { describe, expect, test } from "vitest";
import { settingsJson } from "@/lib/documents/settings-files";
import { readSettingsFile } from "@/lib/forms/settings/file";
import { closeDatabase, database } from "@/lib/records/database";
import { migrate } from "@/lib/records/migrate";
import { importSettings, planImport } from "@/lib/records/settings/import";
import {
	getSetting,
	settingHistory,
	settingsOn,
	settingsToExport,
	today,
} from "@/lib/records/settings/loaders";
import { type NewSetting, saveSetting } from "@/lib/records/settings/mutations";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { addDays } from "@/lib/workshop/working-days";
import { ownDatabase, temporaryDatabase } from "../support/database";

temporaryDatabase();

const { prices, header } = DEFAULT_SETTINGS;
const charging = (baseMinor: number): typeof prices => ({
	...prices,
	basis: "workshop",
	rows: prices.rows.map((row) =>
		row.part === "base" ? { ...row, labourMinor: baseMinor } : row,
	),
});
const save = (given: Partial<NewSetting<"prices">>) =>
	saveSetting({
		kind: "prices",
		content: charging(1),
		editedFrom: 0,
		validFrom: today(),
		by: "Bench",
		requestKey: crypto.randomUUID(),
		...given,
	});
const baseOn = async (day: string) =>
	(await settingsOn(day)).prices.rows.find(({ part }) => part === "base")
		?.labourMinor;

describe("settings", () => {
	test("are the invented ones, version 0, until something is saved", async () => {
		const { versions, ...settings } = await settingsOn(today());
		expect(settings).toEqual(DEFAULT_SETTINGS);
		expect(Object.values(versions)).toEqual([0, 0, 0, 0, 0]);
		expect(await getSetting("prices")).toBeNull();
	});

	test("a change is a new version and holds from its day", async () => {
		const nextMonth = addDays(today(), 31);
		expect(await save({ content: charging(11_000) })).toEqual({
			ok: true,
			version: 1,
		});
		expect(
			await save({
				content: charging(12_000),
				editedFrom: 1,
				validFrom: nextMonth,
				note: "the yearly rise",
			}),
		).toEqual({ ok: true, version: 2 });
		expect(await baseOn(today())).toBe(11_000);
		expect(await baseOn(addDays(nextMonth, -1))).toBe(11_000);
		expect(await baseOn(nextMonth)).toBe(12_000);
		expect((await settingsOn(nextMonth)).versions.prices).toBe(2);
		const history = await settingHistory("prices");
		expect(history.map(({ version, note }) => [version, note])).toEqual([
			[2, "the yearly rise"],
			[1, ""],
		]);
	});

	test("an edit of an older version is not saved over a newer one", async () => {
		const refused = await save({ content: charging(9_000), editedFrom: 1 });
		expect(refused).toMatchObject({ ok: false, conflict: { version: 2 } });
		expect(await getSetting("prices", 3)).toBeNull();
	});

	test("the same key is one version, and so is equal content from the same day", async () => {
		const requestKey = crypto.randomUUID();
		const asked = { content: charging(13_000), editedFrom: 2, requestKey };
		const first = await save(asked);
		expect(await save(asked)).toEqual(first);
		expect(await save({ content: charging(13_000), editedFrom: 2 })).toEqual(
			first,
		);
		expect(await settingHistory("prices")).toHaveLength(3);
	});

	test("is refused with field, value and bound, and from a day that has passed", async () => {
		const passed = addDays(today(), -1);
		expect(
			await save({
				content: charging(-5),
				validFrom: passed,
				editedFrom: 3,
			}),
		).toEqual({
			ok: false,
			refusals: [
				{
					code: "date-passed",
					field: "validFrom",
					value: passed,
					facts: { earliest: today() },
				},
				{
					code: "out-of-range",
					field: "prices.rows.0.labourMinor",
					value: -5,
					min: 0,
					max: 5_000_000,
					facts: { currency: "GBP", minorPerUnit: 100 },
				},
			],
		});
	});

	test("two edits of one version at once: one is saved", async () => {
		const both = await Promise.all(
			[1, 2].map((digit) =>
				saveSetting({
					kind: "header",
					content: { ...header, basis: "workshop", name: `Bench ${digit}` },
					editedFrom: 0,
					validFrom: today(),
					by: "Bench",
					requestKey: crypto.randomUUID(),
				}),
			),
		);
		expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
	});

	test("a saved version cannot be changed or deleted", async () => {
		const before = await settingHistory("prices");
		for (const sql of [
			`UPDATE "SettingVersion" SET "by" = 'x' WHERE "kind" = 'prices'`,
			`DELETE FROM "SettingVersion" WHERE "kind" = 'prices'`,
		])
			await expect(database().$executeRawUnsafe(sql)).rejects.toThrow(
				/a version of a setting (never changes|is kept)/,
			);
		expect(await settingHistory("prices")).toEqual(before);
	});
});

describe("a file of all settings", () => {
	const exported = () => settingsToExport(today());
	const entriesOf = (settings: Awaited<ReturnType<typeof exported>>) => {
		const read = readSettingsFile(
			settingsJson({ settings, origin: "http://x", exportedOn: today() }),
			DEFAULT_SETTINGS,
		);
		if (!read.ok) throw new Error(JSON.stringify(read.problems));
		return read.entries;
	};
	const contents = (settings: object) => JSON.parse(JSON.stringify(settings));

	test("taken over into an empty database gives the same settings, now and later", async () => {
		const there = await exported();
		// In force, and the one that begins next month, saved above.
		expect(there.prices).toHaveLength(2);
		const entries = entriesOf(there);
		const own = await ownDatabase();
		const { DATABASE_URL } = process.env;
		try {
			await closeDatabase();
			process.env.DATABASE_URL = own.url;
			await migrate(own.url);
			const { steps, editedFrom } = await planImport(entries);
			// What was never set is the invented start, which is there already.
			expect(steps.map(({ kind, validFrom }) => [kind, validFrom])).toEqual([
				["header", today()],
				["prices", today()],
				["prices", addDays(today(), 31)],
			]);
			const request = {
				entries,
				editedFrom,
				note: "",
				by: "Bench",
				requestKey: crypto.randomUUID(),
			};
			const imported = await importSettings(request);
			expect(imported).toMatchObject({ ok: true });
			expect(await importSettings(request)).toEqual(imported);
			expect(contents(await exported())).toEqual(contents(there));
			for (const day of [today(), addDays(today(), 40)]) {
				const { versions: _, ...here } = await settingsOn(day);
				await closeDatabase();
				process.env.DATABASE_URL = DATABASE_URL;
				const { versions: __, ...was } = await settingsOn(day);
				expect(here).toEqual(was);
				await closeDatabase();
				process.env.DATABASE_URL = own.url;
			}
			expect((await planImport(entries)).steps).toEqual([]);
		} finally {
			await closeDatabase();
			process.env.DATABASE_URL = DATABASE_URL;
			await own.remove();
		}
	});

	test("is not taken over on settings that were changed since it was looked at", async () => {
		const entries = entriesOf({
			...(await exported()),
			prices: [{ validFrom: today(), content: charging(1) }],
		});
		const { steps, editedFrom } = await planImport(entries);
		expect(steps).toMatchObject([{ kind: "prices", before: charging(13_000) }]);
		const before = (await settingHistory("prices"))[0]?.version ?? 0;
		await save({ content: charging(2), editedFrom: before });
		const count = await database().settingVersion.count();
		expect(
			await importSettings({
				entries,
				editedFrom,
				note: "",
				by: "Bench",
				requestKey: crypto.randomUUID(),
			}),
		).toEqual({ ok: false });
		expect(await database().settingVersion.count()).toBe(count);
	});
});
