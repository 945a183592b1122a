import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { FittingKeeper } from "@/app/_device/keeper";
import type { FieldName } from "@/lib/forms/fields";
import {
	FakeDevice,
	FakeServer,
	FITTING_ID,
	rest,
	shows,
	type,
} from "./support/bench";

const SEEN = {
	lengthMm: 1473,
	massG: 530,
	buttDiameterMm: 28.5,
	tipDiameterMm: 9.5,
	buttWood: "gaboon-ebony",
} as const;
const ASKED = { reason: "", seen: SEEN };

describe("one tab", () => {
	test("types, sends, and is told that all is saved", async () => {
		const server = new FakeServer();
		const tab = new FakeDevice("tablet", server).tab();
		type(tab, "stature", "178 cm");
		expect(tab.view.state).toBe("saving");
		expect(await tab.sync()).toBe(true);
		expect(tab.view).toMatchObject({
			state: "saved",
			answers: { stature: "178 cm" },
			waitingCount: 0,
		});
		expect(server.answers).toEqual({ stature: "178 cm" });
	});

	test("closed before the server answers: the next visit has it, and it is stored once", async () => {
		const server = new FakeServer();
		const device = new FakeDevice("tablet", server);
		const tab = device.tab();
		await rest();
		server.losesAnswers = true;
		type(tab, "stature", "178 cm");
		await tab.sync();
		expect(tab.view.state).toBe("on-device");
		device.closeAll();

		server.losesAnswers = false;
		const again = device.tab();
		await rest();
		expect(shows(again, "stature", "178 cm")).toBe(true);
		expect(await again.sync()).toBe(true);
		expect(server.log).toHaveLength(1);
	});

	test("typed before the storage was open is written too", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		const tab = device.tab();
		type(tab, "age", "41");
		await rest();
		device.closeAll();
		const again = device.tab();
		await rest();
		expect(shows(again, "age", "41")).toBe(true);
	});

	test("typed while the storage opens and closed before it does: the next visit has it", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		device.opening = new Promise(() => undefined);
		const tab = device.tab();
		type(tab, "stature", "17");
		type(tab, "stature", "178 cm");
		device.closeAll();

		device.opening = Promise.resolve();
		server.isDown = false;
		const again = device.tab();
		await rest();
		expect(shows(again, "stature", "178 cm")).toBe(true);
		expect(await again.sync()).toBe(true);
		expect(server.answers).toEqual({ stature: "178 cm" });
		expect(server.conflicts).toEqual([]);
		expect(device.texts.length).toBe(0);
	});

	test("what a full storage refused is there at the next visit all the same", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		device.isFull = true;
		const tab = device.tab();
		await rest();
		type(tab, "stature", "178 cm");
		await rest();
		device.closeAll();
		const again = device.tab();
		await rest();
		expect(shows(again, "stature", "178 cm")).toBe(true);
		expect(again.view.state).not.toBe("saved");
		server.isDown = false;
		await again.sync();
		expect(server.answers).toEqual({ stature: "178 cm" });
		expect(device.texts.length).toBe(0);
	});

	test("does not say that all is saved before it has looked what lies on the device", async () => {
		const tab = new FakeDevice("tablet", new FakeServer()).tab();
		expect(tab.view.state).toBe("opening");
		await rest();
		expect(tab.view.state).toBe("saved");
	});

	test("a page made just now is as of then, and never as of later than this device's clock", () => {
		const device = new FakeDevice("tablet", new FakeServer());
		const asOf = (made: string | null) =>
			device.tab({ asOf: made }).view.fitting.asOf;
		expect(asOf("2029-12-31T23:59:00.000Z")).toBe("2029-12-31T23:59:00.000Z");
		expect(asOf("2030-01-01T00:05:00.000Z")).toBe("2030-01-01T00:00:00.000Z");
		expect(asOf(null)).toBeNull();
	});

	test("what is typed while the storage opens never leaves the page, not for a moment", async () => {
		const server = new FakeServer();
		const device = new FakeDevice("tablet", server);
		const before = device.tab();
		type(before, "stature", "17");
		await before.sync();
		device.closeAll();
		const tab = device.tab();
		type(tab, "stature", "178");
		const seen = new Set<unknown>();
		tab.subscribe(() => seen.add(tab.view.answers.stature));
		await tab.sync();
		await rest();
		expect([...seen]).toEqual(["178"]);
		expect(server.answers.stature).toBe("178");
		expect(server.conflicts).toEqual([]);
	});

	test("typing on while the answer is under way loses nothing on the page or on the device", async () => {
		const server = new FakeServer();
		const device = new FakeDevice("tablet", server);
		const tab = device.tab();
		await rest();
		type(tab, "stature", "17");
		const sending = tab.sync();
		await rest();
		type(tab, "stature", "178");
		await sending;
		await tab.sync();
		expect(server.answers.stature).toBe("178");
		expect(server.conflicts).toEqual([]);
		expect(await (await device.store()).changesOf(FITTING_ID)).toEqual([]);
	});

	test("a page older than what lies on the device shows what lies there", async () => {
		const server = new FakeServer();
		const device = new FakeDevice("tablet", server);
		const first = device.tab();
		type(first, "stature", "178 cm");
		await first.sync();
		device.closeAll();
		server.isDown = true;
		const stale = device.tab({ answers: {}, revision: 1 });
		await rest();
		expect(shows(stale, "stature", "178 cm")).toBe(true);
	});

	test("says what neither device nor server took, and when the server has it after all", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		const tab = device.tab();
		await rest();
		device.isFull = true;
		type(tab, "stature", "178 cm");
		await tab.sync();
		expect(tab.view.state).toBe("unkept");
		server.isDown = false;
		await tab.sync();
		expect(tab.view.state).toBe("saved");
		expect(server.answers.stature).toBe("178 cm");
	});

	test("works without any storage as long as the server answers", async () => {
		const server = new FakeServer();
		const device = new FakeDevice("tablet", server);
		device.hasStorage = false;
		const tab = device.tab();
		type(tab, "stature", "178 cm");
		await tab.sync();
		expect(tab.view.state).toBe("saved");
		server.isDown = true;
		type(tab, "age", "41");
		await tab.sync();
		expect(tab.view.state).toBe("unkept");
	});

	test("a fitting taken out of the records is said to be gone, and nothing is sent on", async () => {
		const server = new FakeServer();
		const tab = new FakeDevice("tablet", server).tab();
		server.isGone = true;
		type(tab, "stature", "178 cm");
		expect(await tab.sync()).toBe(false);
		expect(tab.view.state).toBe("gone");
		expect(shows(tab, "stature", "178 cm")).toBe(true);
		const { length } = server.requests;
		await tab.sync();
		expect(server.requests).toHaveLength(length);
	});
});

