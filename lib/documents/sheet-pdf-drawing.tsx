import { Image, Line, Path, Rect, Svg, Text, View } from "@react-pdf/renderer";
import { LABEL_PX, LABEL_ROW_PX } from "@/lib/present/cue-picture";
import type { CuePlate } from "./cue-plate";
import type { JobCode } from "./job-code";
import { PDF_FACE } from "./pdf-fonts";

/** Mean width of a letter, share of its size; rather narrow: what it clears must not reach beyond the words. */
const NARROW_ADVANCE = 0.48;

/** The picture over the whole width, drawn as lines and letters on a grey raster. */
export function PlateOnPaper({
	plate,
	widthPt,
}: {
	plate: CuePlate;
	widthPt: number;
}) {
	const { picture: drawing, png } = plate;
	const { frame, roomAbovePx, roomBelowPx } = drawing;
	const { widthPx, heightPx } = frame;
	const ptPerPx = widthPt / widthPx;
	const totalPx = roomAbovePx + heightPx + roomBelowPx;
	const spanY = -LABEL_ROW_PX - 6;
	const label = (x: number, y: number, text: string, side = "start") => (
		<Text
			key={`${text}-${x}`}
			x={x}
			y={y}
			textAnchor={side as "start" | "middle" | "end"}
			style={{ fontFamily: PDF_FACE, fontSize: LABEL_PX }}
		>
			{text}
		</Text>
	);
	return (
		<View style={{ width: widthPt, height: totalPx * ptPerPx }}>
			<Image
				src={{ data: png, format: "png" }}
				style={{
					position: "absolute",
					top: roomAbovePx * ptPerPx,
					width: widthPt,
					height: heightPx * ptPerPx,
				}}
			/>
			<Svg
				viewBox={`0 ${-roomAbovePx} ${widthPx} ${totalPx}`}
				style={{ width: widthPt, height: totalPx * ptPerPx }}
			>
				<Path
					d={drawing.outline}
					stroke="#000000"
					strokeWidth={1.2}
					fill="none"
				/>
				{drawing.hidden.map((box) => (
					<Rect
						key={`${box.part}-${box.x}`}
						x={box.x}
						y={box.y}
						width={box.width}
						height={box.height}
						fill="#ffffff"
						fillOpacity={0.6}
						stroke="#000000"
						strokeWidth={1}
						strokeDasharray="5 3"
					/>
				))}
				<Path
					d={`M0.5 ${spanY - 6}v12M${widthPx - 0.5} ${spanY - 6}v12M0.5 ${spanY}H${widthPx / 2 - 50}M${widthPx / 2 + 50} ${spanY}H${widthPx - 0.5}`}
					stroke="#000000"
					strokeWidth={1}
					fill="none"
				/>
				{label(widthPx / 2, spanY + 5, drawing.span, "middle")}
				{drawing.ends.map(({ text, side }) =>
					side === "left"
						? label(0, -6, text)
						: label(widthPx, -6, text, "end"),
				)}
				{drawing.marks.map((mark) => (
					<Line
						key={`${mark.kind}-${mark.text}`}
						x1={mark.x}
						x2={mark.x}
						y1={mark.fromY}
						y2={mark.textY}
						stroke="#000000"
						strokeWidth={1}
					/>
				))}
				{drawing.marks
					.filter(({ kind }) => kind === "balance")
					.map(({ x, fromY }) => (
						<Path key={x} d={`M${x} ${fromY}l7 12h-14z`} fill="#000000" />
					))}
				{drawing.marks.map(({ text, textX, textY }) => (
					<Rect
						key={text}
						x={textX}
						y={textY - LABEL_PX + 2}
						width={text.length * LABEL_PX * NARROW_ADVANCE}
						height={LABEL_PX + 2}
						fill="#ffffff"
					/>
				))}
				{drawing.marks.map(({ text, textX, textY }) =>
					label(textX, textY, text),
				)}
			</Svg>
		</View>
	);
}

/** The code back to the job, black on white. */
export const CodeOnPaper = ({
	code,
	sizePt,
}: {
	code: JobCode;
	sizePt: number;
}) => (
	<Svg
		viewBox={`0 0 ${code.sizeModules} ${code.sizeModules}`}
		style={{ width: sizePt, height: sizePt }}
	>
		<Path d={code.path} fill="#000000" />
	</Svg>
);
