"use client";

import { memo, useMemo } from "react";
import { CuePicture } from "@/app/_ui/cue-picture/cue-picture";
import { FigureCard, Figures } from "@/app/_ui/figure-card";
import { Notice } from "@/app/_ui/notice";
import { Section, Stack } from "@/app/_ui/section";
import { type Advice, advise } from "@/lib/advice/advise";
import { isAsWished } from "@/lib/advice/recommend";
import { adviceView, type FigureView } from "@/lib/present/advice-view";
import { formatMeasure } from "@/lib/present/criterion-words";
import { problemText, refusalView } from "@/lib/present/notices";
import { Costs } from "./costs";
import { CriteriaTable } from "./criteria-table";
import { useDesk, useSearch } from "./desk";
import styles from "./fitting.module.css";
import { ChoiceReasons, ForAndAgainst } from "./for-and-against";
import { FoundCues, SearchStatus } from "./found-cues";
import { GrowthPanel } from "./growth-panel";
import { LikeMine } from "./like-mine";
import { MeasuredSummary } from "./measured-summary";
import { Refusals, SearchRefusals } from "./refusals";
import { SaveSpec } from "./save-spec";
import { PostureNotice, StancePicture } from "./stance-picture";
import { TradeOffs } from "./trade-offs";
import { TwoGames } from "./two-games";
import type { SearchTools } from "./use-search";
import { WishPanel } from "./wish-panel";
import { WouldChange } from "./would-change";

/**
 * The recommendation as it stands with every answer so far, and the wishes that move it. Until the
 * search has answered for them the figures are the needs themselves.
 */
export function Recommendation() {
	const { advice: preview, read, reader } = useDesk();
	const search = useSearch();
	const { state } = search;
	const best = state.status === "found" ? state.report.options[0] : undefined;
	const isBest = best !== undefined && isAsWished(best, read.input);
	const advice = useMemo(
		() => (isBest ? advise(read.input, best) : preview),
		[isBest, best, preview, read],
	);
	return (
		<Stack>
			{read.problems.length > 0 && (
				<Notice kind="error" title={reader.say("fitting.advised.unread")} live>
					<ul className={styles.list}>
						{read.problems.map((problem) => (
							<li key={`${problem.field}-${problem.index ?? 0}`}>
								{problemText(problem, reader)}
							</li>
						))}
					</ul>
				</Notice>
			)}
			{advice.ok ? (
				<Advised advice={advice.value} search={search} isBest={isBest} />
			) : (
				<Refusals
					refusals={advice.refusals.map((refusal) =>
						refusalView(refusal, reader),
					)}
				/>
			)}
		</Stack>
	);
}

/** The five numbers in one line that stays in sight while wishes move. */
function FigureStrip({ figures }: { figures: readonly FigureView[] }) {
	const { say } = useDesk().reader;
	return (
		<p className={styles.strip} aria-hidden="true">
			{figures.map(({ id, value }) => (
				<span key={id}>
					<small>{say(`fitting.advised.strip.${id}`)}</small> {value.main}
				</span>
			))}
		</p>
	);
}

/** Not drawn anew while a wish moves: they stand until the search has answered. */
const SameCriteria = memo(CriteriaTable);
const SameTradeOffs = memo(TradeOffs);
const SameInfluences = memo(WouldChange);

function Advised({
	advice,
	search,
	isBest,
}: {
	advice: Advice;
	search: SearchTools;
	/** The advice is for the best cue found, and not for the needs themselves. */
	isBest: boolean;
}) {
	const { reader } = useDesk();
	const { say } = reader;
	const { state, shown } = search;
	const report = state.status === "found" && isBest ? state.report : null;
	const nearest =
		state.status === "found" && !isBest ? state.report.options[0] : undefined;
	const view = useMemo(() => adviceView(advice, reader), [advice, reader]);
	return (
		<div className={styles.split}>
			<div className={styles.figures}>
				<Section
					title={say("fitting.advised.title")}
					lead={<SearchStatus state={state} />}
				>
					<Figures>
						{view.figures.map((figure) => (
							<FigureCard
								key={figure.id}
								{...figure}
								chart={
									report && <ForAndAgainst report={report} figure={figure.id} />
								}
							/>
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
				{nearest && (
					<Notice kind="caution" title={say("fitting.advised.noneOfWeight")}>
						<p>
							{say("fitting.advised.nearest", {
								weight: formatMeasure(
									"weight",
									nearest.results.weight.value,
									reader,
								),
							})}
						</p>
					</Notice>
				)}
				{state.status === "refused" && (
					<SearchRefusals refusals={state.refusals} />
				)}
				{state.status === "failed" && (
					<Notice kind="caution" title={say("fitting.advised.failed")}>
						<p>{state.message}</p>
						<p>{say("fitting.advised.failedAbout")}</p>
					</Notice>
				)}
				<SaveSpec
					advice={advice}
					isBuildable={advice.isBuildable && state.status !== "refused"}
					isSettled={state.status !== "working"}
				/>
				<Section title={say("fitting.advised.picture")}>
					<CuePicture
						design={
							advice.build.plan.ok
								? advice.build.plan.value.finished
								: advice.build.design
						}
						balanceFromButtMm={advice.balance.exact}
					/>
				</Section>
				<Section title={say("fitting.advised.build")}>
					<dl className={styles.pairs}>
						{view.build.map(({ label, value }) => (
							<div className={styles.pair} key={label + value}>
								<dt>{label}</dt>
								<dd>{value}</dd>
							</div>
						))}
					</dl>
					{report && <ChoiceReasons report={report} />}
				</Section>
				{view.cautions.length > 0 && (
					<Notice kind="caution" title={say("fitting.advised.cautions")}>
						<ul className={styles.list}>
							{view.cautions.map((caution) => (
								<li key={caution}>{caution}</li>
							))}
						</ul>
					</Notice>
				)}
				{shown && (
					<>
						<FoundCues report={shown.report} />
						<SameCriteria criteria={shown.report.criteria} />
						<SameTradeOffs found={shown} cueAt={search.cueAt} />
						<SameInfluences influences={search.influences} />
						<LikeMine ask={search.likeMine} />
						<TwoGames ask={search.twoGames} />
					</>
				)}
				<Costs advice={advice} />
				<StancePicture />
				<PostureNotice />
				<GrowthPanel />
				<MeasuredSummary />
				<Rules rules={view.rules} />
			</Stack>
		</div>
	);
}

function Rules({ rules }: Pick<ReturnType<typeof adviceView>, "rules">) {
	const { say } = useDesk().reader;
	return (
		<Section title={say("advice.rules")}>
			{rules.length === 0 ? (
				<p>{say("advice.noRules")}</p>
			) : (
				<ul className={styles.list}>
					{rules.map(({ rule, ok, source }) => (
						<li key={rule}>
							{say("advice.rule", { rule, ok: ok ? "yes" : "no", source })}
						</li>
					))}
				</ul>
			)}
		</Section>
	);
}
