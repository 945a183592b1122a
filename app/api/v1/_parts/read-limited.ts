/** The text of a request; null where it has more bytes than allowed, which are then not read. */
export async function readLimited(
	request: Request,
	maxBytes: number,
): Promise<string | null> {
	const reader = request.body?.getReader();
	if (reader === undefined) return "";
	const chunks: Uint8Array[] = [];
	let size = 0;
	for (;;) {
		const { done, value } = await reader.read();
		if (done) return Buffer.concat(chunks).toString("utf8");
		size += value.byteLength;
		if (size > maxBytes) {
			await reader.cancel();
			return null;
		}
		chunks.push(value);
	}
}
