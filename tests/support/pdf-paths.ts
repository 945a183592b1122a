import { inflateSync } from "node:zlib";

/** A stroked or filled path of a PDF page, in mm from its upper left corner. */
export interface PdfPath {
	readonly points: readonly (readonly [xMm: number, yMm: number])[];
	readonly isCurved: boolean;
}
export interface PdfPage {
	readonly widthMm: number;
	readonly heightMm: number;
	readonly paths: readonly PdfPath[];
}

type Matrix = readonly [number, number, number, number, number, number];
const MM_PER_POINT = 25.4 / 72;

/** a, then b: ISO 32000-1, 8.3.4. */
const times = (a: Matrix, b: Matrix): Matrix => [
	a[0] * b[0] + a[1] * b[2],
	a[0] * b[1] + a[1] * b[3],
	a[2] * b[0] + a[3] * b[2],
	a[2] * b[1] + a[3] * b[3],
	a[4] * b[0] + a[5] * b[2] + b[4],
	a[4] * b[1] + a[5] * b[3] + b[5],
];

/**
 * Every path of every page with its transformations applied, by the operators q Q cm m l c h re and
 * the painting ones (ISO 32000-1, 8.5). For documents with one content stream a page, as they come.
 */
export function pdfPages(pdf: Uint8Array): PdfPage[] {
	const bytes = Buffer.from(pdf);
	const text = bytes.toString("latin1");
	const objectAt = (id: string): string => {
		const match = new RegExp(`(?:^|\\n)${id} 0 obj([\\s\\S]*?)endobj`).exec(
			text,
		);
		if (match?.[1] === undefined) throw new Error(`no object ${id}`);
		return match[1];
	};
	return [...text.matchAll(/\/Type \/Page\n([\s\S]*?)endobj/g)].map(
		([, page = ""]) => {
			const [, width, height] =
				/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page) ?? [];
			const [, content] = /\/Contents (\d+) 0 R/.exec(page) ?? [];
			if (!width || !height || !content)
				throw new Error("a page without box or content");
			objectAt(content);
			const start = new RegExp(
				`(?:^|\\n)${content} 0 obj[\\s\\S]*?stream\\r?\\n`,
				"g",
			);
			start.exec(text);
			const end = text.indexOf("endstream", start.lastIndex);
			const stream = inflateSync(bytes.subarray(start.lastIndex, end)).toString(
				"latin1",
			);
			return {
				widthMm: Number(width) * MM_PER_POINT,
				heightMm: Number(height) * MM_PER_POINT,
				paths: pathsOf(stream, Number(height)),
			};
		},
	);
}

function pathsOf(stream: string, pageHeightPt: number): PdfPath[] {
	const paths: PdfPath[] = [];
	const stack: Matrix[] = [];
	let now: Matrix = [1, 0, 0, 1, 0, 0];
	let operands: number[] = [];
	let points: [number, number][] = [];
	let isCurved = false;
	const add = (x: number, y: number) => {
		points.push([
			(x * now[0] + y * now[2] + now[4]) * MM_PER_POINT,
			(pageHeightPt - (x * now[1] + y * now[3] + now[5])) * MM_PER_POINT,
		]);
	};
	const take = (count: number) => operands.slice(-count);
	// Strings hold no operators.
	for (const token of stream
		.replace(/<[^>]*>|\((?:\\.|[^()\\])*\)/g, "")
		.split(/[\s[\]]+/)) {
		if (token === "") continue;
		if (/^[-+]?[\d.]+(e-?\d+)?$/i.test(token)) {
			operands.push(Number(token));
			continue;
		}
		switch (token) {
			case "q":
				stack.push(now);
				break;
			case "Q":
				now = stack.pop() ?? now;
				break;
			case "cm":
				now = times(take(6) as unknown as Matrix, now);
				break;
			case "m":
			case "l": {
				const [x = 0, y = 0] = take(2);
				add(x, y);
				break;
			}
			case "c": {
				const [, , , , x = 0, y = 0] = take(6);
				isCurved = true;
				add(x, y);
				break;
			}
			case "S":
			case "s":
			case "f":
			case "B":
			case "n":
				if (points.length > 0) paths.push({ points, isCurved });
				points = [];
				isCurved = false;
				break;
		}
		operands = [];
	}
	return paths;
}
