import {
	Document,
	Page,
	renderToBuffer,
	Text,
	View,
} from "@react-pdf/renderer";
import type { SheetHead } from "@/lib/present/sheet-head";
import { type SheetView, sheetView } from "@/lib/present/sheet-view";
import type { Reader } from "@/lib/words/reader";
import type { BuildContent } from "@/lib/workshop/job-content";
import { type CuePlate, cuePlate } from "./cue-plate";
import type { JobCode } from "./job-code";
import { loadNamesFace } from "./pdf-alphabets";
import { CodeOnPaper, PlateOnPaper } from "./sheet-pdf-drawing";
import { ItemsPart, Part, RowsPart, Table } from "./sheet-pdf-parts";
import { MARGIN_PT, sheetStyles } from "./sheet-pdf-styles";

/** Width by height in points, 72 to the inch. */
export const PAPERS = {
	a4: { size: "A4", widthPt: 595.28, heightPt: 841.89 },
	letter: { size: "LETTER", widthPt: 612, heightPt: 792 },
} as const;
export type Paper = keyof typeof PAPERS;

export interface SheetPdfRequest {
	readonly head: SheetHead;
	readonly isInvented: boolean;
	readonly build: BuildContent;
	readonly reader: Reader;
	readonly code: JobCode;
	readonly paper: Paper;
}

/** A request with all its words and pictures made, ready to be laid out. */
interface SheetProps extends Omit<SheetPdfRequest, "build" | "reader"> {
	readonly view: SheetView;
	/** One below the other. */
	readonly plates: readonly CuePlate[];
	readonly scale: number;
	/** Told by the layout. */
	readonly pages: { count: number };
}

const MOST_PAGES = 2;
/** Tried in turn until the sheet fits its pages; in the last the smallest letters have 6 pt. */
const SCALES = [1, 0.92, 0.84, 0.74] as const;
/** From the lower edge of the paper. The renderer leaves out what is set by its distance from below. */
const FOOT_PT = 30;

/**
 * The job sheet as a PDF of at most two pages. A sheet that would not fit even in the smallest letters
 * goes on to a third page rather than leave anything out.
 */
export async function sheetPdf({
	build,
	reader,
	...request
}: SheetPdfRequest): Promise<Buffer> {
	const { design, targets } = build;
	const made = {
		...request,
		head: await printable(request.head),
		view: sheetView(build, reader),
		plates: [
			cuePlate({
				design,
				reader,
				balanceFromButtMm: targets.balance.value,
				ink: "grey",
			}),
			cuePlate({ design, reader, part: "butt", ink: "grey" }),
		],
	};
	let pdf: Buffer | null = null;
	for (const scale of SCALES) {
		const pages = { count: 0 };
		pdf = await renderToBuffer(<Sheet {...made} scale={scale} pages={pages} />);
		if (pages.count <= MOST_PAGES) return pdf;
	}
	if (pdf === null) throw new Error("no scale to print at");
	return pdf;
}

/** A line with letters that no face here has would print as boxes: it points to the screen instead. */
async function printable(head: SheetHead): Promise<SheetHead> {
	const { canPrint } = await loadNamesFace();
	return {
		...head,
		lines: head.lines.map((line) =>
			canPrint(line)
				? line
				: `For the player named on the page the code opens${/, fitting \d+$/.exec(line)?.[0] ?? ""}`,
		),
	};
}

