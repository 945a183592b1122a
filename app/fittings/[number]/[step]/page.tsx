import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { StepQuestions } from "../../_parts/step-questions";
import { QUESTION_STEPS } from "../../_parts/steps";

interface Params {
	params: Promise<{ number: string; step: string }>;
}

const stepOf = async ({ params }: Params) => {
	const { step } = await params;
	return QUESTION_STEPS.find(({ id }) => id === step) ?? notFound();
};

export async function generateMetadata(props: Params): Promise<Metadata> {
	return { title: (await stepOf(props)).name };
}

export default async function StepPage(props: Params) {
	return <StepQuestions step={await stepOf(props)} />;
}
