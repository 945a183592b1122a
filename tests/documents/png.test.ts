import { inflateSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { encodePng } from "@/lib/documents/png";

/**
 * A decoder from the standard's own text (ISO/IEC 15948 secs. 5, 9, 11.2.2), with its table-free CRC
 * (annex D) rather than the library's. A browser decodes the same files in tests/browser.
 */
function decodePng(file: Buffer) {
	expect([...file.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
	const parts: Buffer[] = [];
	const types: string[] = [];
	let size = { widthPx: 0, heightPx: 0 };
	for (let at = 8; at < file.length; ) {
		const length = file.readUInt32BE(at);
		const type = file.toString("latin1", at + 4, at + 8);
		const data = file.subarray(at + 8, at + 8 + length);
		expect(file.readUInt32BE(at + 8 + length), `CRC of ${type}`).toBe(
			crcOf(file.subarray(at + 4, at + 8 + length)),
		);
		types.push(type);
		if (type === "IHDR") {
			size = { widthPx: data.readUInt32BE(0), heightPx: data.readUInt32BE(4) };
			expect([...data.subarray(8)]).toEqual([8, 6, 0, 0, 0]);
		}
		if (type === "IDAT") parts.push(data);
		at += 12 + length;
	}
	expect(types).toEqual(["IHDR", "IDAT", "IEND"]);
	const raw = inflateSync(Buffer.concat(parts));
	const row = 4 * size.widthPx;
	expect(raw.length).toBe((row + 1) * size.heightPx);
	const rgba = new Uint8ClampedArray(row * size.heightPx);
	for (let j = 0; j < size.heightPx; j++)
		for (let i = 0; i < row; i++) {
			const filter = raw[j * (row + 1)] ?? 0;
			const byte = raw[j * (row + 1) + 1 + i] ?? 0;
			const left = i < 4 ? 0 : (rgba[j * row + i - 4] ?? 0);
			const up = j === 0 ? 0 : (rgba[(j - 1) * row + i] ?? 0);
			const base = filter === 0 ? 0 : filter === 1 ? left : up;
			expect(filter).toBeLessThanOrEqual(2);
			rgba[j * row + i] = (byte + base) & 255;
		}
	return { ...size, rgba };
}

function crcOf(bytes: Buffer): number {
	let crc = 0xffffffff;
	for (const byte of bytes) {
		crc ^= byte;
		for (let bit = 0; bit < 8; bit++)
			crc = crc & 1 ? 0xedb88320 ^ (crc >>> 1) : crc >>> 1;
	}
	return (crc ^ 0xffffffff) >>> 0;
}

describe("PNG", () => {
	test("the end chunk is the one every PNG file has", () => {
		const file = encodePng({
			rgba: new Uint8Array(4),
			widthPx: 1,
			heightPx: 1,
		});
		// The twelve bytes as in any published file, from memory.
		expect(file.subarray(-12).toString("hex")).toBe("0000000049454e44ae426082");
	});
	test("any picture comes back byte for byte", () => {
		fc.assert(
			fc.property(
				fc
					.tuple(
						fc.integer({ min: 1, max: 24 }),
						fc.integer({ min: 1, max: 24 }),
					)
					.chain(([widthPx, heightPx]) =>
						fc.record({
							widthPx: fc.constant(widthPx),
							heightPx: fc.constant(heightPx),
							rgba: fc.uint8ClampedArray({
								minLength: 4 * widthPx * heightPx,
								maxLength: 4 * widthPx * heightPx,
							}),
						}),
					),
				(picture) => {
					expect(decodePng(encodePng(picture))).toEqual(picture);
				},
			),
			{ numRuns: 60, seed: 4 },
		);
	});
	test("smooth pictures pack well", () => {
		const rgba = Uint8ClampedArray.from({ length: 4 * 200 * 200 }, (_, i) =>
			i % 4 === 3 ? 255 : Math.floor(i / 800),
		);
		expect(
			encodePng({ rgba, widthPx: 200, heightPx: 200 }).length,
		).toBeLessThan(4000);
	});
	test.each([
		[{ widthPx: 2, heightPx: 2, rgba: new Uint8Array(15) }],
		[{ widthPx: 0, heightPx: 2, rgba: new Uint8Array(0) }],
		[{ widthPx: 1.5, heightPx: 2, rgba: new Uint8Array(12) }],
	])("%j is refused", (picture) => {
		expect(() => encodePng(picture)).toThrow(/do not fill/);
	});
});
