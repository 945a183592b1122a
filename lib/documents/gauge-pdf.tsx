import {
	Circle,
	Document,
	G,
	Line,
	Page,
	Path,
	renderToBuffer,
	Svg,
	Text,
	View,
} from "@react-pdf/renderer";
import { gaugeStepsMm } from "@/lib/player/gauge";
import {
	CONE_SPAN_RAD,
	CONE_STEP_MM,
	circlePages,
	fromApexMm,
	GLUE_MM,
	MARGIN_MM,
	onCone,
	PAPERS,
	type Paper,
	type PaperId,
	type PrintedCircle,
	RING_GAUGE,
	RULER_ROOM_MM,
	rulerTicks,
} from "./gauge-layout";
import { PDF_FACE, registerPdfFonts } from "./pdf-fonts";

/** Points a millimetre: 72 to the inch by ISO 32000. */
export const POINTS_PER_MM = 72 / 25.4;

/** The drawing stops short of the paper's edge: one as high as the page would be pushed to the next. */
const EDGE_MM = 1;
const INK = "#1a1917";
const SOFT = "#4f5349";
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

/** Small print on the drawing, sizes in mm. */
const Mark = ({
	x,
	y,
	size = 2.8,
	bold = false,
	anchor = "middle",
	children,
}: {
	x: number;
	y: number;
	size?: number;
	bold?: boolean;
	anchor?: "start" | "middle" | "end";
	children: string;
}) => (
	<Text
		x={x}
		y={y}
		textAnchor={anchor}
		fill={INK}
		style={{
			fontSize: size,
			fontFamily: "Atkinson",
			fontWeight: bold ? 700 : 400,
		}}
	>
		{children}
	</Text>
);

const Ring = ({
	circle: { diameterMm, xMm, yMm },
}: {
	circle: PrintedCircle;
}) => (
	<>
		<Circle
			cx={xMm}
			cy={yMm}
			r={diameterMm / 2}
			fill="none"
			stroke={INK}
			strokeWidth={0.2}
		/>
		<Line
			x1={xMm - 1.5}
			x2={xMm + 1.5}
			y1={yMm + 3}
			y2={yMm + 3}
			stroke={SOFT}
			strokeWidth={0.15}
		/>
		<Mark x={xMm} y={yMm + 1.4} size={4} bold>
			{String(diameterMm)}
		</Mark>
	</>
);

const ARC_POINTS = 48;

/** The unrolled cone, small end up, arcs every half millimetre of diameter and numbers every one. */
function Cone({ paper }: { paper: Paper }) {
	const { fromMm, toMm } = RING_GAUGE;
	const half = CONE_SPAN_RAD / 2;
	const point = (diameterMm: number, angleRad: number): string => {
		const { xMm, yMm } = onCone(diameterMm, angleRad);
		return `${xMm.toFixed(4)} ${yMm.toFixed(4)}`;
	};
	const arc = (diameterMm: number, from: number, to: number): string =>
		Array.from({ length: ARC_POINTS + 1 }, (_, i) =>
			point(diameterMm, from + ((to - from) * i) / ARC_POINTS),
		).join("L");
	const outline = `M${arc(fromMm, -half, half)}L${arc(toMm, half, -half)}Z`;
	const glueAt = (diameterMm: number, off: number): string => {
		const { xMm, yMm } = onCone(diameterMm, half);
		return `${(xMm + off * Math.cos(half)).toFixed(4)} ${(yMm - off * Math.sin(half)).toFixed(4)}`;
	};
	const top = MARGIN_MM + 25 - fromApexMm(fromMm) * Math.cos(half);
	return (
		<G transform={`translate(${paper.widthMm / 2 - GLUE_MM / 2} ${top})`}>
			<Path
				d={`M${point(fromMm, half)}L${glueAt(fromMm + 1, GLUE_MM)}L${glueAt(toMm - 1, GLUE_MM)}L${point(toMm, half)}`}
				fill="none"
				stroke={SOFT}
				strokeWidth={0.2}
			/>
			<Path d={outline} fill="none" stroke={INK} strokeWidth={0.3} />
			<Path
				d={`M${point(fromMm, half)}L${point(toMm, half)}`}
				fill="none"
				stroke={INK}
				strokeWidth={0.3}
				strokeDasharray="2 1.5"
			/>
			{gaugeStepsMm({ fromMm, toMm, stepMm: CONE_STEP_MM }).map(
				(diameterMm, i) =>
					i % 2 === 0 ? (
						<Numbered
							key={diameterMm}
							diameterMm={diameterMm}
							d={`M${arc(diameterMm, -half, half)}`}
							angles={[-half * 0.86, 0, half * 0.86]}
						/>
					) : (
						<Path
							key={diameterMm}
							d={`M${arc(diameterMm, -half, half)}`}
							fill="none"
							stroke={SOFT}
							strokeWidth={0.08}
						/>
					),
			)}
		</G>
	);
}

function Numbered({
	diameterMm,
	d,
	angles,
}: {
	diameterMm: number;
	d: string;
	angles: readonly number[];
}) {
	const isFifth = diameterMm % 5 === 0;
	return (
		<>
			<Path
				d={d}
				fill="none"
				stroke={INK}
				strokeWidth={isFifth ? 0.35 : 0.18}
			/>
			{angles.map((angle) => {
				const { xMm, yMm } = onCone(diameterMm, angle);
				return (
					<Mark key={angle} x={xMm} y={yMm - 0.7} size={2.5} bold={isFifth}>
						{String(diameterMm)}
					</Mark>
				);
			})}
		</>
	);
}

const TICK_MM = [5, 3.6, 2.6, 1.8] as const;

/** 100 mm over 4 in, from one zero. */
function Rulers() {
	return (
		<>
			{rulerTicks({ lengthMm: 100, stepMm: 1, ranks: [10, 5] }).map(
				({ atMm, rank }) => (
					<Line
						key={atMm}
						x1={atMm}
						x2={atMm}
						y1={0}
						y2={-(TICK_MM[rank] ?? 1.8)}
						stroke={INK}
						strokeWidth={0.15}
					/>
				),
			)}
			{[0, 20, 40, 60, 80, 100].map((at) => (
				<Mark key={at} x={at} y={-6}>
					{at === 100 ? "100 mm" : String(at)}
				</Mark>
			))}
			<Line x1={0} x2={101.6} y1={0} y2={0} stroke={INK} strokeWidth={0.25} />
			{rulerTicks({
				lengthMm: 101.6,
				stepMm: 25.4 / 8,
				ranks: [8, 4, 2],
			}).map(({ atMm, rank }) => (
				<Line
					key={atMm}
					x1={atMm}
					x2={atMm}
					y1={0}
					y2={TICK_MM[rank] ?? 1.8}
					stroke={INK}
					strokeWidth={0.15}
				/>
			))}
			{[0, 1, 2, 3, 4].map((inches) => (
				<Mark key={inches} x={inches * 25.4} y={8.2}>
					{inches === 4 ? "4 in" : String(inches)}
				</Mark>
			))}
		</>
	);
}
