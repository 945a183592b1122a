"use client";

import { useState } from "react";
import buttonStyles from "@/app/_ui/button.module.css";
import { readTyped } from "@/app/_ui/fields/quantity";
import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { printCheck } from "@/lib/present/gauge-view";
import styles from "./gauge.module.css";

const PAPERS = [
	{ paper: "a4", name: "A4" },
	{ paper: "letter", name: "Letter" },
] as const;

const RULER = {
	dimension: "length",
	kind: "diameter",
	min: 50,
	max: 200,
} as const;

/** The printed gauge, and the check of what the printer made of it. */
export function PrintGauge() {
	const reader = useReader();
	const { say } = reader;
	const [text, setText] = useState("");
	const read = readTyped(text, RULER, reader);
	const check = read.ok ? printCheck(read.value, reader) : null;
	return (
		<div className={styles.panel}>
			<p>{say("gauges.print")}</p>
			<p className={styles.papers}>
				{PAPERS.map(({ paper, name }) => (
					<a
						key={paper}
						className={buttonStyles.button}
						href={`/gauges/ring?paper=${paper}`}
						target="_blank"
						rel="noreferrer"
					>
						{say("gauges.pdf", { paper: name })}
					</a>
				))}
			</p>
			<QuantityField
				label={say("gauges.ruler")}
				hint={say("gauges.rulerHint")}
				name="printedRuler"
				value={text}
				onChange={setText}
				spec={RULER}
			/>
			{check !== null && (
				<Notice kind={check.ok ? "done" : "caution"} live>
					{check.text}
				</Notice>
			)}
		</div>
	);
}
