import type { Metadata } from "next";
import { FittingStep } from "../../../_parts/fitting-step";
import { Recommendation } from "../../../_parts/recommendation";

export const metadata: Metadata = { title: "Recommendation" };

export default function RecommendationPage() {
	return <FittingStep recommendation={<Recommendation />} />;
}
