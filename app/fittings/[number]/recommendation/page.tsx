import type { Metadata } from "next";
import { Recommendation } from "../../_parts/recommendation";

export const metadata: Metadata = { title: "Recommendation" };

export default function RecommendationPage() {
	return <Recommendation />;
}
