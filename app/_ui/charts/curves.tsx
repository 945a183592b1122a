"use client";

import { useId } from "react";
import { pattern, patterns, ZIndexLayer } from "recharts";
import type { ChartPoint, ChartZone } from "@/lib/present/chart-model";
import { useDrawnPanel, usePlot } from "./drawn-panel";
import { strokeOf } from "./strokes";

const ZONES = {
	wanted: {
		ground: "var(--zone-good)",
		edge: "var(--good)",
		Hatching: pattern({
			...patterns.diagonal,
			strokeWidth: 1,
			color: "var(--good)",
			opacity: 0.35,
		}),
	},
	limit: {
		ground: "var(--zone-bad)",
		edge: "var(--bad)",
		Hatching: pattern({
			...patterns.crosshatch,
			strokeWidth: 1,
			color: "var(--bad)",
			opacity: 0.3,
		}),
	},
} as const;

/** Layers between those of the drawing library: above its grid, and above the marker's line. */
const GROUND = -50;
const LINES = 450;

/**
 * Zones, bands and lines of a panel, plain paths each: as the drawing library's own items they would
 * have it work out the whole chart anew for every one that changes.
 */
export function Curves() {
	const { lines, zones } = useDrawnPanel();
	const plot = usePlot();
	const id = useId();
	if (plot === null) return null;
	const { left, right, top, bottom, xPx, yPx } = plot;
	const boxOf = ({ axis, from, to }: ChartZone) => {
		const [x1, x2] =
			axis === "x"
				? [Math.max(left, xPx(from)), Math.min(right, xPx(to))]
				: [left, right];
		const [y1, y2] =
			axis === "y"
				? [Math.max(top, yPx(to)), Math.min(bottom, yPx(from))]
				: [top, bottom];
		return { x: x1, y: y1, width: x2 - x1, height: y2 - y1 };
	};
	const through = (points: readonly { x: number; y: number }[]) =>
		points
			.map(({ x, y }) => `${xPx(x).toFixed(2)} ${yPx(y).toFixed(2)}`)
			.join("L");
	return (
		<>
			<ZIndexLayer zIndex={GROUND}>
				{zones.map((zone, index) => {
					const box = boxOf(zone);
					// Wholly outside the drawn range.
					if (!(box.width > 0 && box.height > 0)) return null;
					const { ground, edge, Hatching } = ZONES[zone.kind];
					const hatching = `${id}zone${index}`;
					return (
						<g key={`${zone.axis}-${zone.label}`}>
							<defs>
								<Hatching id={hatching} color={ground} bounds={box} />
							</defs>
							<rect
								{...box}
								fill={`url(#${hatching})`}
								stroke={edge}
								strokeWidth={1}
							/>
						</g>
					);
				})}
				{lines.map(({ name, points }, index) => {
					const { low, high } = edgesOf(points);
					if (low.length < 2) return null;
					const { stroke } = strokeOf(index);
					const above = through(high);
					const below = through([...low].reverse());
					return (
						<g key={name} stroke="none">
							<path d={`M${above}L${below}Z`} fill={stroke} fillOpacity={0.2} />
							<path
								d={`M${above}M${below}`}
								fill="none"
								stroke={stroke}
								strokeOpacity={0.5}
							/>
						</g>
					);
				})}
			</ZIndexLayer>
			<ZIndexLayer zIndex={LINES}>
				{lines.map(({ name, points, mark }, index) =>
					mark === "points" ? (
						<g key={name} fill={strokeOf(index).stroke}>
							{points.map(({ x, y }) => (
								<circle key={x} cx={xPx(x)} cy={yPx(y)} r={5} />
							))}
						</g>
					) : points.length < 2 ? null : (
						<path
							key={name}
							d={`M${through(points)}`}
							fill="none"
							{...strokeOf(index)}
						/>
					),
				)}
			</ZIndexLayer>
		</>
	);
}

/** The lower and the upper edge of a line's band, where it has one. */
function edgesOf(points: readonly ChartPoint[]) {
	const low: { x: number; y: number }[] = [];
	const high: { x: number; y: number }[] = [];
	for (const point of points) {
		if (point.low === undefined || point.high === undefined) continue;
		low.push({ x: point.x, y: point.low });
		high.push({ x: point.x, y: point.high });
	}
	return { low, high };
}
