import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { type Jots, jotsIn } from "@/app/_device/jots";
import { FittingKeeper, type KeeperTools } from "@/app/_device/keeper";
import type { KeptFitting } from "@/app/_device/records";
import { type DeviceStore, openStore } from "@/app/_device/store";
import {
	type Answer,
	type AnswerChange,
	receive,
	sameAnswer,
} from "@/lib/forms/answer-changes";
import type {
	AnswerConflict,
	SyncAnswer,
	SyncRequest,
} from "@/lib/forms/device-sync";
import type { Answers, FieldName } from "@/lib/forms/fields";

export const FITTING_ID = "fitting-1";

/** One fitting on a server in memory: the pure rules of lib/forms, and answers that may get lost. */
export class FakeServer {
	answers: Answers = {};
	revision = 1;
	readonly log: { change: AnswerChange; deviceId: string }[] = [];
	conflicts: AnswerConflict[] = [];
	readonly saved = new Map<string, { number: number; revision: number }>();
	refuseSaves: string[] | null = null;
	isDown = false;
	/** Stores, but the answer never arrives. */
	losesAnswers = false;
	isGone = false;
	requests: SyncRequest[] = [];

	post = async (request: SyncRequest): Promise<SyncAnswer> => {
		if (this.isDown) throw new TypeError("Failed to fetch");
		this.requests.push(request);
		if (this.isGone) return { status: "gone" };
		this.#take(request);
		const answer = this.#answerTo(request);
		if (this.losesAnswers) throw new TypeError("Failed to fetch");
		return structuredClone(answer);
	};

	#take({ changes, device }: SyncRequest): void {
		const { answers, stored } = receive({
			answers: this.answers,
			deviceId: device.id,
			changes: changes as AnswerChange[],
			isKnown: (key) => this.log.some(({ change }) => change.key === key),
			lastOf: (field) => {
				const last = this.log.findLast(({ change }) => change.field === field);
				return last
					? { deviceId: last.deviceId, after: last.change.after }
					: null;
			},
		});
		this.answers = answers;
		if (stored.length > 0) this.revision++;
		for (const { change, overrode } of stored) {
			this.log.push({ change, deviceId: device.id });
			const settles = change.settles ?? [];
			this.conflicts = this.conflicts.filter(({ id }) => !settles.includes(id));
			if (overrode === null) continue;
			this.conflicts.push({
				id: `conflict-${change.key}`,
				field: change.field,
				came: { answer: plain(change.after), from: from(device.id) },
				stood: {
					answer: plain(overrode.answer),
					from: overrode.from && from(overrode.from.deviceId),
				},
			});
		}
	}

	#answerTo({ fittingId, save }: SyncRequest): SyncAnswer {
		let saved: Extract<SyncAnswer, { status: "kept" }>["saved"] = null;
		if (save && this.refuseSaves) {
			saved = { ok: false, messages: this.refuseSaves };
		} else if (save) {
			const known = this.saved.get(save.requestKey) ?? {
				number: 7,
				revision: this.saved.size + 1,
			};
			this.saved.set(save.requestKey, known);
			saved = { ok: true, ...known };
		}
		return {
			status: "kept",
			fitting: {
				id: fittingId,
				number: 12,
				player: { id: "player-1", name: "Invented" },
				isDemo: true,
				answers: this.answers as never,
				revision: this.revision,
				takenWishes: [],
				specNumber: null,
			},
			conflicts: this.conflicts,
			refused: [],
			saved,
		};
	}
}

const plain = (answer: Answer) =>
	answer === null || typeof answer === "string" ? answer : [...answer];
const from = (deviceId: string) => ({
	deviceId,
	deviceName: deviceId,
	by: "",
	at: "2030-01-01T00:00:00.000Z",
});

/** What the browser's own list of texts does, in memory. */
export class FakeTexts {
	readonly #texts = new Map<string, string>();
	get length(): number {
		return this.#texts.size;
	}
	key = (i: number): string | null => [...this.#texts.keys()][i] ?? null;
	getItem = (place: string): string | null => this.#texts.get(place) ?? null;
	setItem = (place: string, text: string): void => {
		this.#texts.set(place, text);
	};
	removeItem = (place: string): void => {
		this.#texts.delete(place);
	};
}

/** A device: its own storage, and any number of tabs on it. */
export class FakeDevice {
	readonly #databases = new IDBFactory();
	readonly #tabs = new Set<() => void>();
	readonly #open: FittingKeeper[] = [];
	isFull = false;
	hasStorage = true;
	clock = new Date("2030-01-01T00:00:00.000Z");
	/** The browser's list of texts. */
	readonly texts = new FakeTexts();
	readonly jots: Jots = jotsIn(this.texts);
	/** Until it is let go, the storage opens for nobody. */
	opening: Promise<void> = Promise.resolve();

	constructor(
		readonly name: string,
		readonly server: FakeServer,
	) {}

	store = async (): Promise<DeviceStore> => {
		globalThis.indexedDB = this.#databases;
		return openStore();
	};

	/** Raw access, to damage what lies there. */
	async put(table: string, value: unknown): Promise<void> {
		(await this.store()).close();
		await new Promise<void>((done, fail) => {
			const asked = this.#databases.open("coaching");
			asked.onerror = () => fail(asked.error);
			asked.onsuccess = () => {
				const tx = asked.result.transaction(table, "readwrite");
				tx.objectStore(table).put(value);
				tx.oncomplete = () => {
					asked.result.close();
					done();
				};
			};
		});
	}

	#tools(): KeeperTools {
		return {
			openStore: async () => {
				await this.opening;
				if (!this.hasStorage) return null;
				const store = await this.store();
				const put = store.putChange.bind(store);
				store.putChange = (change) =>
					this.isFull
						? Promise.reject(new DOMException("full", "QuotaExceededError"))
						: put(change);
				return store;
			},
			deviceOf: async () => ({ id: this.name, name: this.name, by: "" }),
			post: this.server.post,
			now: () => this.clock,
			newKey: () => crypto.randomUUID(),
			jots: () => this.jots,
			channel: (_, onChange) => {
				this.#tabs.add(onChange);
				return {
					tell: () => {
						for (const tab of this.#tabs) if (tab !== onChange) tab();
					},
					close: () => void this.#tabs.delete(onChange),
				};
			},
		};
	}

	/** A tab with the fitting as the page was made; by default as it was when it began. */
	tab(more: Partial<KeptFitting> = {}): FittingKeeper {
		const keeper = new FittingKeeper(this.#tools(), {
			id: FITTING_ID,
			number: 12,
			player: { id: "player-1", name: "Invented" },
			isDemo: true,
			answers: {},
			revision: 1,
			takenWishes: [],
			specNumber: null,
			conflicts: [],
			start: null,
			asOf: null,
			openedAt: this.clock.toISOString(),
			...more,
		});
		keeper.open();
		this.#open.push(keeper);
		return keeper;
	}

	/** Every tab is closed, whatever it was doing. */
	closeAll(): void {
		for (const keeper of this.#open.splice(0)) keeper.close();
	}
}

export const type = (
	keeper: FittingKeeper,
	field: FieldName,
	answer: Answer,
): void => keeper.type([[field, answer]]);

/** Until what was asked of the storage is done. */
export const rest = async (): Promise<void> => {
	for (let i = 0; i < 20; i++) await new Promise((done) => setTimeout(done, 0));
};

export const shows = (
	keeper: FittingKeeper,
	field: FieldName,
	answer: Answer,
): boolean => sameAnswer(keeper.view.answers[field], answer);
