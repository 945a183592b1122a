import { join } from "node:path";
import { Font } from "@react-pdf/renderer";

/**
 * The pages' own typeface for PDF, from files: the fonts built into PDF lack everything past Latin-1.
 * A text takes the first family that has its letter.
 */
export const PDF_FACE = ["Atkinson", "Atkinson ext"];

const FOLDER = "node_modules/@fontsource/atkinson-hyperlegible-next/files";

let isRegistered = false;

/** Registers the typeface once; call before rendering. */
export function registerPdfFonts(): void {
	if (isRegistered) return;
	for (const [family, subset] of [
		["Atkinson", "latin"],
		["Atkinson ext", "latin-ext"],
	] as const)
		Font.register({
			family,
			fonts: [400, 700].map((fontWeight) => ({
				src: join(
					process.cwd(),
					FOLDER,
					`atkinson-hyperlegible-next-${subset}-${fontWeight}-normal.woff`,
				),
				fontWeight,
			})),
		});
	// Words are never broken.
	Font.registerHyphenationCallback((word) => [word]);
	isRegistered = true;
}
