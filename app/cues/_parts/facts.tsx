"use client";

import { useReader } from "@/app/_ui/preferences/reader";
import type { Fact } from "@/lib/present/cue-bench-view";
import styles from "./cues.module.css";

/** Figures side by side, each with where nine in ten lie. */
export function Facts({ facts }: { facts: readonly Fact[] }) {
	const { say } = useReader();
	return (
		<dl className={styles.facts}>
			{facts.map(({ label, value, band, note }) => (
				<div className={styles.fact} key={label}>
					<dt>{label}</dt>
					<dd>
						<strong>{value}</strong>
						{band !== null && (
							<span className={styles.band}>
								{say("cues.nineInTen", { band })}
							</span>
						)}
						{note !== undefined && <small>{note}</small>}
					</dd>
				</div>
			))}
		</dl>
	);
}
