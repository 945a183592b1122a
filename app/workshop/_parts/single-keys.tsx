"use client";

import { useRouter } from "next/navigation";
import { type ReactNode, useEffect, useState } from "react";
import { useReader } from "@/app/_ui/preferences/reader";
import { KEYS_COOKIE, remember, SEARCH_HASH } from "./bench-choices";
import styles from "./queue.module.css";

type Step = "next" | "previous" | "search";

const STEPS: Readonly<Record<string, Step>> = {
	n: "next",
	j: "next",
	p: "previous",
	k: "previous",
	"/": "search",
};

/** Where the keys lead from a job; in the queue they move along its rows. */
export interface Around {
	readonly next: string | null;
	readonly previous: string | null;
	readonly search: string;
}

/**
 * One keystroke to the next job. Keys pressed in a field or in a dialog are text, keys held with
 * another are the browser's, and the whole can be turned off (WCAG 2.1.4).
 */
export function SingleKeys({
	isOn: wasOn,
	around,
}: {
	isOn: boolean;
	around?: Around;
}) {
	const { say } = useReader();
	const router = useRouter();
	const [isOn, setOn] = useState(wasOn);

	useEffect(() => {
		if (around === undefined && window.location.hash === SEARCH_HASH)
			stepInQueue("search")?.focus();
	}, [around]);

	useEffect(() => {
		if (!isOn) return;
		const press = (event: KeyboardEvent) => {
			const step = STEPS[event.key];
			if (step === undefined || isTyped(event)) return;
			const go =
				around === undefined ? stepInQueue(step) : stepFromJob(step, around);
			if (go === null) return;
			event.preventDefault();
			if (typeof go === "string") router.push(go);
			else go.focus();
		};
		document.addEventListener("keydown", press);
		return () => document.removeEventListener("keydown", press);
	}, [isOn, around, router]);

	return (
		<section className={styles.keys} aria-label={say("workshop.keys.title")}>
			<p>
				{say.rich("workshop.keys.on", {
					key: (name: ReactNode) => <kbd>{name}</kbd>,
				})}
			</p>
			<label>
				<input
					type="checkbox"
					checked={isOn}
					onChange={({ target }) => {
						setOn(target.checked);
						remember(KEYS_COOKIE, target.checked ? "on" : "off");
					}}
				/>
				{say("workshop.keys.use")}
			</label>
		</section>
	);
}

function isTyped(event: KeyboardEvent): boolean {
	if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing)
		return true;
	const { target } = event;
	return (
		!(target instanceof HTMLElement) ||
		target.isContentEditable ||
		target.closest(
			"input, textarea, select, [role='dialog'], [role='listbox']",
		) !== null ||
		document.querySelector("[role='dialog']") !== null
	);
}

function stepInQueue(step: Step): HTMLElement | null {
	if (step === "search")
		return document.querySelector<HTMLElement>("main input[type='search']");
	const rows = [...document.querySelectorAll<HTMLElement>("a[data-job]")];
	const here = rows.findIndex((row) => row.matches(":focus"));
	if (here < 0) return rows[step === "next" ? 0 : rows.length - 1] ?? null;
	return rows[here + (step === "next" ? 1 : -1)] ?? null;
}

const stepFromJob = (
	step: Step,
	{ next, previous, search }: Around,
): string | null =>
	step === "next" ? next : step === "previous" ? previous : search;
