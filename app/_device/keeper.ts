import {
	type Answer,
	afterAcknowledged,
	changeTo,
	sameAnswer,
	shownAnswers,
} from "@/lib/forms/answer-changes";
import type {
	AnswerConflict,
	Device,
	KeptAnswer,
	SyncAnswer,
	SyncRequest,
} from "@/lib/forms/device-sync";
import type { Answers, FieldName } from "@/lib/forms/fields";
import { asksTheSame, copied, laterOf, requestOf, unsettled } from "./exchange";
import type { Jots } from "./jots";
import { Unacceptable } from "./post";
import type { KeptChange, KeptFitting, QueuedSave } from "./records";
import type { DeviceStore } from "./store";

/** Typing rests this long before it is sent. */
const REST_MS = 700;

/** How safe the answers are. `unkept`: neither server nor device took them. */
export type SaveState =
	/** Not known yet: what an earlier visit left on the device is being looked for. */
	"opening" | "saved" | "saving" | "on-device" | "unkept" | "refused" | "gone";

/** What came of asking for a spec. */
export type SaveOutcome =
	| {
			readonly kind: "saved";
			readonly number: number;
			readonly revision: number;
	  }
	| { readonly kind: "refused"; readonly messages: readonly string[] }
	/** The server did not answer; it is carried out when it does. */
	| { readonly kind: "queued" };

export interface KeeperView {
	readonly fitting: KeptFitting;
	readonly answers: Answers;
	readonly conflicts: readonly AnswerConflict[];
	readonly state: SaveState;
	readonly waitingCount: number;
	/** False once a request went unanswered, until one is answered. */
	readonly isReached: boolean;
	/** A spec asked for and not carried out yet, or refused. */
	readonly save: QueuedSave | null;
	/** A spec that was saved once the server answered again. */
	readonly savedSpec: {
		readonly number: number;
		readonly revision: number;
	} | null;
	/** Something lay on the device that could not be used, and was set aside. */
	readonly hasDamage: boolean;
}

export interface KeeperTools {
	/** Null where the device keeps nothing. */
	readonly openStore: () => Promise<DeviceStore | null>;
	readonly deviceOf: (store: DeviceStore | null) => Promise<Device>;
	readonly post: (request: SyncRequest) => Promise<SyncAnswer>;
	readonly now: () => Date;
	readonly newKey: () => string;
	/** Where what is typed is noted at once, before the storage answers. */
	readonly jots: () => Jots;
	/** Tells other tabs of this device, and is told by them. */
	readonly channel: (
		fittingId: string,
		onChange: () => void,
	) => { readonly tell: () => void; readonly close: () => void };
}

/**
 * Keeps one fitting's answers: on the device before anything else, on the server as soon as it
 * answers, the same in every tab. What is shown is what the server had with this device's own changes
 * over it; whether two devices' words conflict is for the server to tell (lib/forms/answer-changes.ts).
 */
export class FittingKeeper {
	readonly #tools: KeeperTools;
	readonly #jots: Jots;
	readonly #listeners = new Set<() => void>();
	#ready: Promise<void> | null = null;
	#store: DeviceStore | null = null;
	#device: Device | null = null;
	#channel: ReturnType<KeeperTools["channel"]> | null = null;
	#fitting: KeptFitting;
	#changes = new Map<FieldName, KeptChange>();
	/** Keys of changes that the device did not keep. */
	readonly #unkept = new Set<string>();
	/** When each field was last typed in, counted: what is typed while the storage is read is newer than it. */
	readonly #typedAt = new Map<FieldName, number>();
	#count = 0;
	#save: QueuedSave | null = null;
	#savedSpec: KeeperView["savedSpec"] = null;
	#hasDamage = false;
	#isOpen = false;
	#isReached = true;
	#isRefused = false;
	#isGone = false;
	#isClosed = false;
	#syncing: Promise<boolean> | null = null;
	#wantsAnother = false;
	#rest: ReturnType<typeof setTimeout> | undefined;
	#view: KeeperView;

