"use client";

import { useMemo, useSyncExternalStore } from "react";
import { useController } from "react-hook-form";
import { Button } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { SourceNote } from "@/app/_ui/source-note";
import type { Advice } from "@/lib/advice/advise";
import { problemsOf } from "@/lib/forms/answers";
import { formatNumber } from "@/lib/present/figures";
import { ageOn, type GrowthView, growthOf } from "@/lib/present/growth-view";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import own from "./measuring.module.css";
import { Question } from "./question";

const COLUMNS = ["when", "height", "length", "ring", "needs"] as const;

const subscribe = () => () => {};
const isoToday = (): string => {
	const now = new Date();
	const two = (n: number) => String(n).padStart(2, "0");
	return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};
/** The device's own day; null while the server renders, which may live in another one. */
const useToday = (): string | null =>
	useSyncExternalStore(subscribe, isoToday, () => null);

/**
 * The outlook for a junior: percentile, ranges to come, when to measure again and how the cue may
 * grow. Nothing for a grown player. Stands inside a FittingDesk.
 */
export function GrowthPanel() {
	const { advice } = useDesk();
	const today = useToday();
	return advice.ok && today !== null ? (
		<Outlook advice={advice.value} today={today} />
	) : null;
}

function Outlook({ advice, today }: { advice: Advice; today: string }) {
	const { control, reader, answer } = useDesk();
	const { field } = useController({ control, name: "birthDate" });
	const bornOn =
		field.value !== "" &&
		problemsOf("birthDate", field.value, reader.system).length === 0
			? field.value
			: null;
	const { say } = reader;
	const growth = useMemo(
		() => growthOf({ advice, bornOn, today }, reader),
		[advice, bornOn, today, reader],
	);
	if (growth.kind === "none" && field.value === "") return null;
	const said = advice.input.player.ageYears;
	const born = ageOn({ bornOn, ageYears: undefined, today });
	const isOutOfStep =
		born !== undefined && (said === undefined || Math.abs(born - said) >= 1);
	return (
		<Section
			title={say("fitting.growing.title")}
			lead={say("fitting.growing.lead")}
		>
			<Question name="birthDate" />
			{isOutOfStep && born > 0 && (
				<Notice>
					<p>
						{said === undefined
							? say("fitting.growing.leftOut")
							: say("fitting.growing.other")}
					</p>
					<Button onClick={() => answer("age", born.toFixed(1))}>
						{say("fitting.growing.use", {
							years: formatNumber(born, reader, 1),
						})}
					</Button>
				</Notice>
			)}
			{growth.kind === "wanting" && <p>{growth.text}</p>}
			{growth.kind === "refused" && (
				<Notice kind="error">
					{growth.texts.map((text) => (
						<p key={text}>{text}</p>
					))}
				</Notice>
			)}
			{growth.kind === "shown" && <Shown view={growth.view} />}
		</Section>
	);
}

function Shown({ view }: { view: GrowthView }) {
	const { say } = useDesk().reader;
	return (
		<div className={own.growth}>
			<ul className={styles.list}>
				{[...view.percentiles, ...view.plan].map((text) => (
					<li key={text}>{text}</li>
				))}
			</ul>
			<DataTable
				caption={say("fitting.growing.caption", { age: view.age })}
				columns={COLUMNS.map((key) => ({
					key,
					label: say(`fitting.growing.${key}`),
				}))}
				rows={view.rows.map((row) => ({
					...row,
					when: say("fitting.growing.at", { when: row.when, date: row.date }),
				}))}
			/>
			<p>{view.error}</p>
			{view.cautions.map((text) => (
				<p key={text}>{text}</p>
			))}
			<SourceNote sources={view.sources} />
		</div>
	);
}
