"use client";

import { useMemo } from "react";
import { Notice } from "@/app/_ui/notice";
import { PosePicture } from "@/app/_ui/pose-picture";
import type { PoseSubject } from "@/lib/present/pose-drawing";
import {
	poseRefusalText,
	poseSubject,
	poseView,
} from "@/lib/present/pose-view";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import own from "./measuring.module.css";

/** The pose as it follows from every answer so far, and how long it may be held. */
export function StancePicture() {
	const { advice, read, system } = useDesk();
	// A pose may stand although no cue can be built for it.
	const subject = useMemo(
		() => (advice.ok ? advice : poseSubject(read.input)),
		[advice, read.input],
	);
	if (!subject.ok)
		return (
			<Notice kind="error" live>
				{subject.refusals.map((refusal) => (
					<p key={`${refusal.code}-${refusal.field}`}>
						{poseRefusalText(refusal, system)}
					</p>
				))}
			</Notice>
		);
	return <Posed subject={subject.value} />;
}

function Posed({ subject }: { subject: PoseSubject }) {
	const { advice, system } = useDesk();
	const view = useMemo(() => poseView(subject, system), [subject, system]);
	const { holds, cautions } = view.posture;
	return (
		<div className={own.picture}>
			<h3>The pose these answers give</h3>
			<PosePicture view={view} />
			{!advice.ok && (
				<Notice kind="caution" title="No cue can be built for it">
					{advice.refusals.map((refusal) => (
						<p key={`${refusal.code}-${refusal.field}`}>
							{poseRefusalText(refusal, system)}
						</p>
					))}
				</Notice>
			)}
			<Notice kind="caution" title="Holding this pose">
				<ul className={styles.list}>
					{cautions.map((text) => (
						<li key={text}>{text}</li>
					))}
				</ul>
				<details className={styles.more}>
					<summary>Holding times by ISO 11226</summary>
					<ul className={styles.list}>
						{holds.map((text) => (
							<li key={text}>{text}</li>
						))}
					</ul>
					<p>
						Written for healthy adults at work, angles from standing upright; no
						statement about any one person.
					</p>
				</details>
			</Notice>
		</div>
	);
}
