import { newRecordId, newRequestKey } from "@/app/_ui/request-key";
import type { Answers } from "@/lib/forms/fields";
import { requestOf } from "./exchange";
import { postToServer } from "./post";
import type { KeptFitting } from "./records";
import { deviceOf, deviceStore } from "./tools";

/** Longer is not waited for: the fitting begins on the device, and the server hears of it later. */
const PATIENCE_MS = 4000;

export interface Beginning {
	readonly player:
		| { readonly kind: "known"; readonly id: string; readonly name: string }
		| { readonly kind: "new"; readonly name: string };
	/** An earlier fitting of the player to begin with. */
	readonly basedOnFittingId?: string;
	readonly isDemo?: boolean;
}

/** A fitting as it begins here, with the keys under which the server will hear of it. */
export async function beginning({
	player,
	basedOnFittingId,
	isDemo = false,
}: Beginning): Promise<KeptFitting> {
	const now = new Date();
	const playerId = player.kind === "known" ? player.id : newRecordId(now);
	const store = await deviceStore();
	const earlier =
		basedOnFittingId === undefined
			? null
			: ((await store?.fitting(basedOnFittingId)) ?? null);
	return {
		id: newRecordId(now),
		number: null,
		player: { id: playerId, name: player.name },
		isDemo,
		answers: { ...(earlier?.answers ?? {}) } as Answers &
			KeptFitting["answers"],
		revision: 0,
		takenWishes: [],
		specNumber: null,
		conflicts: [],
		start: {
			requestKey: newRequestKey(),
			player:
				player.kind === "known"
					? { kind: "known", id: playerId }
					: { kind: "new", id: playerId, name: player.name },
			...(basedOnFittingId === undefined ? {} : { basedOnFittingId }),
		},
		asOf: null,
		openedAt: now.toISOString(),
	};
}

/** What became of a beginning: the server's number, a stay on this device, or nothing at all. */
export type Begun =
	| { readonly kind: "numbered"; readonly number: number }
	| { readonly kind: "on-device"; readonly id: string }
	/** Neither server nor device took it. */
	| { readonly kind: "nowhere" };

/** Begins a fitting, first on the device, then on the server. The same fitting again is begun once. */
export async function begin(fitting: KeptFitting): Promise<Begun> {
	const store = await deviceStore();
	let isKept = false;
	try {
		await store?.putFitting(fitting);
		isKept = store !== null;
	} catch {
		// A full device: the server may still take it.
	}
	try {
		const answer = await inTime(
			postToServer(
				requestOf({
					device: await deviceOf(store),
					sentAt: new Date(),
					fitting,
					changes: [],
					save: null,
				}),
			),
		);
		if (answer.status === "kept")
			return { kind: "numbered", number: answer.fitting.number };
	} catch {
		// Not reached: it goes on here.
	}
	return isKept ? { kind: "on-device", id: fitting.id } : { kind: "nowhere" };
}

const inTime = <Answer>(asked: Promise<Answer>): Promise<Answer> =>
	new Promise((done, fail) => {
		const limit = setTimeout(() => fail(new Error("no answer")), PATIENCE_MS);
		asked.then(done, fail).finally(() => clearTimeout(limit));
	});
