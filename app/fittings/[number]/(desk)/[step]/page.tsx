import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { readReader } from "@/app/_ui/preferences/loaders";
import { FittingStep } from "../../../_parts/fitting-step";
import { QUESTION_STEPS, stopName } from "../../../_parts/steps";

interface Params {
	params: Promise<{ number: string; step: string }>;
}

const stepOf = async ({ params }: Params) => {
	const { step } = await params;
	return QUESTION_STEPS.find(({ id }) => id === step) ?? notFound();
};

export async function generateMetadata(props: Params): Promise<Metadata> {
	return { title: stopName(await stepOf(props), await readReader()) };
}

export default async function StepPage(props: Params) {
	await stepOf(props);
	return <FittingStep />;
}
