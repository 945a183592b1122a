import Link from "next/link";
import styles from "./source-note.module.css";

/** What a part of a page rests on, with the way to the full list. */
export function SourceNote({
	basis,
	sources,
}: {
	/** "Published figures", "Common practice, no published source". */
	basis?: string;
	sources: readonly string[];
}) {
	return (
		<p className={styles.note}>
			{basis !== undefined && <strong>{basis}. </strong>}
			{sources.length > 0 && (
				<>
					{sources.length === 1 ? "Source: " : "Sources: "}
					{sources.join("; ")}.{" "}
				</>
			)}
			<Link href="/sources">All sources and assumptions</Link>
		</p>
	);
}

/** Marks data that stands for nobody. */
export function Invented({ children = "Invented" }: { children?: string }) {
	return (
		<span
			className={styles.invented}
			title="Demo data: this person does not exist"
		>
			{children}
		</span>
	);
}
