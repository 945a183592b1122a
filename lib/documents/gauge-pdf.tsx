import {
	Document,
	G,
	Page,
	renderToBuffer,
	Svg,
	Text,
	View,
} from "@react-pdf/renderer";
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
): Promise<Uint8Array<ArrayBuffer>> {
	registerPdfFonts();
	return new Uint8Array(await renderToBuffer(<RingGauge paperId={paperId} />));
}

function RingGauge({ paperId }: { paperId: PaperId }) {
	const paper = PAPERS[paperId];
	return (
		<Document title={`Ring gauge, ${paper.name}`} language="en">
			<Sheet
				paper={paper}
				title="Ring gauge: a cone to roll up"
				text="Cut along the outer line, roll it so that the plain edge lies on the dashed line, and glue the strip under. Slide it into the light ring of thumb and forefinger, pads just meeting, no squeeze. Read the mark where the ring rests, open the hand and read again, three times."
			>
				<Cone paper={paper} />
			</Sheet>
			{circlePages(paper).map((circles) => (
				<Sheet
					key={circles[0]?.diameterMm}
					paper={paper}
					title={`Ring gauge: circles ${circles[0]?.diameterMm}–${circles.at(-1)?.diameterMm} mm`}
					text="Lay the light ring on the circle it just surrounds, or glue the sheet on card, cut the circle out and slip it into the ring. The line’s middle is the true size."
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
	children,
}: {
	paper: Paper;
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
					{title} ({paper.name})
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
					Print at 100 %, “actual size”; never “fit to page”.
				</Text>
				<Text style={{ fontSize: 9.5, lineHeight: 1.3 }}>
					Lay a ruler on the scales: 100 mm and 4 in must be right to 1 %, that
					is 99 to 101 mm. If not, print again; do not correct the reading.
				</Text>
			</View>
		</Page>
	);
}
