"use client";

import { useId, useMemo } from "react";
import { useWidth } from "@/app/_ui/cue-picture/use-width";
import { DataTable } from "@/app/_ui/data-table";
import { useReader } from "@/app/_ui/preferences/reader";
import { CRITERION_IDS, type CriterionId } from "@/lib/advice/criteria";
import { thin } from "@/lib/present/chart-axes";
import { axisTicks, tickText } from "@/lib/present/chart-model";
import {
	criterionName,
	criterionTitle,
	formatMeasure,
	type Money,
	measureAxis,
} from "@/lib/present/criterion-words";
import { formatNumber } from "@/lib/present/figures";
import {
	measureAt,
	type Points,
	rangeOf,
	tradeOffText,
} from "@/lib/present/trade-off-view";
import type { Reader } from "@/lib/words/reader";
import styles from "./search.module.css";

const USUAL_WIDTH_PX = 560;
const HEIGHT_PX = 340;
const LEFT = 64;
const BOTTOM = 48;
const TOP = 12;
const RIGHT = 16;
/** A press further from every point than this picks none. */
const REACH_PX = 28;
/** More points than this would only cover each other; the worthiest are drawn. */
const MOST_DRAWN = 2000;

/** A cue put forward, by its measures. */
export interface Mark {
	readonly name: string;
	readonly at: (id: CriterionId) => number;
}

