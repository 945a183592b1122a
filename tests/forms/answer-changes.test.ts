import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	type Answer,
	type AnswerChange,
	afterAcknowledged,
	changeTo,
	differingFields,
	type LastChange,
	receive,
	type StoredChange,
	sameAnswer,
	shownAnswers,
	typedAtOf,
} from "@/lib/forms/answer-changes";
import type { Answers, FieldName } from "@/lib/forms/fields";

const TYPED_AT = "2030-01-01T10:00:00.000Z";
let keys = 0;
const newKey = () => `key-${++keys}`;

/** The server of these tests: answers, and every change it stored. */
class Server {
	answers: Answers = {};
	log: (StoredChange<LastChange & { key: string }> & { deviceId: string })[] =
		[];
	take(deviceId: string, changes: readonly AnswerChange[]): Answers {
		const { answers, stored } = receive({
			answers: this.answers,
			deviceId,
			changes,
			isKnown: (key) => this.log.some(({ change }) => change.key === key),
			lastOf: (field) => {
				const last = this.log.findLast(({ change }) => change.field === field);
				return last
					? {
							deviceId: last.deviceId,
							after: last.change.after,
							key: last.change.key,
						}
					: null;
			},
		});
		this.answers = answers;
		this.log.push(...stored.map((one) => ({ ...one, deviceId })));
		return answers;
	}
}

/** A device with any number of tabs: one store, one word of its own for each field. */
class Device {
	base: Answers = {};
	waiting = new Map<FieldName, AnswerChange>();
	constructor(readonly id: string) {}
	type(field: FieldName, after: Answer): void {
		this.waiting.set(
			field,
			changeTo({
				field,
				after,
				base: this.base,
				waiting: this.waiting.get(field),
				key: newKey(),
				typedAt: TYPED_AT,
			}),
		);
	}
	get shown(): Answers {
		return shownAnswers(this.base, this.waiting.values());
	}
	acknowledge(sent: readonly AnswerChange[], answers: Answers): void {
		for (const one of sent) {
			const waiting = this.waiting.get(one.field);
			if (waiting === undefined) continue;
			const left = afterAcknowledged(waiting, one);
			if (left === null) this.waiting.delete(one.field);
			else this.waiting.set(one.field, left);
		}
		this.base = answers;
	}
	sync(server: Server): void {
		const sent = [...this.waiting.values()];
		this.acknowledge(sent, server.take(this.id, sent));
	}
}

describe("one device", () => {
	test("a lost answer and the same changes again store one change", () => {
		const server = new Server();
		const tablet = new Device("tablet");
		tablet.type("stature", "178 cm");
		server.take("tablet", [...tablet.waiting.values()]);
		tablet.sync(server);
		expect(server.log).toHaveLength(1);
		expect(tablet.waiting.size).toBe(0);
		expect(server.answers).toEqual({ stature: "178 cm" });
	});

	test("typing on while an answer is under way keeps what was typed, without a conflict", () => {
		const server = new Server();
		const tablet = new Device("tablet");
		tablet.type("stature", "17");
		const sent = [...tablet.waiting.values()];
		const answers = server.take("tablet", sent);
		tablet.type("stature", "178");
		tablet.acknowledge(sent, answers);
		expect(tablet.shown).toEqual({ stature: "178" });
		tablet.sync(server);
		expect(server.answers).toEqual({ stature: "178" });
		expect(server.log.map(({ overrode }) => overrode)).toEqual([null, null]);
	});

	test("an answer that was lost, then typed over, follows on itself", () => {
		const server = new Server();
		const tablet = new Device("tablet");
		tablet.type("stature", "17");
		server.take("tablet", [...tablet.waiting.values()]);
		tablet.type("stature", "178");
		tablet.sync(server);
		expect(server.log.map(({ overrode }) => overrode)).toEqual([null, null]);
		expect(server.answers.stature).toBe("178");
	});

	test("an old request that arrives late takes nothing back", () => {
		const server = new Server();
		const tablet = new Device("tablet");
		tablet.type("stature", "17");
		const old = [...tablet.waiting.values()];
		tablet.sync(server);
		tablet.type("stature", "178");
		tablet.sync(server);
		server.take("tablet", old);
		expect(server.answers.stature).toBe("178");
	});

	test("left out again is left out", () => {
		const server = new Server();
		const tablet = new Device("tablet");
		tablet.type("gripReadings", ["29 mm"]);
		tablet.sync(server);
		tablet.type("gripReadings", ["", " "]);
		expect(tablet.shown).toEqual({});
		tablet.sync(server);
		expect(server.answers).toEqual({});
	});
});

