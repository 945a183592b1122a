import { Circle, G, Line, Path, Text } from "@react-pdf/renderer";
import { gaugeStepsMm } from "@/lib/player/gauge";
import {
	CONE_SPAN_RAD,
	CONE_STEP_MM,
	fromApexMm,
	GLUE_MM,
	MARGIN_MM,
	onCone,
	type Paper,
	type PrintedCircle,
	RING_GAUGE,
	rulerTicks,
} from "./gauge-layout";

export const INK = "#1a1917";
const SOFT = "#4f5349";

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

export const Ring = ({
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
export function Cone({ paper }: { paper: Paper }) {
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
export function Rulers() {
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
