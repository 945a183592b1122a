import {
	Document,
	Page,
	renderToBuffer,
	Text,
	View,
} from "@react-pdf/renderer";
import type { SheetHead } from "@/lib/present/sheet-head";
import {
	type SheetAtHand,
	type SheetView,
	sheetView,
} from "@/lib/present/sheet-view";
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
	readonly atHand?: SheetAtHand | null;
	readonly reader: Reader;
	readonly code: JobCode;
	readonly paper: Paper;
}

/** A request with all its words and pictures made, ready to be laid out. */
interface SheetProps extends Omit<SheetPdfRequest, "build" | "atHand"> {
	readonly view: SheetView;
	/** One below the other. */
	readonly plates: readonly CuePlate[];
	readonly scale: number;
	/** Told by the layout. */
	readonly pages: { count: number };
}

/** Two of the cue, and one of the order of the work and the check. */
const MOST_PAGES = 3;
/** Tried in turn until the sheet fits its pages; in the last the smallest letters have 6 pt. */
const SCALES = [1, 0.92, 0.84, 0.74] as const;
/** From the lower edge of the paper. The renderer leaves out what is set by its distance from below. */
const FOOT_PT = 30;

/**
 * The job sheet as a PDF: the cue on two pages at most, the order of the work and the check on one of their own. A sheet
 * that would not fit even in the smallest letters goes on to a further page rather than leave anything
 * out.
 */
export async function sheetPdf({
	build,
	atHand = null,
	...request
}: SheetPdfRequest): Promise<Buffer> {
	const { design, targets } = build;
	const { reader } = request;
	const made = {
		...request,
		head: await printable(request.head),
		view: sheetView(build, reader, atHand),
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
		lines: [
			...new Set(
				head.lines.map((line) => (canPrint(line) ? line : head.unnamedLine)),
			),
		],
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
	reader,
}: SheetProps) {
	const { say } = reader;
	const styles = sheetStyles(scale);
	const { size, widthPt, heightPt } = PAPERS[paper];
	const title = isInvented
		? say("sheet.invented", { title: head.title })
		: head.title;
	return (
		<Document
			title={title}
			subject={head.lines.join("; ")}
			language={reader.language}
		>
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
							{plate.viewWords} {say("sheet.fromButtNote")}
						</Text>
					</View>
				))}
				<Part styles={styles} title={say("sheet.stations.caption")}>
					<Table
						styles={styles}
						columns={[
							{
								label: say("sheet.stations.fromButt"),
								share: 20,
								isNumber: true,
								text: ({ fromButt }) => `${fromButt.main} · ${fromButt.other}`,
							},
							{
								label: say("sheet.stations.fromTip"),
								share: 13,
								isNumber: true,
								text: ({ fromTip }) => fromTip.main,
							},
							{
								label: say("sheet.stations.diameter"),
								share: 20,
								isNumber: true,
								text: ({ diameter }) => `${diameter.main} · ${diameter.other}`,
							},
							{
								label: say("sheet.stations.allowed"),
								share: 13,
								isNumber: true,
								text: ({ tolerance }) => tolerance,
							},
							{
								label: say("sheet.stations.here"),
								share: 20,
								text: ({ note }) => note,
							},
							{ label: say("sheet.stations.measured"), share: 14 },
						]}
						rows={view.stations}
					/>
				</Part>
				{view.picks.length > 0 && (
					<Part styles={styles} title={say("sheet.picks.title")} wrap={false}>
						<Table
							styles={styles}
							roomPt={16 * scale}
							columns={[
								{
									label: say("sheet.picks.use"),
									share: 12,
									text: ({ use }) => use,
								},
								{
									label: say("sheet.picks.wood"),
									share: 14,
									text: ({ wood }) => wood,
								},
								{
									label: say("sheet.picks.grain"),
									share: 30,
									text: ({ grain }) => grain,
								},
								{
									label: say("sheet.picks.density"),
									share: 26,
									text: ({ density, atHand }) =>
										atHand === "" ? density : `${density}; ${atHand}`,
								},
								{ label: say("sheet.picks.picked"), share: 18 },
							]}
							rows={view.picks}
						/>
						<Text style={styles.under}>{say("sheet.picks.about")}</Text>
					</Part>
				)}
				<RowsPart
					styles={styles}
					title={say("sheet.splice.title")}
					rows={view.splice}
					isWide
				/>
				<View style={styles.columns} wrap={false}>
					<View style={styles.column}>
						<RowsPart
							styles={styles}
							title={say("sheet.woods.title")}
							rows={view.woods}
						/>
						<RowsPart
							styles={styles}
							title={say("sheet.player.title")}
							rows={view.player}
						/>
					</View>
					<View style={styles.column}>
						<RowsPart
							styles={styles}
							title={say("sheet.weight.title")}
							rows={view.weight}
						/>
					</View>
				</View>
				<View style={styles.columns}>
					<View style={styles.column}>
						<RowsPart
							styles={styles}
							title={say("sheet.fittings.title")}
							rows={view.fittings}
						/>
					</View>
					<View style={styles.column}>
						<ItemsPart
							styles={styles}
							title={say("sheet.cautions.title")}
							lines={view.cautions}
							last={say("sheet.cautions.local")}
						/>
					</View>
				</View>
				<Part styles={styles} title={say("sheet.steps.title")} isOnNewPage>
					<Text style={styles.above}>{view.steps.about}</Text>
					<Table
						styles={styles}
						roomPt={22 * scale}
						columns={[
							{
								label: say("sheet.steps.step"),
								share: 58,
								text: ({ step }) => step,
							},
							{
								label: say("sheet.steps.wait"),
								share: 18,
								text: ({ wait }) => wait,
							},
							{ label: say("sheet.steps.done"), share: 24 },
						]}
						rows={view.steps.rows}
					/>
				</Part>
				<ItemsPart
					styles={styles}
					title={say("sheet.finish.title")}
					lines={view.finish}
				/>
				<Part styles={styles} title={say("sheet.checks.title")} wrap={false}>
					<Table
						styles={styles}
						roomPt={20 * scale}
						columns={[
							{
								label: say("sheet.checks.check"),
								share: 26,
								text: ({ check }) => check,
							},
							{
								label: say("sheet.checks.wanted"),
								share: 22,
								text: ({ wanted }) => wanted,
							},
							{
								label: say("sheet.checks.allowed"),
								share: 12,
								text: ({ allowed }) => allowed,
							},
							{ label: say("sheet.checks.measured"), share: 18 },
							{ label: say("sheet.checks.by"), share: 22 },
						]}
						rows={view.checks}
					/>
					{view.rules !== null && (
						<Text style={styles.under}>{view.rules}</Text>
					)}
				</Part>
				<View style={[styles.foot, { top: heightPt - FOOT_PT }]} fixed>
					<Text>
						{head.replaced === null ? title : `${title}: ${head.replaced}`}
					</Text>
					<Text
						render={({ pageNumber, totalPages }) => {
							pages.count = totalPages;
							return say("sheet.page", {
								page: pageNumber,
								count: totalPages,
							});
						}}
					/>
				</View>
			</Page>
		</Document>
	);
}