/** Cues by two criteria. Those beyond the bound are greyed; a press picks the nearest. */
export function Scatter({
	points,
	across,
	up,
	keeps,
	marks,
	picked,
	money,
	onPick,
}: {
	points: Points;
	across: CriterionId;
	up: CriterionId;
	keeps: ((place: number) => boolean) | null;
	marks: readonly Mark[];
	picked: number | null;
	money: Money;
	onPick: (place: number) => void;
}) {
	const reader = useReader();
	const id = useId();
	const [room, widthPx] = useWidth(USUAL_WIDTH_PX);
	const drawn = Math.min(points.count, MOST_DRAWN);
	const plot = useMemo(() => {
		const side = (name: CriterionId, from: number, to: number) => {
			const axis = measureAxis(name, reader, money);
			const range = rangeOf(points, name) ?? { low: 0, high: 0 };
			const inside = [
				range.low,
				range.high,
				...marks.map(({ at }) => at(name)),
			];
			const { ticks, step, domain } = axisTicks({
				from: axis.at(Math.min(...inside)),
				to: axis.at(Math.max(...inside)),
				count: 5,
			});
			const scale = (to - from) / (domain[1] - domain[0]);
			return {
				ticks,
				label: (tick: number) =>
					tickText(tick, { step, unit: axis.unit }, reader),
				tick: (value: number) => from + (value - domain[0]) * scale,
				px: (value: number) => from + (axis.at(value) - domain[0]) * scale,
				name: `${criterionTitle(name, reader)}${axis.unit === "" ? "" : ` (${axis.unit})`}`,
			};
		};
		return {
			x: side(across, LEFT, widthPx - RIGHT),
			y: side(up, HEIGHT_PX - BOTTOM, TOP),
		};
	}, [points, across, up, reader, money, widthPx, marks]);
	const at = useMemo(() => {
		const places = new Float32Array(2 * drawn);
		for (let k = 0; k < drawn; k++) {
			places[2 * k] = plot.x.px(measureAt(points, k, across));
			places[2 * k + 1] = plot.y.px(measureAt(points, k, up));
		}
		return places;
	}, [points, across, up, plot, drawn]);
	const [kept, beyond] = useMemo(() => {
		let inside = "";
		let outside = "";
		for (let k = 0; k < drawn; k++) {
			const dot = `M${(at[2 * k] as number).toFixed(1)} ${(at[2 * k + 1] as number).toFixed(1)}h0`;
			if (keeps === null || keeps(k)) inside += dot;
			else outside += dot;
		}
		return [inside, outside];
	}, [at, keeps, drawn]);

	const pick = (event: React.MouseEvent<SVGSVGElement>) => {
		const box = event.currentTarget.getBoundingClientRect();
		const x = ((event.clientX - box.left) * widthPx) / box.width;
		const y = ((event.clientY - box.top) * HEIGHT_PX) / box.height;
		let nearest = -1;
		let least = REACH_PX;
		for (let k = 0; k < drawn; k++) {
			const away = Math.hypot(
				(at[2 * k] as number) - x,
				(at[2 * k + 1] as number) - y,
			);
			if (away < least) {
				least = away;
				nearest = k;
			}
		}
		if (nearest >= 0) onPick(nearest);
	};

	const title = reader.say("tradeOff.chart", {
		up: criterionTitle(up, reader),
		across: criterionName(across, reader),
	});
	return (
		<figure aria-labelledby={`${id}-title`}>
			<h3 id={`${id}-title`}>{title}</h3>
			<div className={styles.plot} ref={room}>
				{/* biome-ignore-start lint/a11y/useKeyWithClickEvents: the slider beneath picks the same cues by key */}
				{/* biome-ignore-start lint/a11y/noSvgWithoutTitle: named by the heading above */}
				<svg
					viewBox={`0 0 ${widthPx} ${HEIGHT_PX}`}
					role="img"
					aria-labelledby={`${id}-title`}
					aria-describedby={`${id}-words`}
					onClick={pick}
				>
					<path
						className={styles.axis}
						d={`M${LEFT} ${TOP}V${HEIGHT_PX - BOTTOM}H${widthPx - RIGHT}`}
					/>
					{plot.x.ticks.map((tick) => (
						<text
							key={tick}
							x={plot.x.tick(tick)}
							y={HEIGHT_PX - BOTTOM + 18}
							textAnchor="middle"
						>
							{plot.x.label(tick)}
						</text>
					))}
					{plot.y.ticks.map((tick) => (
						<text
							key={tick}
							x={LEFT - 8}
							y={plot.y.tick(tick) + 5}
							textAnchor="end"
						>
							{plot.y.label(tick)}
						</text>
					))}
					<text
						x={(LEFT + widthPx - RIGHT) / 2}
						y={HEIGHT_PX - 6}
						textAnchor="middle"
					>
						{plot.x.name}
					</text>
					<path className={styles.beyond} d={beyond} data-points="beyond" />
					<path className={styles.kept} d={kept} data-points="kept" />
					{marks.map((mark, i) => (
						<g className={styles.mark} key={mark.name}>
							<circle
								cx={plot.x.px(mark.at(across))}
								cy={plot.y.px(mark.at(up))}
								r={10}
							/>
							<text
								x={plot.x.px(mark.at(across))}
								y={plot.y.px(mark.at(up)) + 5}
								textAnchor="middle"
							>
								{i + 1}
							</text>
						</g>
					))}
					{picked !== null && (
						<circle
							className={styles.picked}
							cx={plot.x.px(measureAt(points, picked, across))}
							cy={plot.y.px(measureAt(points, picked, up))}
							r={9}
						/>
					)}
				</svg>
				{/* biome-ignore-end lint/a11y/noSvgWithoutTitle: named by the heading above */}
				{/* biome-ignore-end lint/a11y/useKeyWithClickEvents: the slider beneath picks the same cues by key */}
			</div>
			<figcaption id={`${id}-words`} className={styles.small}>
				{tradeOffText({ points, across, up, reader, money })}
				{drawn < points.count &&
					reader.say("tradeOff.worthiest", {
						count: formatNumber(drawn, reader),
					})}
			</figcaption>
			<details className={styles.more}>
				<summary>{reader.say("part.asTable")}</summary>
				<DataTable
					caption={title}
					captionHidden
					columns={[
						{ key: "x", label: plot.x.name, numeric: true },
						{ key: "y", label: plot.y.name, numeric: true },
					]}
					rows={tableRows({ points, across, up, drawn }).map(([x, y]) => ({
						x: formatMeasure(across, x, reader, money),
						y: formatMeasure(up, y, reader, money),
					}))}
				/>
			</details>
		</figure>
	);
}

/** A few cues from one end of the axis to the other. */
function tableRows(p: {
	points: Points;
	across: CriterionId;
	up: CriterionId;
	drawn: number;
}): readonly (readonly [number, number])[] {
	const rows = Array.from(
		{ length: p.drawn },
		(_, k) =>
			[measureAt(p.points, k, p.across), measureAt(p.points, k, p.up)] as const,
	).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
	return rows.length < 3 ? rows : thin(rows, 17);
}

export const axisOptions = (ids: readonly CriterionId[], reader: Reader) =>
	CRITERION_IDS.filter((id) => ids.includes(id)).map((id) => ({
		value: id,
		label: criterionTitle(id, reader),
	}));
