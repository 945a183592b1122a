"use client";

import Link from "next/link";
import type { ComponentProps } from "react";
import { useReader } from "./preferences/reader";
import styles from "./steps.module.css";

export interface Step {
	readonly name: string;
	/** Null while the step cannot be opened yet; a link's properties where it is opened in its own way. */
	readonly href: string | ComponentProps<typeof Link> | null;
	/** Whether the step holds answers. */
	readonly done?: boolean;
}

/**
 * Where one is on the way, drawn along a cue: each step a station. On a narrow screen the list folds
 * away behind the name of the present step.
 */
export function Steps({
	steps,
	current,
	label,
}: {
	steps: readonly Step[];
	/** Index of the present step. */
	current: number;
	label?: string;
}) {
	const { say } = useReader();
	const here = steps[current];
	if (here === undefined)
		throw new RangeError(`Steps: no step ${current} of ${steps.length}`);
	const list = <StepList steps={steps} current={current} />;
	return (
		<nav className={styles.steps} aria-label={label ?? say("part.steps")}>
			<div
				className={styles.cue}
				aria-hidden="true"
				style={
					{
						"--done": (current + 0.5) / steps.length,
					} as React.CSSProperties
				}
			/>
			<div className={styles.wide}>{list}</div>
			<details className={styles.narrow}>
				<summary>
					{say.rich("part.step", {
						step: String(current + 1),
						count: String(steps.length),
						name: here.name,
						b: (name) => <strong>{name}</strong>,
					})}
				</summary>
				{list}
			</details>
		</nav>
	);
}

function StepList({
	steps,
	current,
}: {
	steps: readonly Step[];
	current: number;
}) {
	const { say } = useReader();
	return (
		<ol className={styles.list}>
			{steps.map((step, index) => {
				const inside = (
					<>
						<span className={styles.mark} aria-hidden="true">
							{step.done ? "✓" : index + 1}
						</span>
						{step.name}
						{step.done && (
							<span className={styles.unseen}> {say("part.answered")}</span>
						)}
					</>
				);
				return (
					<li key={step.name} data-done={step.done || undefined}>
						{step.href === null ? (
							<span className={styles.step} data-closed>
								{inside}
							</span>
						) : (
							<Link
								{...(typeof step.href === "string"
									? { href: step.href }
									: step.href)}
								className={styles.step}
								aria-current={index === current ? "step" : undefined}
							>
								{inside}
							</Link>
						)}
					</li>
				);
			})}
		</ol>
	);
}
