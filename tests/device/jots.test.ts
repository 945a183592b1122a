import { describe, expect, test } from "vitest";
import { jotsIn, takeUpJots } from "@/app/_device/jots";
import type { KeptChange } from "@/app/_device/records";
import { FakeDevice, FakeServer, FakeTexts, FITTING_ID } from "./support/bench";

const change = (more: Partial<KeptChange> = {}): KeptChange => ({
	fittingId: FITTING_ID,
	key: "key-1",
	field: "stature",
	before: null,
	after: "178 cm",
	typedAt: "2030-01-01T10:00:00.000Z",
	...more,
});

describe("jots", () => {
	test("lie by field, and one is taken out only by its own key", () => {
		const jots = jotsIn(new FakeTexts());
		jots.put(change());
		jots.put(change({ key: "key-2", after: "179 cm" }));
		jots.put(change({ key: "key-3", field: "age", after: "41" }));
		jots.drop(change());
		expect(jots.left().changes.map(({ key }) => key)).toEqual([
			"key-2",
			"key-3",
		]);
		jots.drop(change({ key: "key-2" }));
		expect(jots.left().changes.map(({ key }) => key)).toEqual(["key-3"]);
	});

	test("of a fitting are told apart from another's and from what else lies there", () => {
		const texts = new FakeTexts();
		texts.setItem("theme", "dark");
		const jots = jotsIn(texts);
		jots.put(change());
		jots.put(change({ fittingId: "fitting-12", key: "key-2" }));
		expect(jots.left(FITTING_ID).changes).toEqual([change()]);
		jots.dropAllOf(FITTING_ID);
		expect(jots.left().changes.map(({ key }) => key)).toEqual(["key-2"]);
		expect(texts.getItem("theme")).toBe("dark");
	});

	test("without room for them hold nothing up", () => {
		const texts = new FakeTexts();
		texts.setItem = () => {
			throw new DOMException("full", "QuotaExceededError");
		};
		const jots = jotsIn(texts);
		jots.put(change());
		expect(jots.left()).toEqual({ changes: [], unreadable: [] });
	});
});

describe("taken up by the storage", () => {
	const opened = async () => {
		const device = new FakeDevice("tablet", new FakeServer());
		return { ...device, store: await device.store() };
	};

	test("they are there, and jotted no longer", async () => {
		const { store, jots, texts } = await opened();
		jots.put(change());
		await takeUpJots(store, jots);
		expect(await store.changesOf(FITTING_ID)).toEqual([change()]);
		expect(texts.length).toBe(0);
	});

	test("a later change of the field stays as it is", async () => {
		const { store, jots } = await opened();
		const later = change({
			key: "key-2",
			after: "180 cm",
			typedAt: "2030-01-01T10:00:01.000Z",
		});
		await store.putChange(later);
		jots.put(change());
		await takeUpJots(store, jots);
		expect(await store.changesOf(FITTING_ID)).toEqual([later]);
	});

	test("an earlier one hands on what it started from and what it settles", async () => {
		const { store, jots } = await opened();
		await store.putChange(
			change({
				key: "key-0",
				before: "170 cm",
				settles: ["clash"],
				typedAt: "2030-01-01T09:00:00.000Z",
			}),
		);
		jots.put(change({ before: "17" }));
		await takeUpJots(store, jots);
		expect(await store.changesOf(FITTING_ID)).toEqual([
			change({ before: "170 cm", settles: ["clash"] }),
		]);
	});

	test("what reads no more is set aside as it was", async () => {
		const { store, jots, texts } = await opened();
		texts.setItem(`typed:${FITTING_ID}:age`, "{torn");
		texts.setItem(`typed:${FITTING_ID}:stature`, '{"after":178}');
		await takeUpJots(store, jots);
		expect(texts.length).toBe(0);
		const damaged = await store.damaged();
		expect(damaged.map(({ store: from, text }) => [from, text])).toEqual([
			["typed", "{torn"],
			["typed", '{"after":178}'],
		]);
	});

	test("what a full storage refuses stays jotted", async () => {
		const { store, jots } = await opened();
		jots.put(change());
		const full = {
			takeUp: () =>
				Promise.reject(new DOMException("full", "QuotaExceededError")),
			setAsideText: store.setAsideText,
		};
		await takeUpJots(full, jots);
		expect(jots.left().changes).toEqual([change()]);
	});
});
