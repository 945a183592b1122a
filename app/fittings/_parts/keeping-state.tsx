"use client";

import Link from "next/link";
import { Button, LinkButton } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import { formatMoment } from "@/lib/present/moments";
import { useDesk, useKeeping } from "./desk";
import styles from "./keeping.module.css";

/** Whether every answer is safe, and how old what is shown may be. */
export function KeepingState() {
	const { say, language } = useReader();
	const { fitting, state, waitingCount, isReached } = useKeeping();
	const asOf =
		isReached || fitting.asOf === null
			? null
			: formatMoment(new Date(fitting.asOf), { language }, { now: new Date() });
	return (
		<p className={styles.state} role="status">
			{fitting.number === null
				? say("offline.noNumberYet")
				: say("offline.fittingNumber", { number: String(fitting.number) })}{" "}
			{say(`offline.state.${STATE_KEYS[state]}` as const, {
				count: waitingCount,
			})}
			{!isReached && (
				<>
					{" "}
					<strong className={styles.offline}>
						{asOf === null
							? say("offline.neverReached")
							: say("offline.asOf", { moment: asOf })}
					</strong>
				</>
			)}
		</p>
	);
}

const STATE_KEYS = {
	opening: "opening",
	saved: "saved",
	saving: "saving",
	"on-device": "onDevice",
	unkept: "unkept",
	refused: "refused",
	gone: "gone",
} as const;

/** What asks for the coach's eye: damage on the device, a spec that waits or was refused. */
export function KeepingNotices() {
	const { say, language } = useReader();
	const { keeper } = useDesk();
	const { hasDamage, save, savedSpec } = useKeeping();
	return (
		<>
			{hasDamage && (
				<Notice kind="caution" title={say("offline.damage.title")}>
					<p>
						{say("offline.damage.about")}{" "}
						<Link href="/coaching#damaged" prefetch={false}>
							{say("offline.damage.look")}
						</Link>
					</p>
				</Notice>
			)}
			{save !== null && save.refusal === null && (
				<Notice title={say("offline.queued.title")} live>
					<p>
						{say("offline.queued.about", {
							moment: formatMoment(
								new Date(save.askedAt),
								{ language },
								{ now: new Date() },
							),
						})}
					</p>
					<Actions>
						<Button onClick={() => void keeper.dropSave()}>
							{say("offline.queued.drop")}
						</Button>
					</Actions>
				</Notice>
			)}
			{save?.refusal && (
				<Notice kind="error" title={say("offline.queued.refused")} live>
					<ul className={styles.list}>
						{save.refusal.map((message) => (
							<li key={message}>{message}</li>
						))}
					</ul>
					<Actions>
						<Button onClick={() => void keeper.dropSave()}>
							{say("offline.queued.understood")}
						</Button>
					</Actions>
				</Notice>
			)}
			{savedSpec !== null && (
				<Notice kind="done" title={say("offline.queued.done")} live>
					<LinkButton href={`/specs/${savedSpec.number}/${savedSpec.revision}`}>
						{say("offline.queued.open", {
							number: String(savedSpec.number),
							revision: String(savedSpec.revision),
						})}
					</LinkButton>
				</Notice>
			)}
		</>
	);
}