describe("two devices", () => {
	const both = () => {
		const server = new Server();
		const first = new Device("first");
		const second = new Device("second");
		first.type("stature", "178 cm");
		first.sync(server);
		second.sync(server);
		return { server, first, second };
	};

	test("different fields meet without a conflict", () => {
		const { server, first, second } = both();
		first.type("hand", "right");
		second.type("age", "41");
		first.sync(server);
		second.sync(server);
		expect(server.answers).toEqual({
			stature: "178 cm",
			hand: "right",
			age: "41",
		});
		expect(server.log.every(({ overrode }) => overrode === null)).toBe(true);
	});

	test("one field in ignorance of each other: the later arrival stands, the other is kept beside it with its origin", () => {
		const { server, first, second } = both();
		first.type("armSpan", "180 cm");
		second.type("armSpan", "184 cm");
		second.sync(server);
		first.sync(server);
		expect(server.answers.armSpan).toBe("180 cm");
		expect(server.log.at(-1)?.overrode).toMatchObject({
			answer: "184 cm",
			from: { deviceId: "second" },
		});
	});

	test("a change by somebody who knew the other's is no conflict", () => {
		const { server, first, second } = both();
		first.type("stature", "179 cm");
		first.sync(server);
		second.sync(server);
		second.type("stature", "180 cm");
		second.sync(server);
		expect(server.log.at(-1)?.overrode).toBeNull();
	});

	test("the same change on both is no conflict, and sent again reverts nothing", () => {
		const { server, first, second } = both();
		first.type("hand", "left");
		second.type("hand", "left");
		first.sync(server);
		// Stored, but the answer is lost.
		server.take("second", [...second.waiting.values()]);
		first.type("hand", "right");
		first.sync(server);
		second.sync(server);
		expect(server.log.every(({ overrode }) => overrode === null)).toBe(true);
		expect(server.answers.hand).toBe("right");
	});

	test("a lost answer does not bring back what another device has changed since", () => {
		const { server, first, second } = both();
		first.type("stature", "181 cm");
		server.take("first", [...first.waiting.values()]);
		second.sync(server);
		second.type("stature", "182 cm");
		second.sync(server);
		first.sync(server);
		expect(server.answers.stature).toBe("182 cm");
		expect(first.shown.stature).toBe("182 cm");
		expect(server.log.every(({ overrode }) => overrode === null)).toBe(true);
	});

	test("a value no device set, such as from a trial, gives way with no origin told", () => {
		const { server, first } = both();
		server.answers = { ...server.answers, stature: "190 cm" };
		first.type("stature", "179 cm");
		first.sync(server);
		expect(server.log.at(-1)?.overrode).toEqual({
			answer: "190 cm",
			from: null,
		});
	});
});

/**
 * Devices that type, send, lose answers, send again and send twice, in any order. Whatever happens,
 * every value that gave way to a device that had not seen it stands beside the one that took its place.
 */
