"use client";

import { useMemo } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Actions, Section } from "@/app/_ui/section";
import type { SearchReport } from "@/lib/advice/search";
import type { TextFieldName } from "@/lib/forms/fitting";
import { countsText, optionViews } from "@/lib/present/search-view";
import { softenedText } from "@/lib/present/ways-out";
import { OPEN_WISHES, type WishAnswer } from "@/lib/present/wish-answers";
import { useDesk } from "./desk";
import styles from "./search.module.css";
import type { SearchState } from "./use-search";

/** Puts a cue in as wishes, each of which can be left open again. */
export function useBuildThis(): (wishes: readonly WishAnswer[]) => void {
	const { answer } = useDesk();
	return (wishes) => {
		for (const { field, answer: text } of wishes)
			answer(field as TextFieldName, text);
	};
}

/** What the search is doing, announced as it changes. */
export function SearchStatus({ state }: { state: SearchState }) {
	const { reader } = useDesk();
	return (
		<span role="status">
			{state.status === "working" && reader.say("fitting.search.working")}
			{state.status === "found" && countsText(state.report, reader)}
			{state.status === "refused" && reader.say("fitting.search.refused")}
			{state.status === "failed" &&
				reader.say("fitting.search.failed", { message: state.message })}
		</span>
	);
}

/** The few best cues that differ in a choice the customer sees. */
export function FoundCues({ report }: { report: SearchReport }) {
	const { reader } = useDesk();
	const { say } = reader;
	const build = useBuildThis();
	const options = useMemo(() => optionViews(report, reader), [report, reader]);
	return (
		<Section
			title={say("fitting.found.title")}
			lead={say("fitting.found.lead")}
		>
			{report.softened.length > 0 && (
				<Notice kind="caution" title={say("fitting.found.softened")}>
					<ul className={styles.list}>
						{report.softened.map((limit) => (
							<li key={limit.criterion + limit.side}>
								{softenedText(limit, reader)}
							</li>
						))}
					</ul>
				</Notice>
			)}
			<ol className={styles.options}>
				{options.map((option) => (
					<li className={styles.option} key={option.name + option.worth}>
						<h3>{option.name}</h3>
						<dl className={styles.pairs}>
							{option.rows.map(({ label, value }) => (
								<div className={styles.pair} key={label}>
									<dt>{label}</dt>
									<dd>{value}</dd>
								</div>
							))}
						</dl>
						<p>{say("fitting.found.worth", { worth: option.worth })}</p>
						{option.close !== null && <p>{option.close}</p>}
						<p className={styles.small}>{option.snapping}</p>
						<Button onClick={() => build(option.wishes)}>
							{say("fitting.found.build")}
						</Button>
					</li>
				))}
			</ol>
			<Actions>
				<Button look="quiet" onClick={() => build(OPEN_WISHES)}>
					{say("fitting.found.open")}
				</Button>
			</Actions>
		</Section>
	);
}
