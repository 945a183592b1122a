import { StyleSheet } from "@react-pdf/renderer";
import { NAMES_FACE } from "./pdf-alphabets";

const BLACK = "#000000";
const RULE = `0.6pt solid ${BLACK}`;
/** Named wherever the size of the letters changes: what is inherited is the height in points. */
const LEADING = 1.25;
const FINE = "0.4pt solid #666666";

/** Black on white throughout; `scale` shrinks letters and gaps together. */
export function sheetStyles(scale: number) {
	const pt = (size: number) => size * scale;
	/** Between lines of a table or list; in the smallest letters no more than keeps them apart. */
	const gap = pt(scale < 0.8 ? 0.5 : 1.2);
	return StyleSheet.create({
		page: {
			fontFamily: NAMES_FACE,
			fontSize: pt(9.4),
			lineHeight: LEADING,
			color: BLACK,
			paddingTop: 30,
			paddingHorizontal: MARGIN_PT,
			paddingBottom: 40,
		},
		head: {
			flexDirection: "row",
			justifyContent: "space-between",
			marginBottom: pt(4),
		},
		headWords: { flexGrow: 1, flexShrink: 1, paddingRight: 12 },
		title: {
			fontSize: pt(18),
			fontWeight: 700,
			lineHeight: LEADING,
			marginBottom: pt(2),
		},
		replaced: {
			fontWeight: 700,
			fontSize: pt(10),
			lineHeight: LEADING,
			border: `1.2pt solid ${BLACK}`,
			padding: pt(3),
			marginTop: pt(3),
			alignSelf: "flex-start",
		},
		code: { alignItems: "flex-end", width: 180 },
		codeWords: { fontSize: 7, textAlign: "right" },
		summary: {
			flexDirection: "row",
			border: `1.2pt solid ${BLACK}`,
			marginBottom: pt(6),
		},
		summaryBox: { flexGrow: 1, flexBasis: 0, padding: pt(4) },
		summaryNext: { borderLeft: FINE },
		figure: { fontSize: pt(14), fontWeight: 700, lineHeight: LEADING },
		caption: { fontSize: pt(8), lineHeight: LEADING, marginBottom: pt(6) },
		part: { marginBottom: pt(7) },
		partTitle: {
			fontSize: pt(11),
			fontWeight: 700,
			lineHeight: LEADING,
			borderBottom: RULE,
			marginBottom: pt(2.5),
			paddingBottom: pt(1),
		},
		columns: { flexDirection: "row", justifyContent: "space-between" },
		column: { width: "48.5%" },
		row: { flexDirection: "row", marginBottom: gap + pt(0.6) },
		rowLabel: { width: "36%", paddingRight: 4 },
		rowValue: { width: "64%" },
		wideLabel: { width: "27%", paddingRight: 4 },
		wideWords: { width: "73%", flexDirection: "row" },
		wideValue: { width: "30%", paddingRight: 4, fontWeight: 700 },
		wideNote: { width: "70%" },
		bold: { fontWeight: 700 },
		note: { fontSize: pt(8.2), lineHeight: LEADING },
		line: { flexDirection: "row", borderBottom: FINE },
		cell: { paddingVertical: gap, paddingRight: 6 },
		right: { textAlign: "right" },
		under: { marginTop: pt(4) },
		above: { marginBottom: pt(4) },
		item: { flexDirection: "row", marginBottom: pt(1.5) },
		bullet: { width: 8 },
		itemWords: { flexGrow: 1, flexShrink: 1, flexBasis: 0 },
		foot: {
			position: "absolute",
			left: MARGIN_PT,
			right: MARGIN_PT,
			fontSize: 7.5,
			flexDirection: "row",
			justifyContent: "space-between",
		},
	});
}

export type SheetStyles = ReturnType<typeof sheetStyles>;

/** 12 mm: what every office printer reaches. */
export const MARGIN_PT = 34;
