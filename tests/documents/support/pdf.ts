import { createCanvas } from "@napi-rs/canvas";
import {
	getDocument,
	type PDFDocumentProxy,
	VerbosityLevel,
} from "pdfjs-dist/legacy/build/pdf.mjs";

export interface PageRead {
	readonly widthPt: number;
	readonly heightPt: number;
	/** As `lettersOf`. */
	readonly letters: string;
}

export interface Pixels {
	readonly widthPx: number;
	readonly heightPx: number;
	readonly rgba: Uint8ClampedArray;
}

/** Without any white space: where a line breaks says nothing. */
export const lettersOf = (text: string): string =>
	text.normalize("NFC").replace(/\s+/g, "");

async function withPdf<T>(
	bytes: Uint8Array,
	read: (pdf: PDFDocumentProxy) => Promise<T>,
): Promise<T> {
	const task = getDocument({
		data: Uint8Array.from(bytes),
		verbosity: VerbosityLevel.ERRORS,
	});
	try {
		return await read(await task.promise);
	} finally {
		await task.destroy();
	}
}

/** The pages of a PDF as an independent reader sees them. */
export const readPdf = (bytes: Uint8Array): Promise<PageRead[]> =>
	withPdf(bytes, (pdf) =>
		Promise.all(
			Array.from({ length: pdf.numPages }, async (_, i) => {
				const page = await pdf.getPage(i + 1);
				const { width, height } = page.getViewport({ scale: 1 });
				const { items } = await page.getTextContent();
				return {
					widthPt: width,
					heightPt: height,
					letters: lettersOf(
						items.map((item) => ("str" in item ? item.str : "")).join(""),
					),
				};
			}),
		),
	);

/** One page as it would be printed, from an independent renderer. */
export const printPdf = (
	bytes: Uint8Array,
	{ page: pageNumber, dpi }: { page: number; dpi: number },
): Promise<Pixels> =>
	withPdf(bytes, async (pdf) => {
		const page = await pdf.getPage(pageNumber);
		const viewport = page.getViewport({ scale: dpi / 72 });
		const canvas = createCanvas(
			Math.ceil(viewport.width),
			Math.ceil(viewport.height),
		);
		const { width, height } = canvas;
		await page.render({
			canvas: canvas as unknown as HTMLCanvasElement,
			viewport,
		}).promise;
		const { data } = canvas.getContext("2d").getImageData(0, 0, width, height);
		return { widthPx: width, heightPx: height, rgba: data };
	});
