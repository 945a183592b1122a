import { type Outcome, type Refusal, refuse } from "@/lib/numerics/outcome";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import type { Quote } from "@/lib/workshop/job-content";
import { jobPrice } from "@/lib/workshop/job-price";
import {
	agreeRefusal,
	type JobStanding,
	moveRefusals,
	revisionRefusals,
} from "@/lib/workshop/job-rules";
import { quoteRefusals } from "@/lib/workshop/quote";
import { askedContent } from "../workshop/support/jobs";

const TODAY = "2026-03-02";
const quote: Quote = {
	priceMinor: 48_000,
	currency: "GBP",
	minorPerUnit: 100,
	validUntil: "2026-03-31",
	mayVary: [],
	note: "",
};
const standing = (change: Partial<JobStanding>): JobStanding => ({
	state: "quoted",
	isAgreed: false,
	latestRevision: 2,
	quote,
	...change,
});
const agreed = (change: Partial<JobStanding>, isAsSeen = true, today = TODAY) =>
	listed(agreeRefusal(standing(change), isAsSeen, today));
const listed = (refusal: Refusal | null) =>
	refuse(...(refusal ? [refusal] : []));

/** One way to each refusal of a job, a quote and an agreement. */
export const JOBS_REFUSED: Readonly<Record<string, () => Outcome<unknown>>> = {
	"no-such-move": () =>
		refuse(...moveRefusals(standing({}), { to: "on-the-bench" }, TODAY)),
	"not-agreed": () =>
		refuse(
			...moveRefusals(
				standing({ state: "on-the-bench" }),
				{ to: "checked" },
				TODAY,
			),
		),
	"wait-needs-reason": () =>
		refuse(
			...moveRefusals(
				standing({ state: "on-the-bench", isAgreed: true }),
				{ to: "waiting", expectedOn: TODAY },
				TODAY,
			),
		),
	"job-closed": () =>
		refuse(...revisionRefusals({ state: "handed-over" }, { quote }, TODAY)),
	"quote-missing": () =>
		refuse(...revisionRefusals({ state: "quoted" }, { quote: null }, TODAY)),
	"quote-replaced": () => agreed({}, false),
	"no-quote": () => agreed({ state: "asked", quote: null }),
	"quote-expired": () => agreed({}, true, "2026-04-01"),
	"extra-not-priced": () =>
		jobPrice({
			prices: DEFAULT_SETTINGS.prices,
			build: askedContent().build,
			extras: { case: "Gold case", tip: null, gripNotes: "" },
		}),
	"date-too-far": () =>
		refuse(...quoteRefusals({ ...quote, validUntil: "2028-01-01" }, TODAY)),
};
