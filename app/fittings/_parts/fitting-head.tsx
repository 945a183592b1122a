"use client";

import { useSelectedLayoutSegments } from "next/navigation";
import { Notice } from "@/app/_ui/notice";
import { Invented } from "@/app/_ui/source-note";
import { Steps } from "@/app/_ui/steps";
import { choiceLabel, fieldLabel } from "@/lib/present/labels";
import { useDesk, useKeeping } from "./desk";
import styles from "./fitting.module.css";
import { QUESTION_STEPS, RECOMMENDATION, stepHref } from "./steps";
import type { SaveState } from "./use-autosave";

const STATE_WORDS: Readonly<Record<SaveState, string>> = {
	saved: "All answers saved",
	saving: "Saving…",
	"on-device": "Kept on this device; sent as soon as the server answers",
	unkept:
		"Not saved: neither the server nor this device’s storage takes the answers. Keep this page open",
};

/** Whose fitting it is, where one is in it, and whether every answer is safe. */
export function FittingHead() {
	const { fitting, read, reader } = useDesk();
	const { saveState, conflicts, draftDamaged } = useKeeping();
	const [segment] = useSelectedLayoutSegments();
	const stops = [...QUESTION_STEPS, RECOMMENDATION];
	const current = Math.max(
		0,
		stops.findIndex(({ id }) => id === segment),
	);
	const steps = stops.map((stop) => ({
		name: stop.name,
		href: stepHref(fitting.number, stop.id),
		done:
			"fields" in stop &&
			[...stop.fields, ...stop.more].some((name) =>
				read.answered.includes(name),
			),
	}));
	return (
		<div className={styles.top}>
			<div className={styles.head}>
				<h1>
					{fitting.playerName} {fitting.isDemo && <Invented />}
				</h1>
				<p className={styles.state} role="status">
					Fitting {fitting.number}. {STATE_WORDS[saveState]}.
				</p>
			</div>
			<Steps steps={steps} current={current} />
			{draftDamaged && (
				<Notice kind="caution" title="A draft on this device could not be read">
					The answers shown are the ones the server had.
				</Notice>
			)}
			{conflicts.length > 0 && (
				<Notice
					kind="caution"
					title="Another device changed the same answers"
					live
				>
					<p>Yours are kept. The other device had:</p>
					<ul className={styles.list}>
						{conflicts.map(({ field, theirs }) => (
							<li key={field}>
								{fieldLabel(field, reader)}:{" "}
								{[theirs]
									.flat()
									.map((text) => choiceLabel(field, text, reader))
									.join(", ") || "left out"}
							</li>
						))}
					</ul>
				</Notice>
			)}
		</div>
	);
}
