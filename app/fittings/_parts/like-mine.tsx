"use client";

import { useEffect, useState } from "react";
import { DataTable } from "@/app/_ui/data-table";
import { Field } from "@/app/_ui/fields/field";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import type { PresentCue } from "@/lib/advice/input";
import { STEP } from "@/lib/advice/judgement";
import type {
	LikeMine as Found,
	LikeMineChange,
} from "@/lib/advice/like-mine-advice";
import type { Outcome } from "@/lib/numerics/outcome";
import {
	formatLengthDifference,
	formatMassDifference,
} from "@/lib/present/figures";
import { likeMineView } from "@/lib/present/like-mine-view";
import { refusalView } from "@/lib/present/notices";
import { useDesk } from "./desk";
import styles from "./search.module.css";
import { type SearchTools, Superseded } from "./use-search";

/** Steps of the bench either way. */
const MOST_STEPS = { length: 16, butt: 12, mass: 8 } as const;
type Steps = Record<keyof typeof MOST_STEPS, number>;

type Known = Required<
	Pick<
		PresentCue,
		| "lengthMm"
		| "massG"
		| "buttDiameterMm"
		| "tipDiameterMm"
		| "balanceFromButtMm"
	>
>;

const knownOf = (cue: PresentCue): Known | null =>
	cue.lengthMm === undefined ||
	cue.massG === undefined ||
	cue.buttDiameterMm === undefined ||
	cue.tipDiameterMm === undefined ||
	cue.balanceFromButtMm === undefined
		? null
		: (cue as Known);

/** The present cue with something changed and its feel kept as far as that goes together. */
export function LikeMine({ ask }: { ask: SearchTools["likeMine"] }) {
	const { read } = useDesk();
	const known = knownOf(read.input.presentCue);
	if (known === null) return null;
	return <Asked known={known} ask={ask} />;
}

function Asked({ known, ask }: { known: Known; ask: SearchTools["likeMine"] }) {
	const { reader } = useDesk();
	const { say } = reader;
	const [steps, setSteps] = useState<Steps>({ length: 0, butt: 0, mass: 0 });
	const found = useLikeMine(known, steps, ask);
	const slide = (name: keyof Steps, value: string) => (
		<Field label={say(`fitting.likeMine.${name}`, { value })}>
			{(wiring) => (
				<input
					{...wiring}
					className={styles.range}
					type="range"
					min={-MOST_STEPS[name]}
					max={MOST_STEPS[name]}
					value={steps[name]}
					aria-valuetext={value}
					onChange={(event) =>
						setSteps({ ...steps, [name]: Number(event.target.value) })
					}
				/>
			)}
		</Field>
	);
	return (
		<Section
			title={say("fitting.likeMine.title")}
			lead={say("fitting.likeMine.lead")}
		>
			<div className={styles.selects}>
				{slide(
					"length",
					formatLengthDifference(
						steps.length * STEP.lengthMm,
						reader,
						"station",
					),
				)}
				{slide(
					"butt",
					formatLengthDifference(steps.butt * STEP.diameterMm, reader, "bench"),
				)}
				{slide(
					"mass",
					formatMassDifference(steps.mass * STEP.massG, reader, "added"),
				)}
			</div>
			{typeof found === "string" && (
				<Notice kind="caution" title={say("fitting.likeMine.failed")}>
					<p>{found}</p>
				</Notice>
			)}
			{found === null && <p role="status">{say("fitting.change.working")}</p>}
			{found !== null && typeof found !== "string" && <Answer found={found} />}
		</Section>
	);
}

function Answer({ found }: { found: Outcome<Found> }) {
	const { reader } = useDesk();
	const { say } = reader;
	if (!found.ok)
		return (
			<Notice kind="notice" title={say("fitting.likeMine.refused")}>
				{found.refusals
					.map((refusal) => refusalView(refusal, reader).text)
					.map((text) => (
						<p key={text}>{text}</p>
					))}
			</Notice>
		);
	const view = likeMineView(found.value, reader);
	if (view === null) return <p>{say("fitting.likeMine.none")}</p>;
	return (
		<>
			<p role="status">{view.verdict}</p>
			<DataTable
				caption={say("fitting.likeMine.caption")}
				captionHidden
				rowKey="name"
				columns={[
					{ key: "name", label: say("fitting.likeMine.quantity") },
					{ key: "now", label: say("fitting.likeMine.wanted") },
					{ key: "becomes", label: say("fitting.likeMine.becomes") },
					{ key: "kept", label: say("fitting.likeMine.kept") },
				]}
				rows={view.rows.map((row) => ({ ...row }))}
			/>
			<p>
				{view.bench} {view.taper}
			</p>
			{view.others.length > 0 && (
				<details className={styles.more}>
					<summary>{say("fitting.likeMine.others")}</summary>
					<ul className={styles.list}>
						{view.others.map((text) => (
							<li key={text}>{text}</li>
						))}
					</ul>
				</details>
			)}
			{view.cautions.map((text) => (
				<p className={styles.small} key={text}>
					{text}
				</p>
			))}
		</>
	);
}

/** Null while it is worked out; text where that failed. */
function useLikeMine(
	{ lengthMm, massG, buttDiameterMm }: Known,
	{ length, butt, mass }: Steps,
	ask: SearchTools["likeMine"],
): Outcome<Found> | string | null {
	const [told, setTold] = useState<Outcome<Found> | string | null>(null);
	useEffect(() => {
		let isCurrent = true;
		const change: LikeMineChange = {
			...(length === 0 ? {} : { lengthMm: lengthMm + length * STEP.lengthMm }),
			...(butt === 0
				? {}
				: { buttDiameterMm: buttDiameterMm + butt * STEP.diameterMm }),
			...(mass === 0 ? {} : { massG: massG + mass * STEP.massG }),
		};
		ask(change).then(
			(outcome) => {
				if (isCurrent) setTold(outcome);
			},
			(error: unknown) => {
				if (isCurrent && !(error instanceof Superseded)) setTold(String(error));
			},
		);
		return () => {
			isCurrent = false;
		};
	}, [ask, lengthMm, massG, buttDiameterMm, length, butt, mass]);
	return told;
}
