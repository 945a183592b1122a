"use client";

import { createContext, useContext } from "react";
import { usePlotArea, useXAxisScale, useYAxisScale } from "recharts";
import type { ChartPanel } from "@/lib/present/chart-model";

/** The panel whose lines are drawn; apart from its axes, which need no drawing anew when lines move. */
export const PanelContext = createContext<ChartPanel | null>(null);

export function useDrawnPanel(): ChartPanel {
	const panel = useContext(PanelContext);
	if (panel === null) throw new Error("useDrawnPanel outside a panel");
	return panel;
}

/** Where the chart's plot lies and where its axes put a value, in pixels; null until it is laid out. */
export function usePlot() {
	const area = usePlotArea();
	const xScale = useXAxisScale();
	const yScale = useYAxisScale();
	if (area === undefined || xScale === undefined || yScale === undefined)
		return null;
	const { x: left, y: top, width, height } = area;
	return {
		left,
		top,
		right: left + width,
		bottom: top + height,
		xPx: (x: number) => Number(xScale(x)),
		yPx: (y: number) => Number(yScale(y)),
	};
}