function Sheet({
	head,
	isInvented,
	view,
	plates,
	code,
	paper,
	scale,
	pages,
}: SheetProps) {
	const styles = sheetStyles(scale);
	const { size, widthPt, heightPt } = PAPERS[paper];
	const title = isInvented ? `${head.title} (invented data)` : head.title;
	return (
		<Document title={title} subject={head.lines.join("; ")} language="en">
			<Page size={size} style={styles.page}>
				<View style={styles.head}>
					<View style={styles.headWords}>
						<Text style={styles.title}>{title}</Text>
						{head.lines.map((line) => (
							<Text key={line}>{line}</Text>
						))}
						{head.replaced !== null && (
							<Text style={styles.replaced}>{head.replaced}</Text>
						)}
					</View>
					<View style={styles.code}>
						<CodeOnPaper code={code} sizePt={84} />
						<Text style={styles.codeWords}>{code.address}</Text>
					</View>
				</View>
				<View style={styles.summary}>
					{view.summary.map(({ label, value, allowed }, i) => (
						<View
							key={label}
							style={
								i === 0
									? styles.summaryBox
									: [styles.summaryBox, styles.summaryNext]
							}
						>
							<Text>{label}</Text>
							<Text style={styles.figure}>{value.main}</Text>
							<Text>{value.other}</Text>
							<Text>{allowed}</Text>
						</View>
					))}
				</View>
				{plates.map((plate) => (
					<View key={plate.viewWords} wrap={false}>
						<PlateOnPaper
							plate={plate}
							widthPt={scale * (widthPt - 2 * MARGIN_PT)}
						/>
						<Text style={styles.caption}>
							{plate.viewWords} Distances are from the butt end.
						</Text>
					</View>
				))}
				<Part styles={styles} title="Diameters at stations, before finish">
					<Table
						styles={styles}
						columns={[
							{
								label: "From the butt end",
								share: 20,
								isNumber: true,
								text: ({ fromButt }) => `${fromButt.main} · ${fromButt.other}`,
							},
							{
								label: "From the tip",
								share: 13,
								isNumber: true,
								text: ({ fromTip }) => fromTip.main,
							},
							{
								label: "Diameter",
								share: 20,
								isNumber: true,
								text: ({ diameter }) => `${diameter.main} · ${diameter.other}`,
							},
							{
								label: "Allowed",
								share: 13,
								isNumber: true,
								text: ({ tolerance }) => tolerance,
							},
							{ label: "Here", share: 20, text: ({ note }) => note },
							{ label: "Measured", share: 14 },
						]}
						rows={view.stations}
					/>
				</Part>
				<RowsPart
					styles={styles}
					title="Splice, in glue order"
					rows={view.splice}
					isWide
				/>
				<View style={styles.columns} wrap={false}>
					<View style={styles.column}>
						<RowsPart styles={styles} title="Woods" rows={view.woods} />
						<RowsPart styles={styles} title="Player" rows={view.player} />
					</View>
					<View style={styles.column}>
						<RowsPart styles={styles} title="Weight" rows={view.weight} />
					</View>
				</View>
				<View style={styles.columns}>
					<View style={styles.column}>
						<RowsPart
							styles={styles}
							title="Tip, ferrule, joint, butt end"
							rows={view.fittings}
						/>
						<ItemsPart styles={styles} title="Finish" lines={view.finish} />
					</View>
					<View style={styles.column}>
						<ItemsPart
							styles={styles}
							title="Cautions"
							lines={view.cautions}
							last="Local codes and licensed practice come first."
						/>
					</View>
				</View>
				<Part styles={styles} title="Check before handing over" wrap={false}>
					<Table
						styles={styles}
						roomPt={20 * scale}
						columns={[
							{ label: "Check", share: 26, text: ({ check }) => check },
							{ label: "Wanted", share: 22, text: ({ wanted }) => wanted },
							{ label: "Allowed", share: 12, text: ({ allowed }) => allowed },
							{ label: "Measured", share: 18 },
							{ label: "By, date", share: 22 },
						]}
						rows={view.checks}
					/>
					{view.rules.length > 0 && (
						<Text style={styles.under}>
							{`Rules of the game: ${view.rules
								.map(
									({ rule, ok, source }) =>
										`${rule} ${ok ? "kept" : "broken"} (${source})`,
								)
								.join("; ")}.`}
						</Text>
					)}
				</Part>
				<View style={[styles.foot, { top: heightPt - FOOT_PT }]} fixed>
					<Text>
						{head.replaced === null ? title : `${title}: ${head.replaced}`}
					</Text>
					<Text
						render={({ pageNumber, totalPages }) => {
							pages.count = totalPages;
							return `Page ${pageNumber} of ${totalPages}`;
						}}
					/>
				</View>
			</Page>
		</Document>
	);
}
