"use client";

import { memo, useMemo } from "react";
import { Chart } from "@/app/_ui/charts/chart";
import { useInTurn } from "@/app/_ui/in-turn/use-in-turn";
import { useNear } from "@/app/_ui/in-turn/use-near";
import { useReader } from "@/app/_ui/preferences/reader";
import { Section } from "@/app/_ui/section";
import type { Advice } from "@/lib/advice/advise";
import { BUTT_COST } from "@/lib/present/butt-chart";
import type { CostChart } from "@/lib/present/cost-chart";
import { LENGTH_COST } from "@/lib/present/length-chart";
import { TIP_COST } from "@/lib/present/tip-chart";
import { WEIGHT_COST } from "@/lib/present/weight-chart";
import styles from "./fitting.module.css";

/** One chart for each figure: what moving it does. */
export function Costs({ advice }: { advice: Advice }) {
	const { say } = useReader();
	return (
		<Section
			title={say("fitting.costs.title")}
			lead={say("fitting.costs.lead")}
		>
			<div className={styles.charts}>
				<Cost cost={WEIGHT_COST} advice={advice} />
				<Cost cost={BUTT_COST} advice={advice} />
				<Cost cost={LENGTH_COST} advice={advice} />
				<Cost cost={TIP_COST} advice={advice} />
			</div>
		</Section>
	);
}

/** Worked out in turn, those in sight first, and of that only what the advice has changed. */
const Cost = memo(function Cost<Shown, Asked, Curve>({
	cost: { partsOf, curveOf, modelOf },
	advice,
}: {
	cost: CostChart<Shown, Asked, Curve>;
	advice: Advice;
}) {
	const reader = useReader();
	const [room, isNear] = useNear();
	const parts = useInTurn(
		useMemo(() => partsOf(advice), [partsOf, advice]),
		isNear,
	);
	const { shown, asked } = parts;
	const curve = useMemo(() => curveOf(asked), [curveOf, asked]);
	const model = useMemo(
		() => modelOf({ shown, asked, curve, reader }),
		[modelOf, shown, asked, curve, reader],
	);
	return (
		<div ref={room}>
			<Chart model={model} />
		</div>
	);
}) as <Shown, Asked, Curve>(p: {
	cost: CostChart<Shown, Asked, Curve>;
	advice: Advice;
}) => React.ReactNode;
