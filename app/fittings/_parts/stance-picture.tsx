"use client";

import { useMemo } from "react";
import { useInTurn } from "@/app/_ui/in-turn/use-in-turn";
import { useNear } from "@/app/_ui/in-turn/use-near";
import { Notice } from "@/app/_ui/notice";
import { PosePicture } from "@/app/_ui/pose-picture";
import { accept } from "@/lib/numerics/outcome";
import { refusalView } from "@/lib/present/notices";
import { poseOf, poseSubject, poseView } from "@/lib/present/pose-view";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import own from "./measuring.module.css";

/** The pose of every answer so far; a pose may stand although no cue can be built for it. */
function usePose() {
	const { advice, read, reader } = useDesk();
	const [place, isNear] = useNear();
	const asked = useMemo(() => {
		const subject = advice.ok ? advice : poseSubject(read.input);
		return subject.ok ? accept(poseOf(subject.value)) : subject;
	}, [advice, read.input]);
	const drawn = useInTurn(asked, isNear);
	const pose = useMemo(
		() =>
			drawn.ok
				? { view: poseView(drawn.value, reader), refusals: [] }
				: { view: null, refusals: drawn.refusals },
		[drawn, reader],
	);
	return { ...pose, place };
}

/** The pose drawn, following the answers. Stands inside a FittingDesk. */
export function StancePicture() {
	const { advice, reader } = useDesk();
	const { view, refusals, place } = usePose();
	const unbuilt = advice.ok || view === null ? [] : advice.refusals;
	return (
		<div className={own.picture} ref={place}>
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
	const { view, place } = usePose();
	if (view === null) return null;
	const { holds, cautions } = view.posture;
	return (
		<div ref={place}>
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
		</div>
	);
}
