"use client";

import { memo, useRef } from "react";
import { Button } from "@/app/_ui/button";
import { fieldsOf } from "@/lib/present/online-findings";
import { onlineLabel } from "@/lib/present/online-names";
import { onlineFacts } from "@/lib/present/online-view";
import styles from "./build.module.css";
import { useBuilding } from "./building";
import { fieldId } from "./field-id";
import { TurningCue } from "./turning-cue";

/** The cue as it stands: picture, four figures, and whether it can be made. Stays in sight. */
export function Standing() {
	const { reader, assessed } = useBuilding();
	const { cue, isCurrent } = assessed;
	const lastDrawn = useRef(cue);
	if (cue.design !== null) lastDrawn.current = cue;
	const drawn = lastDrawn.current;
	const { say } = reader;
	return (
		<section
			className={styles.standing}
			aria-label={say("online.picture.label")}
		>
			{drawn.design !== null && (
				<TurningCue
					design={drawn.design}
					balanceFromButtMm={drawn.balanceFromButtMm?.value}
				/>
			)}
			<Figures />
			<div className={styles.state}>
				<div data-stale={!isCurrent || undefined}>
					<State />
				</div>
				<Undo />
			</div>
			{cue.design === null && (
				<p className={styles.small}>{say("online.standing.lastGood")}</p>
			)}
		</section>
	);
}

const Figures = memo(function Figures() {
	const { reader, money, assessed } = useBuilding();
	return (
		<dl className={styles.figures}>
			{onlineFacts(assessed.cue, money, reader).map(
				({ id, label, value, short, note, shortNote }) => (
					<div key={id} data-figure={id}>
						<dt>{label}</dt>
						<dd>
							<strong className={styles.roomy}>{value}</strong>
							<strong className={styles.tight}>{short}</strong>
							{note !== null && <small className={styles.roomy}>{note}</small>}
							{shortNote !== null && (
								<small className={styles.tight}>{shortNote}</small>
							)}
						</dd>
					</div>
				),
			)}
		</dl>
	);
});

/** Stays where it is when there is nothing to take back: the focus rests on it. */
function Undo() {
	const { reader, undo } = useBuilding();
	return (
		<Button
			look="quiet"
			className={styles.undo}
			busy={undo === null}
			onClick={() => undo?.()}
		>
			{reader.say("online.undo.button")}
		</Button>
	);
}

/** Said aloud when it changes, and in sight wherever the page is. */
function State() {
	const { reader, problems, said, assessed } = useBuilding();
	const { say } = reader;
	const refused = fieldsOf(
		assessed.cue.findings.filter(({ kind }) => kind === "refused"),
	);
	const [first] = refused;
	return (
		<div role="status">
			{problems.length > 0 && (
				<p className={styles.bad}>
					{say("online.standing.unread", {
						fields: problems
							.map(({ field }) => onlineLabel(field, reader))
							.join(", "),
					})}
				</p>
			)}
			{first === undefined ? (
				<p className={styles.good}>
					{said} {say("online.standing.fits")}
				</p>
			) : (
				<p className={styles.bad}>
					{said}{" "}
					{say("online.standing.refused", {
						count: refused.length,
						field: say(`online.fieldIn.${first}`),
					})}{" "}
					<a href={`#${fieldId(first)}`}>{say("online.standing.show")}</a>
				</p>
			)}
		</div>
	);
}
