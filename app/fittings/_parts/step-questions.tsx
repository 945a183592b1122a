"use client";

import type { ReactNode } from "react";
import { useWatch } from "react-hook-form";
import { LinkButton } from "@/app/_ui/button";
import { Actions, Columns, Section, Stack } from "@/app/_ui/section";
import { CHOICES, type MeasureName } from "@/lib/forms/choices";
import type { FieldName } from "@/lib/forms/fields";
import { CueInHandOffer } from "./cue-in-hand-offer";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import { GrowthPanel } from "./growth-panel";
import { MeasureQuestion } from "./measure-question";
import { MeasuredSummary } from "./measured-summary";
import own from "./measuring.module.css";
import { MeasuringMode } from "./measuring-mode";
import { Question } from "./question";
import { ReadingCautions } from "./reading-cautions";
import { RingClosure } from "./ring-closure";
import { RingReading } from "./ring-reading";
import { PostureNotice, StancePicture } from "./stance-picture";
import {
	askedIn,
	NOT_ALONE,
	QUESTION_STEPS,
	type QuestionGroup,
	type QuestionStep,
	RECOMMENDATION,
	stopName,
} from "./steps";
import { SupportQuestion } from "./support-question";
import { stayingOnPage, useWay } from "./way";

/** What stands beside the questions of a step, following them as they change. */
const BESIDE: Readonly<Record<string, ReactNode>> = {
	stance: <StancePicture />,
};
/** What stands under them. */
const UNDER: Readonly<Record<string, ReactNode>> = {
	player: (
		<>
			<ReadingCautions of="body" />
			<GrowthPanel />
		</>
	),
	hand: <RingClosure />,
	stance: (
		<>
			<ReadingCautions of="reach" />
			<PostureNotice />
			<MeasuredSummary />
		</>
	),
};

/** The questions of one step, and the one way on. */
export function StepQuestions({ step }: { step: QuestionStep }) {
	const { control, read, reader } = useDesk();
	const { say } = reader;
	const { hrefOf } = useWay();
	const { answered } = read;
	const isAlone = useWatch({ control, name: "measuredAlone" }) === "yes";
	const index = QUESTION_STEPS.findIndex(({ id }) => id === step.id);
	const next = QUESTION_STEPS[index + 1] ?? RECOMMENDATION;
	const beside = BESIDE[step.id];
	const asked = (
		<div className={own.asked}>
			{step.groups.map((group) => (
				<Group
					key={group.id}
					group={group}
					fields={askedIn(group, { isAlone, answered })}
					isAlone={isAlone}
					isOneColumn={
						beside !== undefined || group.fields.includes("gripReadings")
					}
				/>
			))}
			<More step={step} isAlone={isAlone} />
		</div>
	);
	return (
		<Section
			title={say(`fittingSteps.title.${step.id}`)}
			lead={say(`fittingSteps.lead.${step.id}`)}
			card
		>
			<div className={own.questions}>
				{step.measures && index === 0 && <MeasuringMode />}
				{beside === undefined ? (
					asked
				) : (
					<div className={own.beside}>
						{asked}
						{beside}
					</div>
				)}
				{UNDER[step.id]}
				{step.measures && index > 0 && <MeasuringMode />}
				<Actions>
					<LinkButton look="main" wide {...stayingOnPage(hrefOf(next.id))}>
						{say("fittingSteps.next", { name: stopName(next, reader) })}
					</LinkButton>
					{next !== RECOMMENDATION && (
						<LinkButton {...stayingOnPage(hrefOf(RECOMMENDATION.id))}>
							{say("fittingSteps.straight")}
						</LinkButton>
					)}
				</Actions>
			</div>
		</Section>
	);
}

function Group({
	group: { id },
	fields,
	isAlone,
	isOneColumn,
}: {
	group: QuestionGroup;
	fields: readonly FieldName[];
	isAlone: boolean;
	isOneColumn: boolean;
}) {
	const { say } = useDesk().reader;
	const questions = fields.map((name) => (
		<Asked key={name} name={name} isAlone={isAlone} />
	));
	return (
		<section className={own.group}>
			<div className={own.groupTitle}>
				<h3>{say(`fittingSteps.group.${id}`)}</h3>
				{(id === "wall" || id === "address") && (
					<p>{say(`fittingSteps.groupLead.${id}`)}</p>
				)}
			</div>
			{isOneColumn ? (
				<Stack>{questions}</Stack>
			) : (
				<Columns minRem={20}>{questions}</Columns>
			)}
			{fields.includes("gripFromButt") && <CueInHandOffer />}
		</section>
	);
}

/** Folded away, but open where it holds an answer. */
function More({ step, isAlone }: { step: QuestionStep; isAlone: boolean }) {
	const { read, reader } = useDesk();
	const { answered } = read;
	const shown = step.groups.flatMap((group) => [
		...askedIn(group, { isAlone, answered }),
	]);
	const names = step.more.filter(
		(name) =>
			!shown.includes(name) &&
			(!isAlone || !NOT_ALONE.includes(name) || answered.includes(name)),
	);
	if (names.length === 0) return null;
	return (
		<details
			className={styles.more}
			open={names.some((name) => answered.includes(name)) || undefined}
		>
			<summary>{reader.say(`fittingSteps.more.${step.id}`)}</summary>
			<Columns minRem={20}>
				{names.map((name) => (
					<Asked key={name} name={name} isAlone={isAlone} />
				))}
			</Columns>
		</details>
	);
}

const isMeasure = (name: FieldName): name is MeasureName =>
	(CHOICES.measure as readonly string[]).includes(name);

function Asked({ name, isAlone }: { name: FieldName; isAlone: boolean }) {
	if (name === "gripReadings") return <RingReading />;
	if (name === "seated") return <SupportQuestion />;
	// Asked together with "seated".
	if (name === "standingFrame") return null;
	return isMeasure(name) ? (
		<MeasureQuestion name={name} isAlone={isAlone} />
	) : (
		<Question name={name} />
	);
}
