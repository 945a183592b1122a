import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { LinkButton } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PrintButton } from "@/app/_ui/print-button";
import { Actions } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { currentSettings } from "@/lib/records/settings/loaders";
import { stepHref } from "../../_parts/steps";
import { summaryOf } from "../../_parts/summary";
import { SummarySheet } from "../../_parts/summary-sheet";
import styles from "../../_parts/summary-sheet.module.css";

interface Params {
	params: Promise<{ number: string }>;
}

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("summary.open") };
}

/** What the player takes home, on screen and on paper. */
export default async function SummaryPage({ params }: Params) {
	const reader = await readReader();
	const { say } = reader;
	const summary = await summaryOf((await params).number, reader);
	if (summary === null) notFound();
	const { number, isDemo } = summary.fitting;
	const { header } = await currentSettings();
	const back = (
		<LinkButton href={stepHref(number, "recommendation")}>
			{say("summary.back")}
		</LinkButton>
	);
	if (!summary.ok)
		return (
			<Notice kind="error" title={say("summary.refused")}>
				<p>{say("summary.refusedAbout")}</p>
				<ul>
					{summary.messages.map((message) => (
						<li key={message}>{message}</li>
					))}
				</ul>
				<Actions>{back}</Actions>
			</Notice>
		);
	return (
		<>
			{header.paper === "letter" && <style>{"@page { size: letter; }"}</style>}
			<div className={styles.screenOnly}>
				<Actions>
					<PrintButton />
					{(["a4", "letter"] as const).map((paper) => (
						<LinkButton
							key={paper}
							prefetch={false}
							href={`/fittings/${number}/summary.pdf?paper=${paper}`}
						>
							{say("summary.pdf", { paper: paper === "a4" ? "A4" : "Letter" })}
						</LinkButton>
					))}
					{back}
				</Actions>
			</div>
			<SummarySheet
				title={
					<>
						{summary.head.title} {isDemo && <Invented />}
					</>
				}
				lines={summary.head.lines}
				view={summary.view}
				reader={reader}
			/>
		</>
	);
}