describe("damage on the device", () => {
	test("is set aside as it was, and the other answers go on", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		const tab = device.tab();
		await rest();
		type(tab, "stature", "178 cm");
		type(tab, "age", "41");
		await rest();
		device.closeAll();
		await device.put("changes", {
			fittingId: FITTING_ID,
			field: "age",
			after: { is: "no answer" },
		});
		server.isDown = false;
		const again = device.tab();
		await again.sync();
		expect(again.view.hasDamage).toBe(true);
		expect(server.answers).toEqual({ stature: "178 cm" });
		const [damaged, ...more] = await (await device.store()).damaged();
		expect(more).toEqual([]);
		expect(damaged?.text).toContain("no answer");
		expect(damaged?.store).toBe("changes");
	});

	test("of the fitting itself leaves the page's own answers", async () => {
		const server = new FakeServer();
		server.answers = { stature: "178 cm" };
		const device = new FakeDevice("tablet", server);
		await device.put("fittings", { id: FITTING_ID, revision: "many" });
		const tab = device.tab({ answers: { stature: "178 cm" } });
		await tab.sync();
		expect(tab.view).toMatchObject({ hasDamage: true, state: "saved" });
		expect(shows(tab, "stature", "178 cm")).toBe(true);
	});
});

describe("two tabs of one device", () => {
	test("show each other's answers and have no conflict with themselves", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		const [one, other] = [device.tab(), device.tab()];
		await rest();
		type(one, "stature", "178 cm");
		await rest();
		expect(shows(other, "stature", "178 cm")).toBe(true);
		type(other, "stature", "179 cm");
		await rest();
		server.isDown = false;
		await Promise.all([one.sync(), other.sync()]);
		await rest();
		expect(server.answers.stature).toBe("179 cm");
		expect(server.conflicts).toEqual([]);
		for (const tab of [one, other]) {
			expect(shows(tab, "stature", "179 cm")).toBe(true);
			expect(tab.view.state).toBe("saved");
		}
	});

	test("what one types while it hears of the other stays", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		const [one, other] = [device.tab(), device.tab()];
		await rest();
		type(one, "age", "4");
		type(other, "stature", "1");
		type(other, "stature", "17");
		type(one, "age", "41");
		type(other, "stature", "178");
		await rest();
		for (const tab of [one, other]) {
			expect(shows(tab, "stature", "178")).toBe(true);
			expect(shows(tab, "age", "41")).toBe(true);
		}
	});
});

