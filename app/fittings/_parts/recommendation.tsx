"use client";

import { useMemo } from "react";
import { Chart } from "@/app/_ui/charts/chart";
import { CuePicture } from "@/app/_ui/cue-picture/cue-picture";
import { FigureCard, Figures } from "@/app/_ui/figure-card";
import { Notice } from "@/app/_ui/notice";
import { Section, Stack } from "@/app/_ui/section";
import type { Advice } from "@/lib/advice/advise";
import { adviceView, type FigureView } from "@/lib/present/advice-view";
import { buttChart } from "@/lib/present/butt-chart";
import { lengthChart } from "@/lib/present/length-chart";
import { problemText, refusalView } from "@/lib/present/notices";
import { tipChart } from "@/lib/present/tip-chart";
import { weightChart } from "@/lib/present/weight-chart";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import { Refusals } from "./refusals";
import { SaveSpec } from "./save-spec";
import { WishPanel } from "./wish-panel";

/** The recommendation as it stands with every answer so far, and the wishes that move it. */
export function Recommendation() {
	const { advice, read, system } = useDesk();
	return (
		<Stack>
			{read.problems.length > 0 && (
				<Notice
					kind="error"
					title="Some answers cannot be read and count as left out"
					live
				>
					<ul className={styles.list}>
						{read.problems.map((problem) => (
							<li key={`${problem.field}-${problem.index ?? 0}`}>
								{problemText(problem, system)}
							</li>
						))}
					</ul>
				</Notice>
			)}
			{advice.ok ? (
				<Advised advice={advice.value} />
			) : (
				<Refusals
					refusals={advice.refusals.map((refusal) =>
						refusalView(refusal, system),
					)}
				/>
			)}
		</Stack>
	);
}

/** The five numbers in one line that stays in sight while wishes move. */
function FigureStrip({ figures }: { figures: readonly FigureView[] }) {
	return (
		<p className={styles.strip} aria-hidden="true">
			{figures.map(({ id, value }) => (
				<span key={id}>
					<small>{STRIP_LABELS[id]}</small> {value.main}
				</span>
			))}
		</p>
	);
}

const STRIP_LABELS = {
	length: "Length",
	mass: "Weight",
	butt: "Butt",
	tip: "Tip",
	balance: "Balance",
} as const;

function Advised({ advice }: { advice: Advice }) {
	const { system } = useDesk();
	const view = useMemo(() => adviceView(advice, system), [advice, system]);
	const charts = useMemo(
		() =>
			[weightChart, buttChart, lengthChart, tipChart].map((chart) =>
				chart(advice, system),
			),
		[advice, system],
	);
	return (
		<div className={styles.split}>
			<div className={styles.figures}>
				<Section title="The cue for this player">
					<Figures>
						{view.figures.map((figure) => (
							<FigureCard key={figure.id} {...figure} />
						))}
					</Figures>
				</Section>
			</div>
			<div className={styles.aside}>
				<FigureStrip figures={view.figures} />
				<WishPanel advice={advice} />
			</div>
			<Stack>
				<Refusals refusals={view.refusals} />
				<SaveSpec isBuildable={advice.isBuildable} />
				<Section title="The picture">
					<CuePicture
						design={
							advice.build.plan.ok
								? advice.build.plan.value.finished
								: advice.build.design
						}
						balanceFromButtMm={advice.balance.exact}
					/>
				</Section>
				<Section title="The build">
					<dl className={styles.pairs}>
						{view.build.map(({ label, value }) => (
							<div className={styles.pair} key={label + value}>
								<dt>{label}</dt>
								<dd>{value}</dd>
							</div>
						))}
					</dl>
				</Section>
				{view.cautions.length > 0 && (
					<Notice kind="caution" title="To know before deciding">
						<ul className={styles.list}>
							{view.cautions.map((caution) => (
								<li key={caution}>{caution}</li>
							))}
						</ul>
					</Notice>
				)}
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
				<Section title="Rules of the game">
					{view.rules.length === 0 ? (
						<p>
							No published equipment rule for the cue was found for this game.
						</p>
					) : (
						<ul className={styles.list}>
							{view.rules.map(({ rule, ok, source }) => (
								<li key={rule}>
									{rule}: {ok ? "kept" : "broken"}. {source}.
								</li>
							))}
						</ul>
					)}
				</Section>
			</Stack>
		</div>
	);
}
