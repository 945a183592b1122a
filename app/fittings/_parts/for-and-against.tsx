"use client";

import type { Argued } from "@/lib/advice/argument";
import type { SearchReport } from "@/lib/advice/search";
import { argumentWords } from "@/lib/present/against-words";
import { useDesk } from "./desk";
import styles from "./search.module.css";

const CHOICES: readonly Argued["choice"][] = [
	"butt-wood",
	"splice",
	"layout",
	"taper",
];

/** Beneath a figure: what the bench does for it, and what speaks most strongly against it. */
export function ForAndAgainst({
	report,
	figure,
}: {
	report: SearchReport;
	figure: Argued["choice"];
}) {
	const { reader } = useDesk();
	const argued = report.arguments.find(({ choice }) => choice === figure);
	if (argued === undefined) return null;
	const words = argumentWords(argued, reader);
	return (
		<dl className={styles.arguments}>
			{figure === "balance" && (
				<div>
					<dt>{reader.say("fitting.against.forPlayer")}</dt>
					<dd>{words.forPlayer}</dd>
				</div>
			)}
			<div>
				<dt>{reader.say("fitting.against.forBench")}</dt>
				<dd>{words.forBench}</dd>
			</div>
			<div>
				<dt>{reader.say("fitting.against.against")}</dt>
				<dd>{words.against}</dd>
			</div>
		</dl>
	);
}

/** Why this wood, splice, layout and taper, and what speaks against each. */
export function ChoiceReasons({ report }: { report: SearchReport }) {
	const { reader } = useDesk();
	return (
		<div className={styles.choices}>
			{report.arguments
				.filter(({ choice }) => CHOICES.includes(choice))
				.map((argued) => {
					const words = argumentWords(argued, reader);
					return (
						<div key={words.choice}>
							<h3>
								{reader.say("fitting.against.choice", {
									label: words.label,
									value: words.value,
								})}
							</h3>
							<p>{words.forPlayer}</p>
							<p className={styles.small}>
								{reader.say("fitting.against.short", {
									against: words.against,
								})}
							</p>
						</div>
					);
				})}
		</div>
	);
}
