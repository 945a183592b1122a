import {
	Document,
	G,
	Page,
	renderToBuffer,
	Svg,
	Text,
	View,
} from "@react-pdf/renderer";
import type { Reader } from "@/lib/words/reader";
import {
	circlePages,
	MARGIN_MM,
	PAPERS,
	type Paper,
	type PaperId,
	RULER_ROOM_MM,
} from "./gauge-layout";
import { Cone, INK, Ring, Rulers } from "./gauge-pdf-parts";
import { PDF_FACE, registerPdfFonts } from "./pdf-fonts";

/** Points a millimetre: 72 to the inch by ISO 32000. */
export const POINTS_PER_MM = 72 / 25.4;

/** The drawing stops short of the paper's edge: one as high as the page would be pushed to the next. */
const EDGE_MM = 1;
const mm = (value: number) => value * POINTS_PER_MM;

/** The ring gauge as a PDF at true size: a cone to roll, circles to lay on or cut out, a ruler on each page. */
export async function renderRingGauge(
	paperId: PaperId,
	reader: Reader,
): Promise<Uint8Array<ArrayBuffer>> {
	registerPdfFonts();
	return new Uint8Array(
		await renderToBuffer(<RingGauge paperId={paperId} reader={reader} />),
	);
}

function RingGauge({ paperId, reader }: { paperId: PaperId; reader: Reader }) {
	const { say, language } = reader;
	const paper = PAPERS[paperId];
	return (
		<Document
			title={say("gauges.paper.title", { paper: paper.name })}
			language={language}
		>
			<Sheet
				paper={paper}
				reader={reader}
				title={say("gauges.paper.cone")}
				text={say("gauges.paper.coneText")}
			>
				<Cone paper={paper} />
			</Sheet>
			{circlePages(paper).map((circles) => (
				<Sheet
					key={circles[0]?.diameterMm}
					paper={paper}
					reader={reader}
					title={say("gauges.paper.circles", {
						from: String(circles[0]?.diameterMm),
						to: String(circles.at(-1)?.diameterMm),
					})}
					text={say("gauges.paper.circlesText")}
				>
					{circles.map((circle) => (
						<Ring key={circle.diameterMm} circle={circle} />
					))}
				</Sheet>
			))}
		</Document>
	);
}

function Sheet({
	paper,
	title,
	text,
	reader: { say },
	children,
}: {
	paper: Paper;
	reader: Reader;
	title: string;
	text: string;
	children: React.ReactNode;
}) {
	const { widthMm, heightMm } = paper;
	return (
		<Page
			size={[mm(widthMm), mm(heightMm)]}
			style={{ fontFamily: PDF_FACE, color: INK }}
		>
			<Svg
				style={{ position: "absolute", top: 0, left: 0 }}
				width={mm(widthMm - EDGE_MM)}
				height={mm(heightMm - EDGE_MM)}
				viewBox={`0 0 ${widthMm - EDGE_MM} ${heightMm - EDGE_MM}`}
			>
				{children}
				<G
					transform={`translate(${MARGIN_MM} ${heightMm - MARGIN_MM - RULER_ROOM_MM + 12})`}
				>
					<Rulers />
				</G>
			</Svg>
			<View
				style={{
					position: "absolute",
					top: mm(8),
					left: mm(MARGIN_MM),
					width: mm(widthMm - 2 * MARGIN_MM),
				}}
			>
				<Text style={{ fontSize: 13, fontWeight: 700 }}>
					{say("gauges.paper.heading", { title, paper: paper.name })}
				</Text>
				<Text style={{ fontSize: 9.5, lineHeight: 1.3 }}>{text}</Text>
			</View>
			<View
				style={{
					position: "absolute",
					top: mm(heightMm - MARGIN_MM - RULER_ROOM_MM + 10),
					left: mm(MARGIN_MM + 108),
					width: mm(widthMm - 2 * MARGIN_MM - 108),
				}}
			>
				<Text style={{ fontSize: 9.5, fontWeight: 700 }}>
					{say("gauges.paper.print")}
				</Text>
				<Text style={{ fontSize: 9.5, lineHeight: 1.3 }}>
					{say("gauges.paper.check")}
				</Text>
			</View>
		</Page>
	);
}
