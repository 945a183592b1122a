import type { ReactNode } from "react";
import { LinkButton } from "@/app/_ui/button";
import { CuePlate } from "@/app/_ui/cue-picture/cue-plate";
import { Notice } from "@/app/_ui/notice";
import { PrintButton } from "@/app/_ui/print-button";
import { Actions } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { jobCode } from "@/lib/documents/job-code";
import type { SheetHead } from "@/lib/present/sheet-head";
import { type SheetAtHand, sheetView } from "@/lib/present/sheet-view";
import type { Reader } from "@/lib/words/reader";
import type { BuildContent } from "@/lib/workshop/job-content";
import { CodeFigure } from "./code-figure";
import { isThisMachineOnly } from "./job-address";
import { JobSheet } from "./job-sheet";
import styles from "./job-sheet.module.css";

/** A sheet on screen, with what prints it and the way back: of a spec and of a job alike. */
export function SheetScreen({
	head,
	build,
	atHand,
	isInvented,
	paper,
	address,
	back,
	files,
	reader,
}: {
	head: SheetHead;
	build: BuildContent;
	atHand: SheetAtHand;
	isInvented: boolean;
	paper: "a4" | "letter";
	/** What the code says; null where no address is known. */
	address: string | null;
	back: { readonly href: string; readonly label: string };
	files: ReactNode;
	reader: Reader;
}) {
	const { say } = reader;
	const { design, targets } = build;
	return (
		<>
			{paper === "letter" && <style>{"@page { size: letter; }"}</style>}
			<div className={styles.screenOnly}>
				<Actions>
					<PrintButton />
					<LinkButton href={back.href}>{back.label}</LinkButton>
				</Actions>
				{files}
				{address !== null && isThisMachineOnly(address) && (
					<Notice title={say("sheet.codeHere")}>
						{say("sheet.codeHereAbout")}
					</Notice>
				)}
			</div>
			<JobSheet
				head={head}
				mark={isInvented ? <Invented /> : undefined}
				code={
					address !== null && (
						<CodeFigure
							code={jobCode(address)}
							label={say("sheet.codeWords")}
						/>
					)
				}
				picture={
					<>
						<CuePlate
							design={design}
							reader={reader}
							balanceFromButtMm={targets.balance.value}
							ink="grey"
						/>
						<CuePlate design={design} reader={reader} part="butt" ink="grey" />
					</>
				}
				view={sheetView(build, reader, atHand)}
				reader={reader}
			/>
		</>
	);
}
