"use client";

import { memo } from "react";
import {
	CartesianGrid,
	ComposedChart,
	Line,
	ResponsiveContainer,
	Tooltip,
	XAxis,
	YAxis,
} from "recharts";
import { useInTurn } from "@/app/_ui/in-turn/use-in-turn";
import { useSame } from "@/app/_ui/in-turn/use-same";
import {
	type AxisTicks,
	axisTicks,
	type ChartModel,
	type ChartPanel,
	innerTicks,
	panelRange,
	tickText,
} from "@/lib/present/chart-model";
import { useReader } from "../preferences/reader";
import styles from "./chart.module.css";
import { Curves } from "./curves";
import { PanelContext } from "./drawn-panel";
import { Labels } from "./labels";
import { Marker, MarkerContext } from "./marker";
import { Readout } from "./readout";
import {
	AXIS_WIDTH,
	MARGIN,
	MARKER_ROOM,
	PANEL_HEIGHT,
	X_TICKS,
} from "./sizes";
import { strokeOf } from "./strokes";

/** With more lines than this, names at their ends would cross other lines. */
const MOST_DIRECT_LABELS = 2;

/**
 * Lines with their bands over one quantity, one panel for each unit of y. The marker follows at once;
 * panels whose lines have changed are drawn in turn, those in sight first.
 */
export function BandLineChart({
	model,
	isNear,
}: {
	model: ChartModel;
	isNear: boolean;
}) {
	return (
		<div aria-hidden="true">
			<MarkerContext.Provider value={model.marker}>
				{model.panels.map((panel, index) => (
					<PanelInTurn
						key={panel.label}
						plot={{
							syncId: model.id,
							x: model.x,
							panel,
							isMarkerNamed: index === 0 && model.marker !== undefined,
						}}
						isNear={isNear}
					/>
				))}
			</MarkerContext.Provider>
			<p className={styles.xName}>
				{model.x.label}
				{model.x.unit !== "" && ` (${model.x.unit})`}
			</p>
		</div>
	);
}

interface Plot {
	readonly syncId: string;
	readonly x: ChartModel["x"];
	readonly panel: ChartPanel;
	readonly isMarkerNamed: boolean;
}

function PanelInTurn({ plot, isNear }: { plot: Plot; isNear: boolean }) {
	return <Panel plot={useInTurn(plot, isNear)} />;
}

const Panel = memo(function Panel({
	plot: { syncId, x, panel, isMarkerNamed },
}: {
	plot: Plot;
}) {
	return (
		<div className={styles.panel}>
			<p className={styles.axisName}>
				{panel.label}
				{panel.unit !== "" && ` (${panel.unit})`}
			</p>
			{panel.lines.length > MOST_DIRECT_LABELS && <Key panel={panel} />}
			<div className={styles.plot}>
				<Drawing
					syncId={syncId}
					x={x}
					panel={panel}
					isMarkerNamed={isMarkerNamed}
				/>
			</div>
		</div>
	);
});

function Drawing({ syncId, x, panel, isMarkerNamed }: Plot) {
	const axes = useSame({
		x,
		yUnit: panel.unit,
		y: axisTicks({ ...panelRange(panel), count: 5 }),
		stops: stopsOf(panel).filter(
			(stop) => x.isWhole !== true || Number.isInteger(stop.x),
		),
		isNamed: panel.lines.length <= MOST_DIRECT_LABELS,
	});
	return (
		<PanelContext value={panel}>
			<Axes syncId={syncId} axes={axes} isMarkerNamed={isMarkerNamed} />
		</PanelContext>
	);
}

interface AxesOf {
	readonly x: ChartModel["x"];
	readonly yUnit: string;
	readonly y: AxisTicks;
	/** Where along x the pointer stops. */
	readonly stops: readonly { readonly x: number }[];
	readonly isNamed: boolean;
}

/** The drawing library's part. What is drawn between the axes comes by context and moves without it. */
const Axes = memo(function Axes({
	syncId,
	axes: { x, yUnit, y, stops, isNamed },
	isMarkerNamed,
}: Pick<Plot, "syncId" | "isMarkerNamed"> & { readonly axes: AxesOf }) {
	const reader = useReader();
	const xTicks = ticksOf(x);
	const room = isMarkerNamed ? MARKER_ROOM : 0;
	return (
		<ResponsiveContainer width="100%" height={PANEL_HEIGHT + room}>
			<ComposedChart
				data={stops}
				margin={{ ...MARGIN, top: MARGIN.top + room }}
				syncId={syncId}
				syncMethod="value"
				accessibilityLayer={false}
			>
				<CartesianGrid stroke="var(--line)" vertical={false} />
				<XAxis
					dataKey="x"
					type="number"
					domain={[...x.domain]}
					ticks={[...xTicks.ticks]}
					tickFormatter={(value: number) =>
						tickText(value, { step: xTicks.step, unit: x.unit }, reader)
					}
					tick={TICK}
					stroke="var(--edge)"
					allowDataOverflow
					includeHidden
				/>
				<YAxis
					width={AXIS_WIDTH}
					domain={[...y.domain]}
					ticks={[...y.ticks]}
					tickFormatter={(value: number) =>
						tickText(value, { step: y.step, unit: yUnit }, reader)
					}
					tick={TICK}
					stroke="var(--edge)"
					interval={0}
					allowDataOverflow
				/>
				{/* The pointer stops only where some item of the library's has data. */}
				<Line dataKey={NOTHING} hide />
				<Curves />
				<Marker isNamed={isMarkerNamed} />
				<Labels linesNamed={isNamed} />
				<Tooltip
					isAnimationActive={false}
					filterNull={false}
					cursor={{ stroke: "var(--edge)" }}
					content={<Readout x={x} step={y.step} />}
				/>
			</ComposedChart>
		</ResponsiveContainer>
	);
});

/** Ticks along x; of a count only whole ones. */
function ticksOf({ domain, isWhole = false }: ChartModel["x"]) {
	const { ticks, step } = innerTicks(domain, X_TICKS);
	return isWhole
		? { ticks: ticks.filter(Number.isInteger), step: Math.ceil(step) }
		: { ticks, step };
}

const NOTHING = () => null;
const TICK = { fill: "var(--soft)", fontSize: 15 } as const;

function Key({ panel }: { panel: ChartPanel }) {
	return (
		<ul className={styles.key}>
			{panel.lines.map((line, index) => (
				<li key={line.name}>
					<svg width="44" height="12" viewBox="0 0 44 12" aria-hidden="true">
						{line.mark === "points" ? (
							<circle cx="22" cy="6" r="5" fill={strokeOf(index).stroke} />
						) : (
							<path d="M0 6H44" fill="none" {...strokeOf(index)} />
						)}
					</svg>
					{line.name}
				</li>
			))}
		</ul>
	);
}

/** Where the lines have points, ascending. */
const stopsOf = ({ lines }: ChartPanel): readonly { readonly x: number }[] =>
	[...new Set(lines.flatMap(({ points }) => points.map(({ x }) => x)))]
		.sort((a, b) => a - b)
		.map((x) => ({ x }));
