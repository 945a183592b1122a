"use client";

import { useMemo } from "react";
import { Chart } from "@/app/_ui/charts/chart";
import { Section } from "@/app/_ui/section";
import type { Advice } from "@/lib/advice/advise";
import { buttChart } from "@/lib/present/butt-chart";
import { lengthChart } from "@/lib/present/length-chart";
import { tipChart } from "@/lib/present/tip-chart";
import { weightChart } from "@/lib/present/weight-chart";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";

/** One chart for each figure: what moving it does. */
export function Costs({ advice }: { advice: Advice }) {
	const { system } = useDesk();
	const charts = useMemo(
		() =>
			[weightChart, buttChart, lengthChart, tipChart].map((chart) =>
				chart(advice, system),
			),
		[advice, system],
	);
	return (
		<Section
			title="What each choice costs"
			lead="The shaded zones are where to be; the line marks the figure chosen."
		>
			<div className={styles.charts}>
				{charts.map((model) => (
					<Chart key={model.id} model={model} />
				))}
			</div>
		</Section>
	);
}
