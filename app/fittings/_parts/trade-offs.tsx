"use client";

import { useCallback, useDeferredValue, useMemo, useState } from "react";
import { Field } from "@/app/_ui/fields/field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Section } from "@/app/_ui/section";
import type { CueChoice } from "@/lib/advice/choice";
import type { CriterionId } from "@/lib/advice/criteria";
import { formatMeasure } from "@/lib/present/criterion-words";
import { formatNumber } from "@/lib/present/figures";
import {
	axesIn,
	type Bound,
	isWithin,
	measureAt,
	rangeOf,
} from "@/lib/present/trade-off-view";
import { GivenUpTable } from "./given-up-table";
import { Pick } from "./pick";
import { PickedCue } from "./picked-cue";
import { axisOptions, type Mark, Scatter } from "./scatter";
import styles from "./search.module.css";
import { usePicked } from "./use-picked";
import type { Found } from "./use-search";

const FIRST: readonly (readonly [CriterionId, CriterionId])[] = [
	["balance", "steadiness"],
	["build", "stiffness"],
];

/** Axes for criteria that wishes have fixed. */
const INSTEAD: readonly CriterionId[] = ["balance", "build", "price"];

/** A slider in so many steps from one end of what there is to the other. */
const STEPS = 100;

/** Cues none of which is beaten on all counts: what more of one costs the others. */
export function TradeOffs({
	found,
	cueAt,
}: {
	found: Found;
	cueAt: (place: number) => Promise<CueChoice>;
}) {
	const reader = useReader();
	const { say } = reader;
	const { report, cloud } = found;
	const money = report.options[0]?.price;
	const axes = useMemo(() => axesIn(cloud), [cloud]);
	const marks = useMemo<readonly Mark[]>(
		() =>
			report.options.map(({ results }, i) => ({
				name: `${i + 1}`,
				at: (id) => results[id].value,
			})),
		[report],
	);
	const [pairs, setPairs] = useState(FIRST);
	const [wanted, setWanted] = useState<{
		id: CriterionId;
		side: Bound["side"];
		step: number;
	}>({ id: "weight", side: "most", step: STEPS });
	const [picked, setPicked] = useState<{ key: number; place: number } | null>(
		null,
	);
	const place = picked?.key === found.key ? picked.place : null;
	const pick = useCallback(
		(at: number) => setPicked({ key: found.key, place: at }),
		[found.key],
	);
	const choice = usePicked(place, cueAt);

	const order = useMemo(
		() => orderAlong(cloud, pairs[0]?.[0] ?? "weight"),
		[cloud, pairs],
	);
	const id = axes.includes(wanted.id) ? wanted.id : axes[0];
	const bound = useMemo<Bound | null>(() => {
		const range = id === undefined ? null : rangeOf(cloud, id);
		if (id === undefined || range === null) return null;
		const value = range.low + ((range.high - range.low) * wanted.step) / STEPS;
		return { id, side: wanted.side, value };
	}, [cloud, id, wanted]);
	const keeps = useMemo(
		() => (bound === null ? null : isWithin(cloud, bound)),
		[cloud, bound],
	);
	const late = useDeferredValue(bound);

	if (money === undefined || axes.length < 2 || bound === null)
		return (
			<Section title={say("tradeOff.title")}>
				<p>{say("tradeOff.alike")}</p>
			</Section>
		);
	const inside = (axis: CriterionId, other: CriterionId) =>
		axes.includes(axis)
			? axis
			: (INSTEAD.find((one) => one !== other && axes.includes(one)) ??
				axes.find((one) => one !== other) ??
				axis);
	return (
		<Section
			title={say("tradeOff.title")}
			lead={say("tradeOff.lead", { count: formatNumber(cloud.count, reader) })}
		>
			<div className={styles.linked}>
				{pairs.map(([a, b], i) => {
					const across = inside(a, b);
					const up = inside(b, across);
					return (
						<div className={styles.scatter} key={i === 0 ? "first" : "second"}>
							<div className={styles.selects}>
								<Pick
									label={say("tradeOff.across", { chart: NTH[i] ?? "" })}
									value={across}
									options={axisOptions(axes, reader)}
									onChange={(to) => setPairs(put(pairs, i, [to, b]))}
								/>
								<Pick
									label={say("tradeOff.up", { chart: NTH[i] ?? "" })}
									value={up}
									options={axisOptions(axes, reader)}
									onChange={(to) => setPairs(put(pairs, i, [a, to]))}
								/>
							</div>
							<Scatter
								points={cloud}
								across={across}
								up={up}
								keeps={keeps}
								marks={marks}
								picked={place}
								money={money}
								onPick={pick}
							/>
						</div>
					);
				})}
			</div>
			<Field label={say("tradeOff.shown")} hint={say("tradeOff.shownHint")}>
				{(wiring) => (
					<input
						{...wiring}
						className={styles.range}
						type="range"
						min={0}
						max={cloud.count - 1}
						value={place === null ? 0 : order.indexOf(place)}
						aria-valuetext={
							place === null
								? say("tradeOff.nonePicked")
								: say("tradeOff.picked", {
										place: String(order.indexOf(place) + 1),
										count: String(cloud.count),
									})
						}
						onChange={(event) => pick(order[Number(event.target.value)] ?? 0)}
					/>
				)}
			</Field>
			<PickedCue
				found={found}
				place={place}
				choice={choice}
				onStep={(by) => {
					const at = place === null ? -1 : order.indexOf(place);
					const next = Math.min(order.length - 1, Math.max(0, at + by));
					pick(order[next] ?? 0);
				}}
			/>
			<div className={styles.selects}>
				<Pick
					label={say("tradeOff.hold")}
					value={bound.id}
					options={axisOptions(axes, reader)}
					onChange={(to) =>
						setWanted({
							...wanted,
							id: to,
							step: wanted.side === "most" ? STEPS : 0,
						})
					}
				/>
				<Pick
					label={say("tradeOff.to")}
					value={wanted.side}
					options={[
						{ value: "most", label: say("tradeOff.side.most") },
						{ value: "least", label: say("tradeOff.side.least") },
					]}
					onChange={(side) =>
						setWanted({ ...wanted, side, step: side === "most" ? STEPS : 0 })
					}
				/>
				<Field
					label={say(`tradeOff.held.${wanted.side}`, {
						value: formatMeasure(bound.id, bound.value, reader, money),
					})}
				>
					{(wiring) => (
						<input
							{...wiring}
							className={styles.range}
							type="range"
							min={0}
							max={STEPS}
							value={wanted.step}
							aria-valuetext={formatMeasure(
								bound.id,
								bound.value,
								reader,
								money,
							)}
							onChange={(event) =>
								setWanted({ ...wanted, step: Number(event.target.value) })
							}
						/>
					)}
				</Field>
			</div>
			{late !== null && <GivenUpTable found={found} bound={late} />}
		</Section>
	);
}

const NTH = ["first", "second"] as const;

type Pairs = typeof FIRST;
const put = (pairs: Pairs, at: number, pair: Pairs[number]): Pairs =>
	pairs.map((one, i) => (i === at ? pair : one));

/** Places of the cloud by one criterion, ascending. */
const orderAlong = (
	cloud: Found["cloud"],
	id: CriterionId,
): readonly number[] =>
	Array.from({ length: cloud.count }, (_, k) => k).sort(
		(a, b) => measureAt(cloud, a, id) - measureAt(cloud, b, id) || a - b,
	);
