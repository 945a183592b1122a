"use client";

import { createContext, useContext } from "react";
import { ZIndexLayer } from "recharts";
import { type ChartModel, lineAt } from "@/lib/present/chart-model";
import styles from "./chart.module.css";
import { useDrawnPanel, usePlot } from "./drawn-panel";
import { anchored } from "./labels";

/** Apart from the panels: when only what is chosen moves, they need no drawing anew. */
export const MarkerContext = createContext<ChartModel["marker"]>(undefined);

/** What is chosen now: a line across the panel, a dot where it meets the panel's lines, its name above. */
export function Marker({ isNamed }: { isNamed: boolean }) {
	const marker = useContext(MarkerContext);
	const panel = useDrawnPanel();
	const plot = usePlot();
	if (marker === undefined || plot === null) return null;
	const { left, right, top, bottom, xPx, yPx } = plot;
	const at = xPx(marker.x);
	if (!(at >= left - 0.5 && at <= right + 0.5)) return null;
	return (
		<>
			<ZIndexLayer zIndex={UNDER_LINES}>
				<line
					className={styles.markerLine}
					x1={at}
					x2={at}
					y1={top}
					y2={bottom}
				/>
			</ZIndexLayer>
			<ZIndexLayer zIndex={OVER_LINES}>
				<g className={styles.labels}>
					{panel.lines.map(({ name, points }) => {
						const y = lineAt(points, marker.x);
						return y === null ? null : (
							<circle
								key={name}
								cx={at}
								cy={Math.min(bottom, Math.max(top, yPx(y)))}
								r={6}
							/>
						);
					})}
					{isNamed && (
						<text
							className={styles.marker}
							{...anchored(at, left, right)}
							y={top - 10}
						>
							{marker.label}
						</text>
					)}
				</g>
			</ZIndexLayer>
		</>
	);
}

/** Layers of the drawing library's own: its reference lines, and above everything it draws. */
const UNDER_LINES = 400;
const OVER_LINES = 1500;