	/** `fitting.asOf` may be by the server's clock: one ahead of this device's counts as now. */
	constructor(tools: KeeperTools, fitting: KeptFitting) {
		this.#tools = tools;
		this.#jots = tools.jots();
		const now = tools.now().toISOString();
		const isAhead = fitting.asOf !== null && fitting.asOf > now;
		this.#fitting = isAhead ? { ...fitting, asOf: now } : fitting;
		this.#view = this.#draw();
	}

	/** Begins to keep; opened again after closing it goes on. Before, what is typed stays in memory. */
	open(): void {
		this.#isClosed = false;
		this.#ready ??= this.#open();
	}

	get view(): KeeperView {
		return this.#view;
	}

	subscribe = (listener: () => void): (() => void) => {
		this.#listeners.add(listener);
		return () => this.#listeners.delete(listener);
	};

	#draw(): KeeperView {
		const changes = [...this.#changes.values()];
		return {
			fitting: this.#fitting,
			answers: shownAnswers(this.#fitting.answers, changes),
			conflicts: unsettled(this.#fitting.conflicts, changes),
			state: this.#stateNow(),
			waitingCount: changes.length,
			isReached: this.#isReached,
			save: this.#save,
			savedSpec: this.#savedSpec,
			hasDamage: this.#hasDamage,
		};
	}

	#stateNow(): SaveState {
		if (this.#isGone) return "gone";
		const isWaiting = this.#changes.size > 0 || this.#fitting.start !== null;
		if (!isWaiting) return this.#isOpen ? "saved" : "opening";
		if (this.#isRefused) return "refused";
		if (this.#isReached) return "saving";
		return this.#unkept.size > 0 ? "unkept" : "on-device";
	}

	#tell(): void {
		this.#view = this.#draw();
		for (const listener of this.#listeners) listener();
	}

	/** Opened by the first who asks for more than a look. */
	async #opened(): Promise<void> {
		this.#ready ??= this.#open();
		await this.#ready;
	}

	async #open(): Promise<void> {
		const store = await this.#tools.openStore();
		this.#device = await this.#tools.deviceOf(store);
		if (this.#isClosed) return;
		this.#channel = this.#tools.channel(
			this.#fitting.id,
			() => void this.#reload(),
		);
		const opened = ++this.#count;
		this.#store = store;
		const jotted = await this.#takeUpJotted();
		await this.#writeEarly(opened);
		await this.#reload();
		this.#holdJotted(jotted, opened);
		await this.#keepFitting();
		this.#isOpen = true;
		this.#tell();
	}

	/** What was typed before the storage was open is written now, on what an earlier visit left there. */
	async #writeEarly(opened: number): Promise<void> {
		try {
			const left = await this.#store?.changesOf(this.#fitting.id);
			for (const change of [...this.#changes.values()]) {
				const { field } = change;
				if (this.#isTypedSince(field, opened)) continue;
				const { before } = left?.find((one) => one.field === field) ?? change;
				this.#unkept.delete(change.key);
				this.#changes.set(field, { ...change, before });
				this.#write({ ...change, before });
			}
		} catch {
			this.#loseStore();
		}
	}

	/** Brings into the storage what an earlier visit only jotted down; gives back what that does not take. */
	async #takeUpJotted(): Promise<KeptChange[]> {
		const left: KeptChange[] = [];
		for (const change of this.#jots.left(this.#fitting.id).changes) {
			try {
				if (this.#store === null) left.push(change);
				else {
					await this.#store.takeUp(change);
					this.#jots.drop(change);
				}
			} catch {
				left.push(change);
			}
		}
		return left;
	}

	/** What the storage does not take stays in memory until the server has it. */
	#holdJotted(jotted: readonly KeptChange[], opened: number): void {
		for (const change of jotted) {
			if (this.#isTypedSince(change.field, opened)) continue;
			this.#changes.set(change.field, change);
			this.#unkept.add(change.key);
		}
	}

	/** Reads what other tabs, or an earlier visit, left on the device. */
	async #reload(): Promise<void> {
		const store = this.#store;
		if (store === null) return;
		const { id } = this.#fitting;
		const began = ++this.#count;
		try {
			const kept = await store.fitting(id);
			const changes = await store.changesOf(id);
			this.#save = await store.save(id);
			this.#hasDamage = (await store.damaged()).length > 0;
			if (kept !== null) this.#fitting = laterOf(this.#fitting, kept);
			const own = [...this.#changes].filter(
				([field, { key }]) =>
					this.#unkept.has(key) || this.#isTypedSince(field, began),
			);
			this.#changes = new Map([
				...changes.map((change) => [change.field, change] as const),
				...own,
			]);
		} catch {
			// Closed for a newer version of the app, or taken away: memory and server remain, and it is said.
			this.#loseStore();
		}
		this.#tell();
	}

