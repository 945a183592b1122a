"use client";

import { useMemo } from "react";
import { DataTable } from "@/app/_ui/data-table";
import { useReader } from "@/app/_ui/preferences/reader";
import { formatNumber } from "@/lib/present/figures";
import { type Bound, givenUp, keptCount } from "@/lib/present/trade-off-view";
import type { Found } from "./use-search";

/** What every other quantity can still have under a bound. */
export function GivenUpTable({ found, bound }: { found: Found; bound: Bound }) {
	const reader = useReader();
	const { say } = reader;
	const { cloud, report } = found;
	const money = report.options[0]?.price;
	const rows = useMemo(
		() =>
			money === undefined
				? []
				: givenUp({
						points: cloud,
						criteria: report.criteria,
						bound,
						reader,
						money,
					}),
		[cloud, report, bound, reader, money],
	);
	return (
		<>
			<p role="status">
				{say("tradeOff.left", {
					kept: formatNumber(keptCount(cloud, bound), reader),
					count: formatNumber(cloud.count, reader),
				})}
			</p>
			<DataTable
				caption={say("tradeOff.others")}
				rowKey="name"
				columns={[
					{ key: "name", label: say("tradeOff.column.quantity") },
					{ key: "givesUp", label: say("tradeOff.column.givesUp") },
					{ key: "bestBefore", label: say("tradeOff.column.bestBefore") },
					{ key: "bestAfter", label: say("tradeOff.column.bestNow") },
					{ key: "before", label: say("tradeOff.column.before") },
					{ key: "after", label: say("tradeOff.column.now") },
				]}
				rows={rows.map((row) => ({ ...row }))}
			/>
		</>
	);
}
