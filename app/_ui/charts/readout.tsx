"use client";

import {
	type ChartModel,
	innerTicks,
	tickText,
} from "@/lib/present/chart-model";
import { useReader } from "../preferences/reader";
import styles from "./chart.module.css";
import { useDrawnPanel } from "./drawn-panel";
import { X_TICKS } from "./sizes";

/** The numbers under the pointer. `active` and `label` come from the chart. */
export function Readout({
	x,
	step,
	active,
	label,
}: {
	x: ChartModel["x"];
	step: number;
	active?: boolean;
	label?: string | number;
}) {
	const reader = useReader();
	const panel = useDrawnPanel();
	if (!active || typeof label !== "number") return null;
	const xStep = x.isWhole ? 1 : innerTicks(x.domain, X_TICKS).step / 10;
	const y = (value: number) =>
		`${tickText(value, { step: step / 10, unit: "" }, reader)}${panel.unit === "" ? "" : `\u00a0${panel.unit}`}`;
	return (
		<div className={styles.readout}>
			<p>
				{x.label} {tickText(label, { step: xStep, unit: "" }, reader)}
				{"\u00a0"}
				{x.unit}
			</p>
			{panel.lines.map(({ name, points }) => {
				const point = points.find((one) => one.x === label);
				if (point === undefined) return null;
				return (
					<p key={name}>
						{name}: <strong>{y(point.y)}</strong>
						{point.low !== undefined &&
							point.high !== undefined &&
							reader.say("part.bandOf", {
								low: y(point.low),
								high: y(point.high),
							})}
					</p>
				);
			})}
		</div>
	);
}
