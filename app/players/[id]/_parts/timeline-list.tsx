import Link from "next/link";
import { Invented } from "@/app/_ui/source-note";
import type { TimelineRow } from "@/lib/present/timeline-view";
import { NoteEntry } from "./note-entry";
import styles from "./timeline.module.css";

/** What happened to a player, newest first. */
export function TimelineList({
	playerId,
	rows,
}: {
	playerId: string;
	rows: readonly TimelineRow[];
}) {
	return (
		<ol className={styles.list}>
			{rows.map((row) => (
				<li key={row.id} className={styles.entry}>
					<p className={styles.when}>
						<time dateTime={row.isoDay}>{row.day}</time> · {row.kindName}{" "}
						{row.isDemo && <Invented />}
					</p>
					{row.kind === "note" ? (
						<NoteEntry
							playerId={playerId}
							id={row.id}
							text={row.title}
							day={row.day}
						/>
					) : (
						<>
							<p className={styles.title}>
								{row.href === null ? (
									row.title
								) : (
									<Link href={row.href}>{row.title}</Link>
								)}
							</p>
							{row.details.length > 0 && (
								<p className={styles.details}>{row.details.join(" · ")}</p>
							)}
							{row.also !== null && (
								<p className={styles.details}>
									<Link href={row.also.href} prefetch={false}>
										{row.also.text}
									</Link>
								</p>
							)}
						</>
					)}
				</li>
			))}
		</ol>
	);
}