	#isTypedSince(field: FieldName, count: number): boolean {
		return (this.#typedAt.get(field) ?? 0) > count;
	}

	#loseStore(): void {
		this.#store = null;
		for (const { key } of this.#changes.values()) this.#unkept.add(key);
	}

	async #keepFitting(): Promise<void> {
		try {
			await this.#store?.putFitting(this.#fitting);
		} catch {
			// What is typed is kept by itself, and says so where it cannot be.
		}
	}

	/** Answers as typed, each with its field. */
	type(answers: Iterable<readonly [FieldName, Answer]>): void {
		for (const [field, after] of answers) this.#note(field, after);
		this.#tell();
		this.#channel?.tell();
		clearTimeout(this.#rest);
		this.#rest = setTimeout(() => void this.sync(), REST_MS);
	}

	/** Chooses the value of a field that two devices gave differently. */
	settle(field: FieldName, take: Answer): void {
		const of = this.#view.conflicts.filter(
			(conflict) => conflict.field === field,
		);
		this.#note(
			field,
			take,
			of.map(({ id }) => id),
		);
		this.#tell();
		this.#channel?.tell();
		void this.sync();
	}

	#note(field: FieldName, after: Answer, settles?: readonly string[]): void {
		const waiting = this.#changes.get(field);
		const stands = waiting?.after ?? this.#fitting.answers[field];
		if (settles === undefined && sameAnswer(stands, after)) return;
		const { settles: all, ...change } = changeTo({
			field,
			after: copied(after),
			base: this.#fitting.answers,
			waiting,
			key: this.#tools.newKey(),
			typedAt: this.#tools.now().toISOString(),
			settles,
		});
		const kept: KeptChange = {
			...change,
			fittingId: this.#fitting.id,
			before: copied(change.before),
			after: copied(change.after),
			...(all === undefined ? {} : { settles: [...all] }),
		};
		this.#changes.set(field, kept);
		this.#typedAt.set(field, ++this.#count);
		if (waiting !== undefined) this.#unkept.delete(waiting.key);
		this.#write(kept);
	}

	#write(change: KeptChange): void {
		const refuse = () => {
			if (this.#changes.get(change.field)?.key !== change.key) return;
			this.#unkept.add(change.key);
			this.#tell();
		};
		this.#jots.put(change);
		if (this.#store === null) {
			this.#unkept.add(change.key);
			return;
		}
		try {
			this.#store
				.putChange(change)
				.then(() => this.#jots.drop(change))
				.catch(refuse);
		} catch {
			refuse();
		}
	}

	/** Asks for a spec of what is shown. The same asked twice is one request. */
	async save({
		reason,
		seen,
	}: Pick<QueuedSave, "reason" | "seen">): Promise<SaveOutcome> {
		await this.#opened();
		const asked = {
			reason,
			seen,
			answers: structuredClone(this.#view.answers) as QueuedSave["answers"],
		};
		const known = this.#save;
		const save: QueuedSave =
			known !== null && known.refusal === null && asksTheSame(known, asked)
				? known
				: {
						...asked,
						fittingId: this.#fitting.id,
						requestKey: this.#tools.newKey(),
						askedAt: this.#tools.now().toISOString(),
						refusal: null,
					};
		this.#save = save;
		this.#savedSpec = null;
		try {
			await this.#store?.putSave(save);
		} catch {
			// Asked for in this tab all the same.
		}
		await this.sync();
		const { savedSpec } = this.#view;
		if (savedSpec !== null) return { kind: "saved", ...savedSpec };
		const left: QueuedSave | null = this.#save;
		if (left === null || left.requestKey !== save.requestKey || !left.refusal)
			return { kind: "queued" };
		await this.dropSave();
		return { kind: "refused", messages: left.refusal };
	}

	/** Asks for the spec no longer. */
	async dropSave(): Promise<void> {
		const save = this.#save;
		this.#save = null;
		this.#tell();
		if (save !== null)
			await this.#store?.dropSave(save.fittingId, save.requestKey);
	}

	/** Sends what waits and takes in what the server has. True once nothing waits. */
	sync = (): Promise<boolean> => {
		if (this.#syncing === null)
			this.#syncing = this.#run().finally(() => {
				this.#syncing = null;
			});
		else this.#wantsAnother = true;
		return this.#syncing;
	};

	async #run(): Promise<boolean> {
		await this.#opened();
		do {
			this.#wantsAnother = false;
			if (this.#isClosed || this.#isGone || this.#device === null) return false;
			if (!(await this.#send(this.#device))) return false;
		} while (this.#wantsAnother || this.#changes.size > 0);
		return true;
	}

	/** What waits on the device, with what only this tab has. */
	async #waiting(): Promise<KeptChange[]> {
		const fields = new Map<FieldName, KeptChange>();
		try {
			const kept = await this.#store?.changesOf(this.#fitting.id);
			for (const change of kept ?? []) fields.set(change.field, change);
		} catch {
			this.#loseStore();
		}
		for (const [field, change] of this.#changes) fields.set(field, change);
		return [...fields.values()];
	}

	/** True where the server answered. */
	async #send(device: Device): Promise<boolean> {
		const changes = await this.#waiting();
		const save = this.#save?.refusal === null ? this.#save : null;
		let answer: SyncAnswer;
		try {
			answer = await this.#tools.post(
				requestOf({
					device,
					sentAt: this.#tools.now(),
					fitting: this.#fitting,
					changes,
					save,
				}),
			);
		} catch (error) {
			if (error instanceof Unacceptable) this.#isRefused = true;
			else this.#isReached = false;
			this.#tell();
			return false;
		}
		this.#isReached = true;
		this.#isRefused = false;
		if (answer.status === "kept") await this.#takeIn(changes, save, answer);
		else this.#isGone = true;
		this.#tell();
		return !this.#isGone;
	}

	async #takeIn(
		sent: readonly KeptChange[],
		save: QueuedSave | null,
		{ fitting, conflicts, refused, saved }: KeptAnswer,
	): Promise<void> {
		for (const one of sent) {
			this.#unkept.delete(one.key);
			this.#jots.drop(one);
			const waiting = this.#changes.get(one.field);
			if (waiting === undefined) continue;
			const left = afterAcknowledged(waiting, one);
			if (left === null) this.#changes.delete(one.field);
			else this.#changes.set(one.field, left as KeptChange);
		}
		const now = this.#tools.now().toISOString();
		this.#fitting = laterOf(this.#fitting, {
			...fitting,
			conflicts,
			start: null,
			asOf: now,
			openedAt: this.#fitting.openedAt,
		});
		const isCurrent =
			save !== null &&
			saved !== null &&
			this.#save?.requestKey === save.requestKey;
		if (isCurrent && saved.ok) {
			this.#savedSpec = { number: saved.number, revision: saved.revision };
			this.#save = null;
		} else if (isCurrent && !saved.ok)
			this.#save = { ...save, refusal: saved.messages };
		const unusable = sent.filter(({ key }) => refused.includes(key));
		if (unusable.length > 0) this.#hasDamage = true;
		this.#tell();
		try {
			await this.#store?.refuse(unusable);
			await this.#store?.acknowledge(fitting.id, sent);
			await this.#keepFitting();
			if (isCurrent && saved.ok)
				await this.#store?.dropSave(fitting.id, save.requestKey);
			else if (isCurrent && this.#save !== null)
				await this.#store?.putSave(this.#save);
		} catch {
			// What stays on the device is sent once more under the same keys, and stored once.
		}
		if (sent.length > 0) this.#channel?.tell();
	}

	close(): void {
		this.#isClosed = true;
		this.#ready = null;
		clearTimeout(this.#rest);
		this.#channel?.close();
		this.#channel = null;
	}
}
