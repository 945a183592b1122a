"use client";

import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Actions } from "@/app/_ui/section";
import type { Refusal } from "@/lib/numerics/outcome";
import { type RefusalView, refusalView } from "@/lib/present/notices";
import { waysOut } from "@/lib/present/ways-out";
import { useDesk } from "./desk";
import { useBuildThis } from "./found-cues";
import styles from "./search.module.css";

/** Why something cannot be built, with the nearest answer that works as one tap. */
export function Refusals({ refusals }: { refusals: readonly RefusalView[] }) {
	const { answer } = useDesk();
	return refusals.map(({ text, remedy }) => (
		<Notice key={text} kind="error" live>
			<p>{text}</p>
			{remedy !== null && (
				<Button onClick={() => answer(remedy.field, remedy.answer)}>
					{remedy.label}
				</Button>
			)}
		</Notice>
	));
}

/** More than these are no help. */
const MOST_WAYS = 6;

/** What a search refused: each way out is one tap, the least felt first. */
export function SearchRefusals({ refusals }: { refusals: readonly Refusal[] }) {
	const { reader } = useDesk();
	const { say } = reader;
	const put = useBuildThis();
	const ways = waysOut(refusals, reader);
	const others = refusals.filter(
		({ code }) => code !== "relax" && code !== "nothing-can-be-built",
	);
	if (refusals.length === others.length)
		return (
			<Refusals
				refusals={others.map((refusal) => refusalView(refusal, reader))}
			/>
		);
	return (
		<Notice kind="error" title={say("fitting.refused.title")} live>
			{ways.length === 0 ? (
				<p>{say("fitting.refused.none")}</p>
			) : (
				<p>{say("fitting.refused.any")}</p>
			)}
			<ul className={styles.list}>
				{ways.slice(0, MOST_WAYS).map(({ text }) => (
					<li key={text}>{text}</li>
				))}
			</ul>
			<Actions>
				{ways
					.slice(0, MOST_WAYS)
					.filter(({ answers }) => answers.length > 0)
					.map(({ label, answers }) => (
						<Button key={label} onClick={() => put(answers)}>
							{label}
						</Button>
					))}
			</Actions>
		</Notice>
	);
}
