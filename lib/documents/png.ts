import { crc32, deflateSync } from "node:zlib";

/** PNG 1.2 (W3C, ISO/IEC 15948): signature, then chunks of length, type, data and CRC. */
const SIGNATURE = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
const BIT_DEPTH = 8;
const TRUECOLOUR_WITH_ALPHA = 6;
const BYTES_PER_PIXEL = 4;

/** Row filters, sec. 9.2: the byte as it is, less the one before it, less the one above it. */
const FILTERS = [
	(here: number) => here,
	(here: number, before: number) => here - before,
	(here: number, _: number, above: number) => here - above,
] as const;

/**
 * A picture as a PNG file, four bytes a pixel, row by row, alpha not premultiplied. Throws RangeError
 * where the bytes are not width × height × 4.
 */
export function encodePng(p: {
	rgba: Uint8Array | Uint8ClampedArray;
	widthPx: number;
	heightPx: number;
}): Buffer {
	const { rgba, widthPx, heightPx } = p;
	if (
		!Number.isInteger(widthPx) ||
		!Number.isInteger(heightPx) ||
		widthPx < 1 ||
		heightPx < 1 ||
		rgba.length !== widthPx * heightPx * BYTES_PER_PIXEL
	)
		throw new RangeError(
			`${rgba.length} bytes do not fill ${widthPx} × ${heightPx} pixels`,
		);
	const header = Buffer.alloc(13);
	header.writeUInt32BE(widthPx, 0);
	header.writeUInt32BE(heightPx, 4);
	header[8] = BIT_DEPTH;
	header[9] = TRUECOLOUR_WITH_ALPHA;
	return Buffer.concat([
		SIGNATURE,
		chunk("IHDR", header),
		chunk("IDAT", deflateSync(filtered(rgba, widthPx * BYTES_PER_PIXEL))),
		chunk("IEND", Buffer.alloc(0)),
	]);
}

function chunk(type: string, data: Buffer): Buffer {
	const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
	const out = Buffer.alloc(body.length + 8);
	out.writeUInt32BE(data.length, 0);
	body.copy(out, 4);
	out.writeUInt32BE(crc32(body), body.length + 4);
	return out;
}

/** Each row by the filter with the least sum of absolute differences, as the standard advises (12.8). */
function filtered(
	rgba: Uint8Array | Uint8ClampedArray,
	rowLength: number,
): Buffer {
	const rowCount = rgba.length / rowLength;
	const out = Buffer.alloc(rgba.length + rowCount);
	const trial = new Uint8Array(rowLength);
	for (let row = 0; row < rowCount; row++) {
		const start = row * rowLength;
		const at = start + row;
		let least = Number.POSITIVE_INFINITY;
		FILTERS.forEach((filter, type) => {
			let sum = 0;
			for (let i = 0; i < rowLength; i++) {
				const before =
					i < BYTES_PER_PIXEL ? 0 : (rgba[start + i - BYTES_PER_PIXEL] ?? 0);
				const above = row === 0 ? 0 : (rgba[start + i - rowLength] ?? 0);
				const byte = filter(rgba[start + i] ?? 0, before, above) & 255;
				trial[i] = byte;
				sum += byte < 128 ? byte : 256 - byte;
			}
			if (sum >= least) return;
			least = sum;
			out[at] = type;
			out.set(trial, at + 1);
		});
	}
	return out;
}
