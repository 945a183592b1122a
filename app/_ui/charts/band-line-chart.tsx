"use client";

import { memo, useMemo } from "react";
import {
	Area,
	CartesianGrid,
	ComposedChart,
	Line,
	pattern,
	patterns,
	ReferenceArea,
	ResponsiveContainer,
	Tooltip,
	XAxis,
	YAxis,
} from "recharts";
import { useInTurn } from "@/app/_ui/in-turn/use-in-turn";
import {
	axisTicks,
	type ChartModel,
	type ChartPanel,
	type ChartZone,
	innerTicks,
	panelRange,
	tickText,
} from "@/lib/present/chart-model";
import { useReader } from "../preferences/reader";
import styles from "./chart.module.css";
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

/** Told apart by dash as well as by colour. */
export const STROKES = [
	{ stroke: "var(--chalk)", strokeWidth: 3, strokeDasharray: undefined },
	{ stroke: "var(--brass)", strokeWidth: 3, strokeDasharray: "10 5" },
	{ stroke: "var(--soft)", strokeWidth: 3, strokeDasharray: "2 5" },
] as const;

export const strokeOf = (index: number) =>
	STROKES[index % STROKES.length] ?? STROKES[0];

/** With more lines than this, names at their ends would cross other lines. */
const MOST_DIRECT_LABELS = 2;

const ZONE_FILLS: Readonly<
	Record<ChartZone["kind"], React.ComponentProps<typeof ReferenceArea>["fill"]>
> = {
	wanted: {
		color: "var(--zone-good)",
		definition: pattern({
			...patterns.diagonal,
			strokeWidth: 1,
			color: "var(--good)",
			opacity: 0.35,
		}),
	},
	limit: {
		color: "var(--zone-bad)",
		definition: pattern({
			...patterns.crosshatch,
			strokeWidth: 1,
			color: "var(--bad)",
			opacity: 0.3,
		}),
	},
};

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
	const reader = useReader();
	const rows = useMemo(() => rowsOf(panel), [panel]);
	const xTicks = innerTicks(x.domain, X_TICKS);
	const room = isMarkerNamed ? MARKER_ROOM : 0;
	const yTicks = axisTicks({ ...panelRange(panel), count: 5 });
	return (
		<ResponsiveContainer width="100%" height={PANEL_HEIGHT + room}>
			<ComposedChart
				data={rows}
				margin={{ ...MARGIN, top: MARGIN.top + room }}
				syncId={syncId}
				syncMethod="value"
				accessibilityLayer={false}
			>
				<CartesianGrid stroke="var(--line)" vertical={false} />
				{panel.zones
					.filter((zone) => meets(zone, x))
					.map((zone) => (
						<ReferenceArea
							key={`${zone.axis}-${zone.label}`}
							{...(zone.axis === "x"
								? {
										x1: Math.max(zone.from, x.domain[0]),
										x2: Math.min(zone.to, x.domain[1]),
									}
								: { y1: zone.from, y2: zone.to })}
							fill={ZONE_FILLS[zone.kind]}
							fillOpacity={1}
							stroke={zone.kind === "wanted" ? "var(--good)" : "var(--bad)"}
							strokeWidth={1}
							ifOverflow="hidden"
							zIndex={-50}
						/>
					))}
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
				/>
				<YAxis
					width={AXIS_WIDTH}
					domain={[...yTicks.domain]}
					ticks={[...yTicks.ticks]}
					tickFormatter={(value: number) =>
						tickText(value, { step: yTicks.step, unit: panel.unit }, reader)
					}
					tick={TICK}
					stroke="var(--edge)"
					interval={0}
					allowDataOverflow
				/>
				{panel.lines.map((line, index) => (
					<Area
						key={`${line.name} band`}
						dataKey={`band${index}`}
						stroke={strokeOf(index).stroke}
						strokeOpacity={0.5}
						strokeWidth={1}
						fill={strokeOf(index).stroke}
						fillOpacity={0.2}
						isAnimationActive={false}
						activeDot={false}
						tooltipType="none"
						connectNulls
					/>
				))}
				{panel.lines.map((line, index) => (
					<Line
						key={line.name}
						dataKey={`line${index}`}
						name={line.name}
						{...strokeOf(index)}
						dot={false}
						activeDot={false}
						isAnimationActive={false}
						connectNulls
					/>
				))}
				<Marker panel={panel} isNamed={isMarkerNamed} />
				<Labels
					panel={panel}
					linesNamed={panel.lines.length <= MOST_DIRECT_LABELS}
				/>
				<Tooltip
					isAnimationActive={false}
					cursor={{ stroke: "var(--edge)" }}
					content={<Readout x={x} panel={panel} step={yTicks.step} />}
				/>
			</ComposedChart>
		</ResponsiveContainer>
	);
}

const TICK = { fill: "var(--soft)", fontSize: 15 } as const;

function Key({ panel }: { panel: ChartPanel }) {
	return (
		<ul className={styles.key}>
			{panel.lines.map((line, index) => (
				<li key={line.name}>
					<svg width="44" height="12" viewBox="0 0 44 12" aria-hidden="true">
						<path d="M0 6H44" fill="none" {...strokeOf(index)} />
					</svg>
					{line.name}
				</li>
			))}
		</ul>
	);
}

/** Zones that lie wholly outside the drawn range are not drawn. */
const meets = (zone: ChartZone, { domain }: ChartModel["x"]): boolean =>
	zone.axis === "y" || (zone.from < domain[1] && zone.to > domain[0]);

/** One row for each x, as the library wants it. */
function rowsOf({ lines }: ChartPanel): Record<string, unknown>[] {
	const rows = new Map<number, Record<string, unknown>>();
	for (const [index, { points }] of lines.entries())
		for (const { x, y, low, high } of points)
			rows.set(x, {
				...rows.get(x),
				x,
				[`line${index}`]: y,
				...(low !== undefined && high !== undefined
					? { [`band${index}`]: [low, high] }
					: {}),
			});
	return [...rows.values()].sort((a, b) => Number(a.x) - Number(b.x));
}
