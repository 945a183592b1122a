import type { Advice } from "@/lib/advice/advise";
import type { Reader } from "@/lib/words/reader";
import type { ChartModel } from "./chart-model";

/** What a chart needs of an advice, as plain data; nothing else of the advice changes the chart. */
export interface CostParts<Shown, Asked> {
	/** What is said and marked. */
	readonly shown: Shown;
	/** What the curve is worked out from, no more: a choice that only moves along it leaves it as it is. */
	readonly asked: Asked;
}

export interface CostModel<Shown, Asked, Curve>
	extends CostParts<Shown, Asked> {
	readonly curve: Curve;
	readonly reader: Reader;
}

/** A chart of what a choice costs, in the pieces it is worked out in. */
export interface CostChart<Shown, Asked, Curve> {
	readonly partsOf: (advice: Advice) => CostParts<Shown, Asked>;
	/** The long piece. */
	readonly curveOf: (asked: Asked) => Curve;
	readonly modelOf: (made: CostModel<Shown, Asked, Curve>) => ChartModel;
}

/** All pieces at once. */
export const chartOf =
	<Shown, Asked, Curve>({
		partsOf,
		curveOf,
		modelOf,
	}: CostChart<Shown, Asked, Curve>) =>
	(advice: Advice, reader: Reader): ChartModel => {
		const parts = partsOf(advice);
		return modelOf({ ...parts, curve: curveOf(parts.asked), reader });
	};
