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
				{formatNumber(keptCount(cloud, bound), reader)} of{" "}
				{formatNumber(cloud.count, reader)} cues are left.
			</p>
			<DataTable
				caption="What the others can still have"
				rowKey="name"
				columns={[
					{ key: "name", label: "Quantity" },
					{ key: "givesUp", label: "Best must give up" },
					{ key: "bestBefore", label: "Best before" },
					{ key: "bestAfter", label: "Best now" },
					{ key: "before", label: "Range before" },
					{ key: "after", label: "Range now" },
				]}
				rows={rows.map((row) => ({ ...row }))}
			/>
		</>
	);
}
