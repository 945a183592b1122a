import {
	type SyncAnswer,
	type SyncRequest,
	syncAnswerSchema,
} from "@/lib/forms/device-sync";

/** The server understood and will never take it: trying again changes nothing. */
export class Unacceptable extends Error {
	override name = "Unacceptable";
}

/** Nothing was tried: the device itself says that it has no network. */
export class NoNetwork extends Error {
	override name = "NoNetwork";
}

/** Past this a request counts as unanswered; it is sent again under the same keys. */
const LIMIT_MS = 20_000;
const NOT_ACCEPTABLE = [400, 403, 413];

/** Sends what a device has of one fitting. Rejects with `Unacceptable`, or with anything else where no answer came. */
export async function postToServer(request: SyncRequest): Promise<SyncAnswer> {
	if (!navigator.onLine) throw new NoNetwork();
	const response = await fetch("/device/sync", {
		method: "POST",
		headers: { "content-type": "application/json" },
		body: JSON.stringify(request),
		cache: "no-store",
		signal: AbortSignal.timeout(LIMIT_MS),
	});
	if (NOT_ACCEPTABLE.includes(response.status))
		throw new Unacceptable(`${response.status} ${await response.text()}`);
	if (!response.ok) throw new Error(`the server answers ${response.status}`);
	return syncAnswerSchema.parse(await response.json());
}
