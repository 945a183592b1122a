import type { Finding } from "@/lib/build/as-built";
import type { BuildContent, JobContent, TargetId } from "./job-content";
import { USUAL_VALID_DAYS } from "./quote";
import { addDays } from "./working-days";

/**
 * The content of a job with what a finished cue came to in place of what was wanted, for the customer
 * to agree to: the price stays, and a quote that has run out is open again for the usual time.
 */
export function asMeasured(
	content: JobContent,
	findings: readonly Finding[],
	today: string,
): JobContent {
	const { build, quote } = content;
	const targets: Partial<Record<TargetId, BuildContent["targets"][TargetId]>> =
		{};
	for (const { figure, measured } of findings)
		if (figure !== "diameter")
			targets[figure] = { value: measured, basis: "measured" };
	const diameterAt = (stationMm: number) =>
		findings.find(
			(one) => one.figure === "diameter" && one.stationMm === stationMm,
		)?.measured;
	return {
		...content,
		build: {
			...build,
			targets: { ...build.targets, ...targets },
			stations: build.stations.map((station) => ({
				...station,
				diameterMm: diameterAt(station.stationMm) ?? station.diameterMm,
			})),
		},
		quote: quote && {
			...quote,
			validUntil:
				quote.validUntil < today
					? addDays(today, USUAL_VALID_DAYS)
					: quote.validUntil,
		},
	};
}
