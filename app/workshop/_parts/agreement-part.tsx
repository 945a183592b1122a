import { Section } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import type { JobRecord } from "@/lib/records/jobs/data";
import type { Reader } from "@/lib/words/reader";
import { isClosed } from "@/lib/workshop/job-rules";
import { quoteStanding } from "@/lib/workshop/quote";
import { BenchAgreement } from "./bench-agreement";

/** Who agreed to what and when, and the way to write down another yes. */
export function AgreementPart({
	job,
	today,
	reader,
}: {
	job: JobRecord;
	today: string;
	reader: Reader;
}) {
	const { say } = reader;
	const { revisions, latest, isAgreed, state } = job;
	const given = revisions.filter(({ agreement }) => agreement !== null);
	const isOpen =
		!isClosed(state) &&
		state !== "asked" &&
		quoteStanding({ quote: latest.content.quote, isAgreed, today }) === "open";
	return (
		<Section title={say("job.agreement.title")}>
			{given.length === 0 && <p>{say("job.agreement.none")}</p>}
			{given.map(
				({ revision, agreement }) =>
					agreement && (
						<p key={revision}>
							{say(
								agreement.via === "bench"
									? "job.agreement.benchYes"
									: "job.agreement.pageYes",
								{
									name: agreement.agreedName || say("job.erased"),
									revision,
									date: formatDay(agreement.agreedAt, reader),
								},
							)}
						</p>
					),
			)}
			{isAgreed && latest.agreement === null && (
				<p>{say("job.agreement.same", { revision: latest.revision })}</p>
			)}
			{isOpen && (
				<>
					<p>{say("job.agreement.open", { revision: latest.revision })}</p>
					<BenchAgreement
						key={latest.revision}
						jobRevision={latest.revision}
						contentSha256={latest.contentSha256}
						customerName={job.customerName}
					/>
				</>
			)}
		</Section>
	);
}