describe("two devices", () => {
	const meet = async () => {
		const server = new FakeServer();
		const first = new FakeDevice("first", server).tab();
		const second = new FakeDevice("second", server).tab();
		await rest();
		server.isDown = true;
		type(first, "armSpan", "180 cm");
		type(second, "armSpan", "184 cm");
		await rest();
		server.isDown = false;
		await first.sync();
		await second.sync();
		await first.sync();
		return { server, first, second };
	};

	test("both see both values, whose they are, and one tap on either settles it for both", async () => {
		const { server, first, second } = await meet();
		for (const tab of [first, second]) {
			expect(shows(tab, "armSpan", "184 cm")).toBe(true);
			expect(tab.view.conflicts).toMatchObject([
				{
					field: "armSpan",
					came: { answer: "184 cm", from: { deviceName: "second" } },
					stood: { answer: "180 cm", from: { deviceName: "first" } },
				},
			]);
		}
		first.settle("armSpan", "180 cm");
		expect(first.view.conflicts).toEqual([]);
		await first.sync();
		await second.sync();
		expect(server.answers.armSpan).toBe("180 cm");
		expect(second.view.conflicts).toEqual([]);
		expect(shows(second, "armSpan", "180 cm")).toBe(true);
		// The value that was not taken is still in what the server stored.
		expect(server.log.map(({ change }) => change.after)).toContain("184 cm");
	});

	test("settled without a network it stays settled on the page, and on the server later", async () => {
		const { server, first, second } = await meet();
		server.isDown = true;
		second.settle("armSpan", "184 cm");
		await second.sync();
		expect(second.view.conflicts).toEqual([]);
		expect(second.view.state).toBe("on-device");
		server.isDown = false;
		await second.sync();
		await first.sync();
		expect(server.conflicts).toEqual([]);
		expect(first.view.conflicts).toEqual([]);
		expect(shows(first, "armSpan", "184 cm")).toBe(true);
	});
});

describe("a spec asked for", () => {
	test("is saved at once where the server answers", async () => {
		const server = new FakeServer();
		const tab = new FakeDevice("tablet", server).tab();
		expect(await tab.save(ASKED)).toMatchObject({ kind: "saved", number: 7 });
		expect(tab.view.save).toBeNull();
	});

	test("without a network waits on the device with what was seen, and is saved once, also after a lost answer and a reload", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		const tab = device.tab();
		type(tab, "stature", "178 cm");
		expect(await tab.save(ASKED)).toEqual({ kind: "queued" });
		expect(await tab.save(ASKED)).toEqual({ kind: "queued" });
		expect(tab.view.save?.seen).toEqual(SEEN);
		device.closeAll();

		server.isDown = false;
		server.losesAnswers = true;
		const again = device.tab();
		await again.sync();
		server.losesAnswers = false;
		await again.sync();
		expect(again.view.savedSpec).toEqual({ number: 7, revision: 1 });
		expect(server.saved.size).toBe(1);
		expect(server.requests.at(-1)?.save?.answers).toEqual({
			stature: "178 cm",
		});
		await again.sync();
		expect(server.requests.at(-1)?.save).toBeUndefined();
	});

	test("asked for again with other figures is another, and replaces the one that waits", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const tab = new FakeDevice("tablet", server).tab();
		await tab.save(ASKED);
		const first = tab.view.save?.requestKey;
		await tab.save({ ...ASKED, seen: { ...SEEN, massG: 540 } });
		expect(tab.view.save?.requestKey).not.toBe(first);
		server.isDown = false;
		await tab.sync();
		expect([...server.saved.keys()]).toHaveLength(1);
	});

	test("refused later is told, kept until seen, and not sent again", async () => {
		const server = new FakeServer();
		server.isDown = true;
		const device = new FakeDevice("tablet", server);
		const tab = device.tab();
		await tab.save(ASKED);
		server.isDown = false;
		server.refuseSaves = ["the figures are others"];
		await tab.sync();
		expect(tab.view.save?.refusal).toEqual(["the figures are others"]);
		device.closeAll();
		const again = device.tab();
		await again.sync();
		expect(again.view.save?.refusal).toEqual(["the figures are others"]);
		expect(server.requests.at(-1)?.save).toBeUndefined();
		await again.dropSave();
		expect(await (await device.store()).save(FITTING_ID)).toBeNull();
	});
});

