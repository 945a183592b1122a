"use client";

import { memo, useMemo } from "react";
import { Chart } from "@/app/_ui/charts/chart";
import { useReader } from "@/app/_ui/preferences/reader";
import { Section } from "@/app/_ui/section";
import type { Advice } from "@/lib/advice/advise";
import { buttChart } from "@/lib/present/butt-chart";
import { lengthChart } from "@/lib/present/length-chart";
import { tipChart } from "@/lib/present/tip-chart";
import { weightChart } from "@/lib/present/weight-chart";
import styles from "./fitting.module.css";

const CHARTS = {
	weight: weightChart,
	butt: buttChart,
	length: lengthChart,
	tip: tipChart,
} as const;

/** One chart for each figure: what moving it does. */
export function Costs({ advice }: { advice: Advice }) {
	const { say } = useReader();
	return (
		<Section
			title={say("fitting.costs.title")}
			lead={say("fitting.costs.lead")}
		>
			<div className={styles.charts}>
				{Object.entries(CHARTS).map(([name, modelOf]) => (
					<Cost key={name} modelOf={modelOf} advice={advice} />
				))}
			</div>
		</Section>
	);
}

/** A part of its own, so that other work may come between one chart and the next. */
const Cost = memo(function Cost({
	modelOf,
	advice,
}: {
	modelOf: (typeof CHARTS)[keyof typeof CHARTS];
	advice: Advice;
}) {
	const reader = useReader();
	return (
		<Chart
			model={useMemo(() => modelOf(advice, reader), [modelOf, advice, reader])}
		/>
	);
});
