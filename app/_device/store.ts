import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { z } from "zod";
import {
	type AnswerChange,
	afterAcknowledged,
} from "@/lib/forms/answer-changes";
import { type Device, deviceSchema } from "@/lib/forms/device-sync";
import {
	type Damaged,
	type KeptChange,
	type KeptFitting,
	type KeptWorkshop,
	type KnownPlayers,
	keptChangeSchema,
	keptFittingSchema,
	keptWorkshopSchema,
	knownPlayersSchema,
	type QueuedSave,
	queuedSaveSchema,
} from "./records";

/** Stored values are `unknown`: they may have been written by another version of the app. */
interface Tables extends DBSchema {
	fittings: { key: string; value: unknown };
	changes: {
		key: [string, string];
		value: unknown;
		indexes: { fitting: string };
	};
	saves: { key: string; value: unknown };
	/** Single values by name: this device, the players seen last. */
	notes: { key: string; value: unknown };
	damaged: { key: number; value: Omit<Damaged, "id"> };
}
type TableName = "fittings" | "changes" | "saves" | "notes";

const NAME = "coaching";
const VERSION = 1;

/**
 * Opens the device's own storage. Rejects where the browser has none or refuses it. `onClosed`: it was
 * closed from outside, for a newer version of the app or by the browser.
 */
export async function openStore(
	onClosed: () => void = () => undefined,
): Promise<DeviceStore> {
	const opened = await openDB<Tables>(NAME, VERSION, {
		upgrade(db) {
			db.createObjectStore("fittings", { keyPath: "id" });
			db.createObjectStore("changes", {
				keyPath: ["fittingId", "field"],
			}).createIndex("fitting", "fittingId");
			db.createObjectStore("saves", { keyPath: "fittingId" });
			db.createObjectStore("notes");
			db.createObjectStore("damaged", { autoIncrement: true });
		},
		blocking(_current, _wanted, event) {
			(event.target as IDBDatabase).close();
			onClosed();
		},
		terminated: onClosed,
	});
	return new DeviceStore(opened);
}

/** What the coach's work leaves on the device. Everything typed is written before anything else happens to it. */
export class DeviceStore {
	readonly #db: IDBPDatabase<Tables>;

	constructor(db: IDBPDatabase<Tables>) {
		this.#db = db;
	}

	close(): void {
		this.#db.close();
	}

