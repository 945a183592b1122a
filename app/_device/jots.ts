import { type KeptChange, keptChangeSchema } from "./records";

/**
 * A net under the device's storage: what is typed is jotted down before the key is even done. The
 * storage answers later, waits behind other work on the same table, and drops what still waits when the
 * page goes. A jot is there until storage or server have the change.
 */
export interface Jots {
	readonly put: (change: KeptChange) => void;
	/** All that lie here; of one fitting where one is named. */
	readonly left: (fittingId?: string) => Left;
	/** Takes one out, unless its field was jotted anew meanwhile. */
	readonly drop: (
		change: Pick<KeptChange, "fittingId" | "field" | "key">,
	) => void;
	readonly dropUnreadable: (place: string) => void;
	readonly dropAllOf: (fittingId: string) => void;
}

export interface Left {
	readonly changes: readonly KeptChange[];
	readonly unreadable: readonly {
		readonly place: string;
		readonly text: string;
	}[];
}

/** The part of the browser's own list of texts that is used here. */
type Texts = Pick<
	globalThis.Storage,
	"length" | "key" | "getItem" | "setItem" | "removeItem"
>;

const PREFIX = "typed:";
const placeOf = ({
	fittingId,
	field,
}: Pick<KeptChange, "fittingId" | "field">): string =>
	`${PREFIX}${fittingId}:${field}`;

function changeIn(text: string): KeptChange | null {
	try {
		return keptChangeSchema.safeParse(JSON.parse(text)).data ?? null;
	} catch {
		return null;
	}
}

export function jotsIn(texts: Texts): Jots {
	const places = (start: string): string[] =>
		Array.from({ length: texts.length }, (_, i) => texts.key(i) ?? "").filter(
			(place) => place.startsWith(start),
		);
	const startOf = (fittingId?: string) =>
		fittingId === undefined ? PREFIX : `${PREFIX}${fittingId}:`;
	return {
		put(change) {
			try {
				texts.setItem(placeOf(change), JSON.stringify(change));
			} catch {
				// Full: the storage itself still takes it, and says so where it does not.
			}
		},
		left(fittingId) {
			const changes: KeptChange[] = [];
			const unreadable: { place: string; text: string }[] = [];
			for (const place of places(startOf(fittingId))) {
				const text = texts.getItem(place);
				if (text === null) continue;
				const change = changeIn(text);
				if (change === null) unreadable.push({ place, text });
				else changes.push(change);
			}
			return { changes, unreadable };
		},
		drop(change) {
			const place = placeOf(change);
			const text = texts.getItem(place);
			if (text !== null && changeIn(text)?.key === change.key)
				texts.removeItem(place);
		},
		dropUnreadable: (place) => texts.removeItem(place),
		dropAllOf(fittingId) {
			for (const place of places(startOf(fittingId))) texts.removeItem(place);
		},
	};
}

/** Where the browser keeps no texts. */
const NO_TEXTS: Texts = {
	length: 0,
	key: () => null,
	getItem: () => null,
	setItem: () => undefined,
	removeItem: () => undefined,
};

export function browserJots(): Jots {
	try {
		return jotsIn(window.localStorage);
	} catch {
		// Switched off: the storage is the only place, as it mostly is anyway.
		return jotsIn(NO_TEXTS);
	}
}

/** The storage's part in taking jots over. */
interface Taker {
	readonly takeUp: (change: KeptChange) => Promise<void>;
	readonly setAsideText: (from: string, text: string) => Promise<void>;
}

/** Brings what an earlier visit only jotted down into the storage. What that does not take stays jotted. */
export async function takeUpJots(store: Taker, jots: Jots): Promise<void> {
	const { changes, unreadable } = jots.left();
	try {
		for (const change of changes) {
			await store.takeUp(change);
			jots.drop(change);
		}
		for (const { place, text } of unreadable) {
			await store.setAsideText("typed", text);
			jots.dropUnreadable(place);
		}
	} catch {
		// Full or closed: the fitting's own page takes them from where they lie.
	}
}
