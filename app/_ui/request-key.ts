/**
 * A version 4 UUID (RFC 9562). `crypto.randomUUID` is missing where a tablet reaches the server by a
 * plain http address in the local network.
 */
export const newRequestKey = (): string =>
	written(crypto.getRandomValues(new Uint8Array(16)), 4);

/** A version 7 UUID (RFC 9562): ids of later records are later ones, as those the database makes. */
export function newRecordId(now: Date): string {
	const bytes = crypto.getRandomValues(new Uint8Array(16));
	const view = new DataView(bytes.buffer);
	view.setUint16(0, Math.floor(now.getTime() / 2 ** 32));
	view.setUint32(2, now.getTime() % 2 ** 32);
	return written(bytes, 7);
}

function written(bytes: Uint8Array, version: 4 | 7): string {
	bytes[6] = ((bytes[6] ?? 0) & 0x0f) | (version << 4);
	bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
	const hex = [...bytes]
		.map((byte) => byte.toString(16).padStart(2, "0"))
		.join("");
	return [
		hex.slice(0, 8),
		hex.slice(8, 12),
		hex.slice(12, 16),
		hex.slice(16, 20),
		hex.slice(20),
	].join("-");
}