describe("a fitting begun on the device", () => {
	const START = {
		requestKey: "0b8f8bb8-1111-4111-8111-111111111111",
		player: {
			kind: "new" as const,
			id: "0b8f8bb8-2222-4222-8222-222222222222",
			name: "Invented",
		},
	};
	test("goes to the server with its key until that answers, and then has its number", async () => {
		const server = new FakeServer();
		server.losesAnswers = true;
		const device = new FakeDevice("tablet", server);
		const begun = { number: null, revision: 0, start: START };
		const tab = device.tab(begun);
		type(tab, "stature", "178 cm");
		await tab.sync();
		expect(tab.view.state).toBe("on-device");
		device.closeAll();
		server.losesAnswers = false;
		const again = device.tab(begun);
		await again.sync();
		expect(again.view.fitting).toMatchObject({ number: 12, start: null });
		expect(again.view.state).toBe("saved");
		expect(
			server.requests.every(
				({ start }) => start?.requestKey === START.requestKey,
			),
		).toBe(true);
		type(again, "age", "41");
		await again.sync();
		expect(server.requests.at(-1)?.start).toBeUndefined();
	});
});

/**
 * Tabs of two devices that type, are closed and opened, send and lose answers, in any order: what was
 * typed last on a device is shown there until somebody who knew it changed it, all end alike, and
 * every text that reached the server stays in what it stored.
 */
test("nothing typed is lost, whatever happens to tabs and network", async () => {
	const FIELDS: readonly FieldName[] = ["stature", "hand"];
	const step = fc.record({
		device: fc.constantFrom(0, 1),
		tab: fc.constantFrom(0, 1),
		act: fc.oneof(
			fc.record({
				field: fc.constantFrom(...FIELDS),
				text: fc.constantFrom("1", "2", "3", ""),
			}),
			fc.constantFrom("sync", "lost", "down", "reopen", "rest"),
		),
	});
	await fc.assert(
		fc.asyncProperty(fc.array(step, { maxLength: 25 }), async (steps) => {
			const server = new FakeServer();
			const devices = ["first", "second"].map(
				(name) => new FakeDevice(name, server),
			);
			const tabs = new Map<string, FittingKeeper>();
			const tabOf = async (device: number, tab: number) => {
				const name = `${device}.${tab}`;
				const known = tabs.get(name);
				if (known !== undefined) return known;
				const opened = devices[device]?.tab() as FittingKeeper;
				tabs.set(name, opened);
				await rest();
				return opened;
			};
			for (const { device, tab, act } of steps) {
				const keeper = await tabOf(device, tab);
				server.isDown = act === "down";
				server.losesAnswers = act === "lost";
				if (typeof act === "object") {
					type(keeper, act.field, act.text);
					expect(shows(keeper, act.field, act.text || null)).toBe(true);
				} else if (act === "rest") await rest();
				else if (act === "reopen") {
					keeper.close();
					tabs.delete(`${device}.${tab}`);
				} else await keeper.sync();
			}
			server.isDown = false;
			server.losesAnswers = false;
			await rest();
			for (let i = 0; i < 2; i++)
				for (const device of devices.keys())
					await (await tabOf(device, 0)).sync();
			for (const device of devices) device.closeAll();
			const last = devices.map((device) => device.tab());
			for (const keeper of last) {
				await keeper.sync();
				expect(keeper.view.waitingCount).toBe(0);
			}
			for (const keeper of last) await keeper.sync();
			for (const field of FIELDS)
				for (const keeper of last)
					expect(shows(keeper, field, server.answers[field] ?? null)).toBe(
						true,
					);
			const keys = server.log.map(({ change }) => change.key);
			expect(new Set(keys).size).toBe(keys.length);
			for (const { changes } of server.requests)
				for (const { key } of changes) expect(keys).toContain(key);
			for (const device of devices) device.closeAll();
		}),
		{ numRuns: 60 },
	);
});
