import type { ReactNode } from "react";
import { DataTable } from "@/app/_ui/data-table";
import type { SummaryView } from "@/lib/present/summary-view";
import type { Reader } from "@/lib/words/reader";
import styles from "./summary-sheet.module.css";

/** The player's summary; everything on it comes from its view. */
export function SummarySheet({
	title,
	lines,
	view,
	reader: { say },
}: {
	title: ReactNode;
	lines: readonly string[];
	view: SummaryView;
	reader: Reader;
}) {
	return (
		<article className={styles.sheet}>
			<header className={styles.head}>
				<h1>{title}</h1>
				{lines.map((line) => (
					<p key={line}>{line}</p>
				))}
			</header>
			<Part title={say("summary.figures")} lead={say("summary.figuresLead")}>
				<dl className={styles.figures}>
					{view.figures.map(({ id, label, value, band, reason }) => (
						<div key={id}>
							<dt>{label}</dt>
							<dd>
								<strong>{value.main}</strong> <span>{value.other}</span>
								<p>{band}</p>
								<p>{reason}</p>
							</dd>
						</div>
					))}
				</dl>
			</Part>
			<Part title={say("summary.tryTitle")}>
				<Items lines={view.toTry} />
			</Part>
			<Part title={say("summary.careTitle")}>
				<Items lines={view.care} />
			</Part>
			<Part title={say("summary.againTitle")}>
				<Items lines={view.again} />
			</Part>
			<Part
				title={say("summary.measuredTitle")}
				lead={say("summary.measuredLead")}
			>
				<DataTable
					caption={say("summary.measuredTitle")}
					captionHidden
					columns={[
						{ key: "measure", label: say("summary.measure") },
						{ key: "value", label: say("summary.value") },
						{ key: "how", label: say("summary.how") },
					]}
					rows={view.measured.map(({ measure, value, state, note }) => ({
						measure,
						value,
						how:
							state === "measured"
								? [say("summary.taken"), note].filter(Boolean).join(", ")
								: note,
					}))}
				/>
				{view.present.length > 0 && (
					<p>
						{say("summary.present")}:{" "}
						{view.present
							.map(({ label, value }) => `${label} ${value}`)
							.join(", ")}
						.
					</p>
				)}
			</Part>
			<Part title={say("summary.unknownTitle")}>
				<Items lines={view.unknown} />
			</Part>
		</article>
	);
}

function Part({
	title,
	lead,
	children,
}: {
	title: string;
	lead?: string;
	children: ReactNode;
}) {
	return (
		<section className={styles.part}>
			<h2>{title}</h2>
			{lead !== undefined && <p className={styles.lead}>{lead}</p>}
			{children}
		</section>
	);
}

const Items = ({ lines }: { lines: readonly string[] }) => (
	<ul>
		{lines.map((line) => (
			<li key={line}>{line}</li>
		))}
	</ul>
);
