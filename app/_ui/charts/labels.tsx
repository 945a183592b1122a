"use client";

import { ZIndexLayer } from "recharts";
import styles from "./chart.module.css";
import { useDrawnPanel, usePlot } from "./drawn-panel";
import { LABEL_LINE } from "./sizes";

/**
 * Names written where things stand: zones along x at the bottom, zones along y at their upper edge,
 * lines at their right end on the side the line leaves free.
 */
export function Labels({ linesNamed }: { linesNamed: boolean }) {
	const panel = useDrawnPanel();
	const plot = usePlot();
	if (plot === null) return null;
	const { left, right, top, bottom, xPx, yPx } = plot;
	const px = (x: number) => Math.min(right, Math.max(left, xPx(x)));
	const py = (y: number) => Math.min(bottom, Math.max(top, yPx(y)));

	const alongX = panel.zones.filter(
		(zone) => zone.axis === "x" && px(zone.to) > px(zone.from),
	);
	const alongY = panel.zones.filter((zone) => zone.axis === "y");

	return (
		<ZIndexLayer zIndex={1500}>
			<g className={styles.labels}>
				{alongX.map((zone, index) => {
					const middle = (px(zone.from) + px(zone.to)) / 2;
					return (
						<text
							key={zone.label}
							data-kind={zone.kind}
							{...anchored(middle, left, right)}
							y={bottom - 8 - index * LABEL_LINE}
						>
							{zone.label}
						</text>
					);
				})}
				{alongY.map((zone) => (
					<text
						key={zone.label}
						data-kind={zone.kind}
						textAnchor="start"
						x={left + 8}
						y={Math.max(top + 14, py(zone.to) + 16)}
					>
						{zone.label}
					</text>
				))}
				{linesNamed &&
					panel.lines.map(({ name, points }, index) => {
						const end = points.at(-1);
						const before = points[Math.floor(points.length * 0.6)];
						if (end === undefined || before === undefined) return null;
						const falls = py(before.y) < py(end.y);
						const y = py(end.y) + (falls ? 22 : -12);
						return (
							<text
								key={name}
								data-line={index}
								textAnchor="end"
								x={px(end.x) - 6}
								y={Math.min(bottom - 6, Math.max(top + 14, y))}
							>
								{name}
							</text>
						);
					})}
			</g>
		</ZIndexLayer>
	);
}

/** Centred on `x`, but turned inwards near the edges so that nothing is cut off. */
export function anchored(x: number, left: number, right: number) {
	const room = 70;
	if (x - left < room)
		return { x: Math.max(left + 4, x - room), textAnchor: "start" as const };
	if (right - x < room)
		return { x: Math.min(right - 4, x + room), textAnchor: "end" as const };
	return { x, textAnchor: "middle" as const };
}