	/** What is there and reads well; what does not is set aside under `damaged`, never dropped. */
	async #read<Schema extends z.ZodType>(
		table: TableName,
		key: IDBValidKey,
		schema: Schema,
	): Promise<z.output<Schema> | null> {
		const value = await this.#db.get(table, key as never);
		if (value === undefined) return null;
		const parsed = schema.safeParse(value);
		if (parsed.success) return parsed.data;
		await this.#setAside(table, key, value);
		return null;
	}

	async #setAside(
		table: TableName,
		key: IDBValidKey,
		value: unknown,
	): Promise<void> {
		const tx = this.#db.transaction([table, "damaged"], "readwrite");
		await Promise.all([
			tx.objectStore("damaged").add({
				store: table,
				text: JSON.stringify(value) ?? String(value),
				foundAt: new Date().toISOString(),
			}),
			tx.objectStore(table).delete(key as never),
			tx.done,
		]);
	}

	async #readAll<Schema extends z.ZodType>(
		table: TableName,
		schema: Schema,
	): Promise<z.output<Schema>[]> {
		const found: z.output<Schema>[] = [];
		for (const key of await this.#db.getAllKeys(table)) {
			const value = await this.#read(table, key, schema);
			if (value !== null) found.push(value);
		}
		return found;
	}

	fitting = (id: string): Promise<KeptFitting | null> =>
		this.#read("fittings", id, keptFittingSchema);

	/** Last opened first. */
	async fittings(): Promise<KeptFitting[]> {
		const kept = await this.#readAll("fittings", keptFittingSchema);
		return kept.sort((a, b) => b.openedAt.localeCompare(a.openedAt));
	}

	async putFitting(fitting: KeptFitting): Promise<void> {
		await this.#db.put("fittings", fitting);
	}

	/** Takes a fitting off the device with all that waits for it. */
	async dropFitting(id: string): Promise<void> {
		const keys = await this.#db.getAllKeysFromIndex("changes", "fitting", id);
		const tx = this.#db.transaction(
			["fittings", "changes", "saves"],
			"readwrite",
		);
		await Promise.all([
			tx.objectStore("fittings").delete(id),
			tx.objectStore("saves").delete(id),
			...keys.map((key) => tx.objectStore("changes").delete(key)),
			tx.done,
		]);
	}

	async changesOf(fittingId: string): Promise<KeptChange[]> {
		const keys = await this.#db.getAllKeysFromIndex(
			"changes",
			"fitting",
			fittingId,
		);
		const found: KeptChange[] = [];
		for (const key of keys) {
			const change = await this.#read("changes", key, keptChangeSchema);
			if (change !== null) found.push(change);
		}
		return found;
	}

	/** How many changes wait, by fitting. */
	async waitingCounts(): Promise<Map<string, number>> {
		const counts = new Map<string, number>();
		for (const [fittingId] of await this.#db.getAllKeys("changes"))
			counts.set(fittingId, (counts.get(fittingId) ?? 0) + 1);
		return counts;
	}

	/**
	 * Writes a change. The request and its commit are handed over before this returns, so that closing
	 * the page right after loses nothing.
	 */
	putChange(change: KeptChange): Promise<void> {
		const tx = this.#db.transaction("changes", "readwrite");
		const put = tx.store.put(change);
		tx.commit();
		return Promise.all([put, tx.done]).then(() => undefined);
	}

	/**
	 * Takes up a change that was only jotted down. A later one of its field stays; an earlier one gives
	 * way and hands on what it started from and what it settles.
	 */
	async takeUp(jotted: KeptChange): Promise<void> {
		const tx = this.#db.transaction("changes", "readwrite");
		const there = keptChangeSchema.safeParse(
			await tx.store.get([jotted.fittingId, jotted.field]),
		).data;
		if (there === undefined) await tx.store.put(jotted);
		else if (there.key !== jotted.key && there.typedAt < jotted.typedAt)
			await tx.store.put({
				...jotted,
				before: there.before,
				settles: [
					...new Set([...(there.settles ?? []), ...(jotted.settles ?? [])]),
				],
			});
		await tx.done;
	}

	/** Sets aside a text that was found elsewhere on the device and could not be read. */
	async setAsideText(from: string, text: string): Promise<void> {
		await this.#db.add("damaged", {
			store: from,
			text,
			foundAt: new Date().toISOString(),
		});
	}

	/** Takes out what the server has by now; a text typed meanwhile stays and starts from what was sent. */
	async acknowledge(
		fittingId: string,
		sent: readonly AnswerChange[],
	): Promise<void> {
		const tx = this.#db.transaction("changes", "readwrite");
		for (const one of sent) {
			const key: [string, string] = [fittingId, one.field];
			const now = keptChangeSchema.safeParse(await tx.store.get(key));
			if (!now.success) continue;
			const left = afterAcknowledged(now.data, one);
			if (left === null) await tx.store.delete(key);
			else await tx.store.put({ ...left, fittingId });
		}
		await tx.done;
	}

	/** Sets aside changes the server will never take. */
	async refuse(refused: readonly KeptChange[]): Promise<void> {
		for (const change of refused)
			await this.#setAside("changes", [change.fittingId, change.field], change);
	}

	save = (fittingId: string): Promise<QueuedSave | null> =>
		this.#read("saves", fittingId, queuedSaveSchema);

	async putSave(save: QueuedSave): Promise<void> {
		await this.#db.put("saves", save);
	}

	/** Takes a save out, unless another was asked for meanwhile. */
	async dropSave(fittingId: string, requestKey: string): Promise<void> {
		const tx = this.#db.transaction("saves", "readwrite");
		const now = queuedSaveSchema.safeParse(await tx.store.get(fittingId));
		if (!now.success || now.data.requestKey === requestKey)
			await tx.store.delete(fittingId);
		await tx.done;
	}

	device = (): Promise<Device | null> =>
		this.#read("notes", "device", deviceSchema);

	async putDevice(device: Device): Promise<void> {
		await this.#db.put("notes", device, "device");
	}

	/** The device as it was first noted down, where two tabs note it at once. */
	async deviceOr(fresh: Device): Promise<Device> {
		const known = await this.device();
		if (known !== null) return known;
		const tx = this.#db.transaction("notes", "readwrite");
		const now = deviceSchema.safeParse(await tx.store.get("device"));
		if (!now.success) await tx.store.put(fresh, "device");
		await tx.done;
		return now.success ? now.data : fresh;
	}

	knownPlayers = (): Promise<KnownPlayers | null> =>
		this.#read("notes", "players", knownPlayersSchema);

	async putKnownPlayers(players: KnownPlayers): Promise<void> {
		await this.#db.put("notes", players, "players");
	}

	workshop = (): Promise<KeptWorkshop | null> =>
		this.#read("notes", "workshop", keptWorkshopSchema);

	async putWorkshop(workshop: KeptWorkshop): Promise<void> {
		await this.#db.put("notes", workshop, "workshop");
	}

	async damaged(): Promise<Damaged[]> {
		const keys = await this.#db.getAllKeys("damaged");
		const values = await this.#db.getAll("damaged");
		return values.map((value, i) => ({ ...value, id: keys[i] ?? 0 }));
	}

	async dropDamaged(id: number): Promise<void> {
		await this.#db.delete("damaged", id);
	}
}
