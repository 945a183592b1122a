"use client";

import { useMemo } from "react";
import { Notice } from "@/app/_ui/notice";
import { PosePicture } from "@/app/_ui/pose-picture";
import { refusalView } from "@/lib/present/notices";
import { poseSubject, poseView } from "@/lib/present/pose-view";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import own from "./measuring.module.css";

/** The pose of every answer so far; a pose may stand although no cue can be built for it. */
function usePose() {
	const { advice, read, reader } = useDesk();
	return useMemo(() => {
		const subject = advice.ok ? advice : poseSubject(read.input);
		return subject.ok
			? { view: poseView(subject.value, reader), refusals: [] }
			: { view: null, refusals: subject.refusals };
	}, [advice, read.input, reader]);
}

/** The pose drawn, following the answers. Stands inside a FittingDesk. */
export function StancePicture() {
	const { advice, reader } = useDesk();
	const { view, refusals } = usePose();
	const unbuilt = advice.ok || view === null ? [] : advice.refusals;
	return (
		<div className={own.picture}>
			<h3>{reader.say("fitting.pose.title")}</h3>
			{view !== null && <PosePicture view={view} />}
			{[...refusals, ...unbuilt].length > 0 && (
				<Notice
					kind={view === null ? "error" : "caution"}
					title={view === null ? undefined : reader.say("fitting.pose.noCue")}
					live
				>
					{[...refusals, ...unbuilt].map((refusal) => (
						<p key={`${refusal.code}-${refusal.field}`}>
							{refusalView(refusal, reader).text}
						</p>
					))}
				</Notice>
			)}
		</div>
	);
}

/** How long such a pose may be held by the published limits, and whom to ask. Stands inside a FittingDesk. */
export function PostureNotice() {
	const { say } = useDesk().reader;
	const { view } = usePose();
	if (view === null) return null;
	const { holds, cautions } = view.posture;
	return (
		<Notice kind="caution" title={say("fitting.pose.holding")}>
			<ul className={styles.list}>
				{cautions.map((text) => (
					<li key={text}>{text}</li>
				))}
			</ul>
			<details className={styles.more}>
				<summary>{say("fitting.pose.times")}</summary>
				<ul className={styles.list}>
					{holds.map((text) => (
						<li key={text}>{text}</li>
					))}
				</ul>
				<p>{say("fitting.pose.about")}</p>
			</details>
		</Notice>
	);
}
