import type { BenchStage } from "@/lib/build/as-built";
import type {
	CheckContent,
	CheckDecision,
	CheckFigures,
	DecidedCheck,
} from "@/lib/workshop/check";

/** What a check read; nothing typed, because what is tested has its numbers. */
export const checkContent = (
	figures: CheckFigures,
	change: Partial<CheckContent> = {},
): CheckContent => ({
	schemaVersion: 1,
	figures,
	billets: [],
	typed: {},
	note: "",
	predicted: null,
	...change,
});

let made = 0;
export const decided = (
	stage: BenchStage,
	figures: CheckFigures,
	decision: CheckDecision | null = null,
): DecidedCheck => ({
	id: `check-${++made}`,
	stage,
	content: checkContent(figures),
	decision,
});
