import { leadingZeroBits, workText } from "@/lib/access/work";

export interface WorkAsked {
	readonly token: string;
	readonly workBits: number;
}
export type WorkFound =
	| { readonly ok: true; readonly counter: number }
	| { readonly ok: false; readonly message: string };

const scope = globalThis as unknown as {
	onmessage: (event: MessageEvent<WorkAsked>) => void;
	postMessage(message: WorkFound): void;
};

scope.onmessage = ({ data }) => {
	work(data).then(
		(counter) => scope.postMessage({ ok: true, counter }),
		(error: unknown) =>
			scope.postMessage({ ok: false, message: String(error) }),
	);
};

/** Digests asked for at once: the browser's own are told of by events, one at a time is mostly waiting. */
const AT_ONCE = 128;

async function work({ token, workBits }: WorkAsked): Promise<number> {
	const encoder = new TextEncoder();
	const sha256 = await hasher();
	for (let from = 0; ; from += AT_ONCE) {
		const digests = await Promise.all(
			Array.from({ length: AT_ONCE }, (_, i) =>
				sha256(encoder.encode(workText(token, from + i))),
			),
		);
		const found = digests.findIndex(
			(digest) => leadingZeroBits(digest) >= workBits,
		);
		if (found >= 0) return from + found;
	}
}

type Hash = (bytes: Uint8Array<ArrayBuffer>) => Promise<Uint8Array>;

/** Web Crypto; a browser has none where a page came by plain http over a local network. */
async function hasher(): Promise<Hash> {
	if (globalThis.crypto?.subtle !== undefined)
		return async (bytes) =>
			new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
	const { sha256 } = await import("@noble/hashes/sha2.js");
	return async (bytes) => sha256(bytes);
}
