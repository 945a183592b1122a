import { join } from "node:path";
import { Font } from "@react-pdf/renderer";
import { PDF_FACE, registerPdfFonts } from "./pdf-fonts";

/** Letters of names that the pages' own face lacks, each file one alphabet. */
const ALPHABETS = [
	"latin-ext",
	"greek",
	"cyrillic",
	"cyrillic-ext",
	"vietnamese",
] as const;
const WEIGHTS = [400, 700] as const;
const FOLDER = "node_modules/@fontsource/noto-sans/files";

const familyOf = (alphabet: string) => `Noto ${alphabet}`;

/** For `fontFamily` where people's names stand: the pages' face, then one for every alphabet. */
export const NAMES_FACE: string[] = [...PDF_FACE, ...ALPHABETS.map(familyOf)];

function register(): void {
	registerPdfFonts();
	for (const alphabet of ALPHABETS)
		Font.register({
			family: familyOf(alphabet),
			fonts: WEIGHTS.map((fontWeight) => ({
				fontWeight,
				src: join(
					process.cwd(),
					FOLDER,
					`noto-sans-${alphabet}-${fontWeight}-normal.woff`,
				),
			})),
		});
}

/**
 * Opens the files and meets every letter by its own name. A letter first met as a part of another, as
 * the dotless i is of i, would stay nameless for good: printed, but not found or copied.
 */
async function load() {
	register();
	const fonts = await Promise.all(
		NAMES_FACE.flatMap((fontFamily) =>
			WEIGHTS.map(async (fontWeight) => {
				await Font.load({ fontFamily, fontWeight });
				const font = Font.getFont({ fontFamily, fontWeight })?.data;
				if (!font) throw new Error(`no face ${fontFamily} ${fontWeight}`);
				for (const codePoint of font.characterSet)
					font.glyphForCodePoint(codePoint);
				return font;
			}),
		),
	);
	return {
		canPrint: (text: string): boolean =>
			[...text.normalize("NFC")].every((letter) =>
				fonts.some((font) =>
					font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0),
				),
			),
	};
}

let loading: ReturnType<typeof load> | undefined;

/**
 * The faces, loaded once: to be awaited before a PDF is made in them. `canPrint` tells whether every
 * letter of a text is in one of them; the others would be printed as empty boxes.
 */
export const loadNamesFace = (): ReturnType<typeof load> => {
	loading ??= load();
	return loading;
};
