import { type ReactNode, useId } from "react";
import styles from "./section.module.css";

/** A titled part of a page. `card` sets it on its own surface. */
export function Section({
	title,
	lead,
	card = false,
	actions,
	children,
}: {
	title: ReactNode;
	lead?: ReactNode;
	card?: boolean;
	actions?: ReactNode;
	children: ReactNode;
}) {
	const id = useId();
	return (
		<section
			className={card ? `${styles.section} ${styles.card}` : styles.section}
			aria-labelledby={id}
		>
			<div className={styles.head}>
				<div className={styles.title}>
					<h2 id={id}>{title}</h2>
					{lead !== undefined && <p className={styles.lead}>{lead}</p>}
				</div>
				{actions}
			</div>
			{children}
		</section>
	);
}

export function Card({ children }: { children: ReactNode }) {
	return <div className={`${styles.section} ${styles.card}`}>{children}</div>;
}

/** The head of a page: its name, one sentence, and at most one main action. */
export function PageHead({
	title,
	lead,
	actions,
}: {
	title: ReactNode;
	lead?: ReactNode;
	actions?: ReactNode;
}) {
	return (
		<div className={styles.pageHead}>
			<div className={styles.title}>
				<h1>{title}</h1>
				{lead !== undefined && <p className={styles.pageLead}>{lead}</p>}
			</div>
			{actions !== undefined && <div className={styles.actions}>{actions}</div>}
		</div>
	);
}

/** Things under each other with even space. */
export function Stack({ children }: { children: ReactNode }) {
	return <div className={styles.stack}>{children}</div>;
}

/** Columns of at least `minRem`, as many as fit. */
export function Columns({
	minRem = 18,
	children,
}: {
	minRem?: number;
	children: ReactNode;
}) {
	return (
		<div
			className={styles.columns}
			style={{ "--column": `${minRem}rem` } as React.CSSProperties}
		>
			{children}
		</div>
	);
}

/** The row of buttons that ends a screen; the main one comes first. */
export function Actions({ children }: { children: ReactNode }) {
	return <div className={styles.actions}>{children}</div>;
}
