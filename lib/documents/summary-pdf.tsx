import {
	Document,
	Page,
	renderToBuffer,
	Text,
	View,
} from "@react-pdf/renderer";
import type { SummaryHead } from "@/lib/present/summary-head";
import type { SummaryView } from "@/lib/present/summary-view";
import type { Reader } from "@/lib/words/reader";
import { loadNamesFace } from "./pdf-alphabets";
import { PAPERS, type Paper } from "./sheet-pdf";
import { ItemsPart, Part, RowsPart, Table } from "./sheet-pdf-parts";
import { sheetStyles } from "./sheet-pdf-styles";

export interface SummaryPdfRequest {
	readonly head: SummaryHead;
	readonly view: SummaryView;
	readonly isInvented: boolean;
	readonly reader: Reader;
	readonly paper: Paper;
}

/** Larger than on a job sheet: it is read in the hand, not at the bench. */
const SCALE = 1.08;

/** From the lower edge. */
const FOOT_PT = 30;

/** The player's summary as a PDF. */
export async function summaryPdf(request: SummaryPdfRequest): Promise<Buffer> {
	await loadNamesFace();
	return renderToBuffer(<Summary {...request} />);
}

function Summary({ head, view, isInvented, reader, paper }: SummaryPdfRequest) {
	const { say, language } = reader;
	const styles = sheetStyles(SCALE);
	const title = isInvented
		? `${head.title} (${say("summary.invented")})`
		: head.title;
	return (
		<Document title={title} subject={head.lines.join("; ")} language={language}>
			<Page size={PAPERS[paper].size} style={styles.page}>
				<View style={styles.headWords}>
					<Text style={styles.title}>{title}</Text>
					{head.lines.map((line) => (
						<Text key={line}>{line}</Text>
					))}
				</View>
				<RowsPart
					styles={styles}
					title={say("summary.figures")}
					lead={say("summary.figuresLead")}
					rows={view.figures.map(({ label, value, band, reason }) => ({
						label,
						value: `${value.main} · ${value.other}`,
						note: `${band} ${reason}`,
					}))}
					isWide
				/>
				<ItemsPart
					styles={styles}
					title={say("summary.tryTitle")}
					lines={view.toTry}
				/>
				<ItemsPart
					styles={styles}
					title={say("summary.careTitle")}
					lines={view.care}
				/>
				<ItemsPart
					styles={styles}
					title={say("summary.againTitle")}
					lines={view.again}
				/>
				<Part styles={styles} title={say("summary.measuredTitle")}>
					<Text style={styles.above}>{say("summary.measuredLead")}</Text>
					<Table
						styles={styles}
						columns={[
							{
								label: say("summary.measure"),
								share: 34,
								text: ({ measure }) => measure,
							},
							{
								label: say("summary.value"),
								share: 18,
								text: ({ value }) => value,
							},
							{
								label: say("summary.how"),
								share: 48,
								text: ({ state, note }) =>
									state === "measured"
										? [say("summary.taken"), note].filter(Boolean).join(", ")
										: note,
							},
						]}
						rows={view.measured}
					/>
					{view.present.length > 0 && (
						<Text>
							{say("summary.present")}:{" "}
							{view.present
								.map(({ label, value }) => `${label} ${value}`)
								.join(", ")}
							.
						</Text>
					)}
				</Part>
				<ItemsPart
					styles={styles}
					title={say("summary.unknownTitle")}
					lines={view.unknown}
				/>
				<View
					style={[styles.foot, { top: PAPERS[paper].heightPt - FOOT_PT }]}
					fixed
				>
					<Text>{title}</Text>
					<Text
						render={({ pageNumber, totalPages }) =>
							say("sheet.page", { page: pageNumber, count: totalPages })
						}
					/>
				</View>
			</Page>
		</Document>
	);
}
