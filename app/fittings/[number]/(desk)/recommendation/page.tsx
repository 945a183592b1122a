import type { Metadata } from "next";
import { readReader } from "@/app/_ui/preferences/loaders";
import { FittingStep } from "../../../_parts/fitting-step";
import { Recommendation } from "../../../_parts/recommendation";

export async function generateMetadata(): Promise<Metadata> {
	return {
		title: (await readReader()).say("fittingSteps.name.recommendation"),
	};
}

export default function RecommendationPage() {
	return <FittingStep recommendation={<Recommendation />} />;
}