test("nothing is lost and everybody ends with the same answers, whatever the network does", () => {
	const DEVICES = ["a", "b", "c"] as const;
	const FIELDS = ["stature", "hand", "gripReadings"] as const;
	const step = fc.oneof(
		fc.record({
			kind: fc.constant("type" as const),
			device: fc.constantFrom(...DEVICES),
			field: fc.constantFrom(...FIELDS),
			text: fc.constantFrom("1", "2", "3", ""),
		}),
		fc.record({
			kind: fc.constantFrom(
				"send" as const,
				"lose-request" as const,
				"lose-answer" as const,
				"late-answer" as const,
			),
			device: fc.constantFrom(...DEVICES),
		}),
		fc.record({
			kind: fc.constant("replay" as const),
			device: fc.constantFrom(...DEVICES),
		}),
	);
	fc.assert(
		fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
			const server = new Server();
			const devices = new Map(DEVICES.map((id) => [id, new Device(id)]));
			const wire = new Map<string, AnswerChange[]>();
			/** Values a device has seen on each field, by its own typing or from the server. */
			const arrived: { deviceId: string; change: AnswerChange }[] = [];
			const late = new Map<string, () => void>();
			for (const { kind, device: id, ...rest } of steps) {
				const device = devices.get(id);
				if (device === undefined) throw new Error(id);
				const deliver = (changes: AnswerChange[]) => {
					for (const change of changes) arrived.push({ deviceId: id, change });
					return server.take(id, changes);
				};
				if (kind === "type" && "field" in rest) {
					const { field, text } = rest as {
						field: FieldName;
						text: string;
					};
					const answer = field === "gripReadings" ? [text] : text;
					device.type(field, answer);
					expect(sameAnswer(device.shown[field], answer)).toBe(true);
				} else if (kind === "replay") deliver(wire.get(id) ?? []);
				else {
					late.get(id)?.();
					late.delete(id);
					const sent = [...device.waiting.values()];
					wire.set(id, sent);
					if (kind === "lose-request") continue;
					const answers = deliver(sent);
					if (kind === "send") device.acknowledge(sent, answers);
					if (kind === "late-answer")
						late.set(id, () => device.acknowledge(sent, answers));
				}
			}
			for (const finish of late.values()) finish();
			for (const device of devices.values()) device.sync(server);
			for (const device of devices.values()) device.sync(server);
			for (const device of devices.values()) {
				expect(device.waiting.size).toBe(0);
				expect(differingFields(device.shown, server.answers)).toEqual([]);
			}
			// Each key once.
			const stored = server.log.map(({ change }) => change.key);
			expect(new Set(stored).size).toBe(stored.length);
			for (const { change } of arrived) expect(stored).toContain(change.key);
			// Replayed one by one, no value gave way unseen without being kept beside the new one.
			let answers: Answers = {};
			for (const { change, overrode, deviceId } of server.log) {
				const { field } = change;
				const stood = answers[field];
				const by = server.log
					.slice(
						0,
						server.log.findIndex((one) => one.change === change),
					)
					.findLast((one) => one.change.field === field)?.deviceId;
				const isSilent =
					!sameAnswer(stood, change.after) &&
					!sameAnswer(stood, change.before) &&
					by !== deviceId;
				if (isSilent) expect(sameAnswer(overrode?.answer, stood)).toBe(true);
				else expect(overrode).toBeNull();
				answers = shownAnswers(answers, [change]);
			}
			expect(differingFields(answers, server.answers)).toEqual([]);
		}),
		{ numRuns: 400 },
	);
});

describe("typedAtOf", () => {
	const receivedAt = new Date("2030-06-01T12:00:00Z");
	test("counts the age by the device's own clock, however wrong that is", () => {
		expect(
			typedAtOf({
				typedAt: "1999-01-01T00:00:00Z",
				sentAt: "1999-01-01T00:10:00Z",
				receivedAt,
			}),
		).toEqual(new Date("2030-06-01T11:50:00Z"));
	});
	test("knows nothing where the clock was set back in between", () => {
		expect(
			typedAtOf({
				typedAt: "2030-06-01T12:00:00Z",
				sentAt: "2030-06-01T11:00:00Z",
				receivedAt,
			}),
		).toBeNull();
	});
});
