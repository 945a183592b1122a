"use client";

import dynamic from "next/dynamic";
import type { ChartModel } from "@/lib/present/chart-model";
import { useNear } from "../in-turn/use-near";
import styles from "./chart.module.css";
import { ChartFrame } from "./chart-frame";
import { PANEL_HEIGHT } from "./sizes";

/** The drawing library comes with the first chart that is shown, never with a page that has none. */
const BandLineChart = dynamic(
	() => import("./band-line-chart").then((module) => module.BandLineChart),
	{ ssr: false, loading: () => <Waiting panels={1} /> },
);

const Waiting = ({ panels }: { panels: number }) => (
	<div
		className={styles.waiting}
		style={{ minBlockSize: panels * PANEL_HEIGHT }}
	/>
);

/** A chart with its words and its table; those are there before, and without, the drawing. */
export function Chart({
	model,
	heading,
}: {
	model: ChartModel;
	heading?: "h2" | "h3" | "h4";
}) {
	const [room, isNear] = useNear();
	return (
		<ChartFrame model={model} heading={heading}>
			<div ref={room}>
				<BandLineChart model={model} isNear={isNear} />
			</div>
		</ChartFrame>
	);
}
