import { BENCH_STAGES } from "@/lib/build/as-built";
import type { Reader } from "@/lib/words/reader";
import type { JobEventFacts } from "@/lib/workshop/job-event";
import { woodName } from "./labels";

/** One line of a job's history about a check, a decision on it, or what it says of its woods. */
export function checkEventText(
	kind:
		| "checked"
		| "decided"
		| "evidence-taken"
		| "evidence-withdrawn"
		| "evidence-restored",
	facts: JobEventFacts,
	reader: Reader,
): string {
	const { say } = reader;
	const found = BENCH_STAGES.find((one) => one === facts.stage);
	const stage = found === undefined ? "" : say(`checks.stage.${found}`);
	switch (kind) {
		case "checked":
			return found === undefined
				? say("job.event.checked")
				: say("checks.event.checked", { stage });
		case "decided":
			if (facts.decision === undefined)
				throw new TypeError("nothing was decided");
			return say(`checks.event.${facts.decision}`, { stage });
		default:
			return say(`checks.event.${kind}`, {
				woods: (facts.woods ?? [])
					.map((wood) => woodName(wood, reader))
					.join(", "),
			});
	}
}
