"use client";

import type { ReactNode } from "react";
import type { Both } from "@/lib/present/figures";
import styles from "./figure-card.module.css";
import { useReader } from "./preferences/reader";

export type SurenessLevel = "chosen" | "firm" | "fair" | "rough";

/** Bars out of three; a wish is not a matter of sureness. */
const BARS: Readonly<Record<SurenessLevel, number | null>> = {
	chosen: null,
	firm: 3,
	fair: 2,
	rough: 1,
};

/**
 * One recommended number: the value large, the other unit, where nine in ten lie, the reason in one
 * sentence, what it rests on, how sure it is. The texts come ready from `lib/present`.
 */
export function FigureCard({
	label,
	value,
	range = null,
	band,
	reason,
	others = [],
	basis,
	sources = [],
	sureness,
	surenessText,
	chart,
}: {
	label: string;
	value: Both;
	/** Where the advice is a range, it stands in the value's place and the value beneath. */
	range?: string | null;
	band: string | null;
	reason: string;
	others?: readonly string[];
	/** As it stands inside a sentence. */
	basis: string;
	sources?: readonly string[];
	sureness: SurenessLevel;
	surenessText: string;
	/** A chart that belongs to this figure. */
	chart?: ReactNode;
}) {
	const { say } = useReader();
	const shown = range ?? value.main;
	return (
		<article className={styles.card}>
			<h3 className={styles.label}>{label}</h3>
			<p className={styles.value} data-long={shown.length > 9 || undefined}>
				{shown}
			</p>
			<p className={styles.other}>
				{range === null
					? value.other
					: say("part.bestAt", { value: value.main, other: value.other })}
			</p>
			<Sureness level={sureness} text={surenessText} band={band} />
			<p className={styles.reason}>{reason}</p>
			<details className={styles.more}>
				<summary>{say("part.restsOn", { basis })}</summary>
				<ul>
					{others.map((other) => (
						<li key={other}>{other}</li>
					))}
					{sources.map((source) => (
						<li key={source} className={styles.source}>
							{source}
						</li>
					))}
				</ul>
			</details>
			{chart}
		</article>
	);
}

function Sureness({
	level,
	text,
	band,
}: {
	level: SurenessLevel;
	text: string;
	band: string | null;
}) {
	const { say } = useReader();
	const bars = BARS[level];
	return (
		<p className={styles.sureness}>
			{bars !== null && (
				<span className={styles.bars} aria-hidden="true">
					{[1, 2, 3].map((bar) => (
						<i key={bar} data-on={bar <= bars || undefined} />
					))}
				</span>
			)}
			<span>
				<strong>{text}</strong>
				{band !== null &&
					say.rich("part.nineInTen", {
						band: () => <span className={styles.band}>{band}</span>,
					})}
			</span>
		</p>
	);
}

/** The figures of one recommendation, side by side where there is room. */
export function Figures({ children }: { children: ReactNode }) {
	return <div className={styles.figures}>{children}</div>;
}
