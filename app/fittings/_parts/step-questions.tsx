"use client";

import { LinkButton } from "@/app/_ui/button";
import { Actions, Columns, Section, Stack } from "@/app/_ui/section";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import { Question } from "./question";
import {
	QUESTION_STEPS,
	type QuestionStep,
	RECOMMENDATION,
	stepHref,
} from "./steps";

/** The questions of one step, and the one way on. */
export function StepQuestions({ step }: { step: QuestionStep }) {
	const { fitting, read } = useDesk();
	const index = QUESTION_STEPS.findIndex(({ id }) => id === step.id);
	const next = QUESTION_STEPS[index + 1] ?? RECOMMENDATION;
	const hasMore = step.more.some((name) => read.answered.includes(name));
	return (
		<Section title={step.title} lead={step.lead} card>
			<Stack>
				<Columns minRem={20}>
					{step.fields.map((name) => (
						<Question key={name} name={name} />
					))}
				</Columns>
				{step.more.length > 0 && (
					<details className={styles.more} open={hasMore || undefined}>
						<summary>
							{step.id === "wishes" ? "Exact wishes" : "Further measures"}
						</summary>
						<Columns minRem={20}>
							{step.more.map((name) => (
								<Question key={name} name={name} />
							))}
						</Columns>
					</details>
				)}
				<Actions>
					<LinkButton look="main" wide href={stepHref(fitting.number, next.id)}>
						Next: {next.name}
					</LinkButton>
					{next !== RECOMMENDATION && (
						<LinkButton href={stepHref(fitting.number, RECOMMENDATION.id)}>
							Straight to the recommendation
						</LinkButton>
					)}
				</Actions>
			</Stack>
		</Section>
	);
}
