"use client";

import { AwakeSwitch } from "@/app/_device/awake-switch";
import { Invented } from "@/app/_ui/source-note";
import { Steps } from "@/app/_ui/steps";
import { Conflicts } from "./conflicts";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import { KeepingNotices, KeepingState } from "./keeping-state";
import { QUESTION_STEPS, RECOMMENDATION, stopName } from "./steps";
import { stayingOnPage, useWay } from "./way";

/** Whose fitting it is, where one is in it, and whether every answer is safe. */
export function FittingHead() {
	const { fitting, read, reader } = useDesk();
	const { current: id, hrefOf } = useWay();
	const stops = [...QUESTION_STEPS, RECOMMENDATION];
	const current = stops.findIndex((stop) => stop.id === id);
	const steps = stops.map((stop) => ({
		name: stopName(stop, reader),
		href: stayingOnPage(hrefOf(stop.id)),
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
				<KeepingState />
				<AwakeSwitch />
			</div>
			{current >= 0 && <Steps steps={steps} current={current} />}
			<KeepingNotices />
			<Conflicts />
		</div>
	);
}
