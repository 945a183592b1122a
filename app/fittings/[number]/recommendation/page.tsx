import type { Metadata } from "next";
import { FittingStep } from "../../_parts/fitting-step";

export const metadata: Metadata = { title: "Recommendation" };

export default function RecommendationPage() {
	return <FittingStep />;
}
