"use client";

import { memo, useMemo } from "react";
import { Button } from "@/app/_ui/button";
import { CuePicture } from "@/app/_ui/cue-picture/cue-picture";
import { Notice } from "@/app/_ui/notice";
import { Section, Stack } from "@/app/_ui/section";
import type { CueAnswer } from "@/lib/advice/answer-cue";
import type { BilletDensities } from "@/lib/cue/design";
import type { BenchAnswers, BenchQuestion } from "@/lib/forms/cue-bench";
import { pictureQuery } from "@/lib/forms/cue-picture-request";
import { weightFacts } from "@/lib/present/cue-bench-view";
import { USUAL_GRAIN } from "@/lib/present/cue-shading";
import { refusalView } from "@/lib/present/notices";
import type { Reader } from "@/lib/words/reader";
import { BenchProvider, useBench } from "./bench";
import { BenchForm } from "./bench-form";
import styles from "./cues.module.css";
import { Facts } from "./facts";
import { benchLabel } from "./questions";
import { Results } from "./results";

export function CueBench({
	initial,
	densities,
}: {
	initial: BenchAnswers;
	/** What the workshop's own billets weigh, instead of the tables. */
	densities: BilletDensities;
}) {
	return (
		<BenchProvider initial={initial} densities={densities}>
			<Laid />
		</BenchProvider>
	);
}

function Laid() {
	const { cue, problems, question, reader } = useBench();
	return (
		<div className={styles.split}>
			<div className={styles.head}>
				<Stack>
					{problems.length > 0 && (
						<Notice kind="error" title={reader.say("cues.unread")} live>
							<p>
								{problems
									.map(({ field }) => benchLabel(field, reader))
									.join(", ")}
								.
							</p>
						</Notice>
					)}
					<Refusals />
					{cue !== null && (
						<Pictured cue={cue} question={question} reader={reader} />
					)}
				</Stack>
			</div>
			<div className={styles.aside}>
				{cue !== null && <Strip cue={cue} />}
				<BenchForm />
			</div>
			{cue !== null && (
				<Results cue={cue} question={question} reader={reader} />
			)}
		</div>
	);
}

/** The picture with the rings that were chosen, and the first figures under it. */
const Pictured = memo(function Pictured({
	cue,
	question,
	reader,
}: {
	cue: CueAnswer;
	question: BenchQuestion;
	reader: Reader;
}) {
	const grain = useMemo(
		() => ({ ...USUAL_GRAIN, shaft: question.grain }),
		[question.grain],
	);
	const address = pictureQuery({
		cue: question.cue,
		...(cue.plan !== null && {
			wantedMassG: question.wantedMassG,
			wantedBalanceFromButtMm: question.wantedBalanceFromButtMm,
		}),
		grain,
	});
	return (
		<>
			<Section title={reader.say("cues.cue")} card>
				<CuePicture
					design={cue.design}
					grain={grain}
					balanceFromButtMm={cue.mass.balanceFromButtMm.value}
				/>
				<p className={styles.file}>
					<a href={`/api/v1/cue/picture?${address}`}>
						{reader.say("cues.file")}
					</a>
				</p>
			</Section>
			<Section title={reader.say("cues.weight")}>
				<Facts facts={weightFacts(cue, reader)} />
			</Section>
		</>
	);
});

/** Stays in sight on a narrow screen while answers change. */
function Strip({ cue }: { cue: CueAnswer }) {
	const { reader } = useBench();
	return (
		<p className={styles.strip} aria-hidden="true">
			{weightFacts(cue, reader)
				.slice(0, 2)
				.map(({ label, value }) => (
					<span key={label}>
						<small>{label.split(",")[0]}</small> {value}
					</span>
				))}
		</p>
	);
}

function Refusals() {
	const { refusals, reader, answer } = useBench();
	return refusals.map((refusal) => {
		const { text, remedy } = refusalView(refusal, reader);
		return (
			<Notice key={text} kind="error" live>
				<p>{text}</p>
				{remedy?.field === "wishMass" && (
					<Button onClick={() => answer("mass", remedy.answer)}>
						{remedy.label}
					</Button>
				)}
			</Notice>
		);
	});
}
