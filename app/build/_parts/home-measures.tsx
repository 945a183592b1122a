"use client";

import { useEffect, useState } from "react";
import { Button } from "@/app/_ui/button";
import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import { QuantityField } from "@/app/_ui/fields/quantity-field";
import {
	HOME_FIELDS,
	HOME_QUESTIONS,
	type HomeQuestion,
	readHome,
} from "@/lib/forms/online-measures";
import { suggestionView } from "@/lib/present/online-view";
import type { HomeMeasures, Suggestion } from "@/lib/workshop/online-measures";
import styles from "./build.module.css";
import { useBuilding } from "./building";

/** Measuring rests this long before figures follow. */
const REST_MS = 400;

/** Tape and present cue as a way to length, butt and tip; all of it optional, none of it sent. */
export function HomeMeasuresPart() {
	const { reader, home, measure, assessed, choices, apply } = useBuilding();
	const { say } = reader;
	const { suggest } = assessed;
	const [found, setFound] = useState<readonly Suggestion[]>([]);
	const [isFailed, setFailed] = useState(false);
	useEffect(() => {
		const measures = readHome(home, reader.system);
		if (Object.keys(measures).length === 0) {
			setFound([]);
			setFailed(false);
			return;
		}
		let isOver = false;
		const timer = setTimeout(async () => {
			try {
				const outcome = await suggest(measures);
				if (isOver) return;
				setFound(outcome.ok ? outcome.value : []);
				setFailed(!outcome.ok);
			} catch {
				if (!isOver) setFailed(true);
			}
		}, REST_MS);
		return () => {
			isOver = true;
			clearTimeout(timer);
		};
	}, [home, reader.system, suggest]);

	return (
		<details className={styles.more} open={Object.values(home).some(Boolean)}>
			<summary>{say("online.home.title")}</summary>
			<div className={styles.group}>
				<p className={styles.small}>{say("online.home.lead")}</p>
				<div className={styles.pairs}>
					{HOME_FIELDS.map((field) => (
						<QuantityField
							key={field}
							label={say(`online.home.${field}`)}
							hint={
								field === "handLengthMm"
									? say("online.home.handLengthHint")
									: undefined
							}
							value={home[field] ?? ""}
							spec={specOf(field, HOME_QUESTIONS[field])}
							onChange={(text) => measure({ ...home, [field]: text })}
						/>
					))}
				</div>
				<div role="status" className={styles.group}>
					{isFailed && (
						<p className={styles.bad}>{say("online.home.failed")}</p>
					)}
					{found.map((suggestion) => {
						const { field, figure } = suggestion;
						const { text, take } = suggestionView(suggestion, reader);
						const isTaken = choices[field] === figure.value;
						return (
							<p key={field} className={styles.suggestion}>
								<span>{text}</span>
								{isTaken ? (
									<strong>{say("online.home.taken")}</strong>
								) : (
									<Button onClick={() => apply({ [field]: figure.value }, "")}>
										{take}
									</Button>
								)}
							</p>
						);
					})}
				</div>
			</div>
		</details>
	);
}

function specOf(
	field: keyof HomeMeasures,
	{ kind, bound, bare }: HomeQuestion,
): QuantitySpec {
	if (kind === "mass")
		return { dimension: "mass", kind: "cue", ...bound, bare };
	return {
		dimension: "length",
		kind:
			field === "statureMm"
				? "body"
				: field === "presentButtMm" || field === "presentTipMm"
					? "diameter"
					: "length",
		...bound,
		bare,
	};
}
