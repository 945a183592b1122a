import type { Metadata } from "next";
import { Listening } from "@/app/_ui/listening";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PrintButton } from "@/app/_ui/print-button";
import { Actions, PageHead, Section, Stack } from "@/app/_ui/section";
import careStyles from "@/app/workshop/_parts/care.module.css";
import { CarePart } from "@/app/workshop/_parts/care-part";
import { CuePart } from "@/app/workshop/_parts/cue-part";
import { QuoteStands } from "@/app/workshop/_parts/quote-part";
import { Changes } from "@/app/workshop/_parts/revisions";
import { WorkshopContact } from "@/app/workshop/_parts/workshop-contact";
import { formatDay } from "@/lib/present/dates";
import type { JobRecord } from "@/lib/records/jobs/data";
import { getJobById } from "@/lib/records/jobs/loaders";
import { currentSettings, today } from "@/lib/records/settings/loaders";
import { openLink } from "@/lib/records/share-links/loaders";
import type { Reader } from "@/lib/words/reader";
import { quoteStanding } from "@/lib/workshop/quote";
import type { Header } from "@/lib/workshop/settings";
import { AgreeForm } from "../_parts/agree-form";

interface Props {
	readonly params: Promise<{ token: string }>;
}

/** The address is the key: it goes into no search engine and to no other site. */
export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return {
		title: say("agreement.pageTitle"),
		robots: { index: false, follow: false },
		referrer: "no-referrer",
	};
}

/** What a customer agrees to: the cue, its figures, the price, and what may vary. */
export default async function AgreePage({ params }: Props) {
	const { token } = await params;
	const reader = await readReader();
	const { header } = await currentSettings();
	const opened = await openLink(token);
	if (opened.standing !== "open" || opened.link.jobId === null)
		return (
			<NotOpen
				why={opened.standing === "open" ? "unknown" : opened.standing}
				header={header}
				reader={reader}
			/>
		);
	const job = await getJobById(opened.link.jobId);
	if (job === null) throw new Error("a link leads to no job");
	return <Quoted job={job} token={token} header={header} reader={reader} />;
}

const WHY = {
	expired: ["agreement.linkExpired", "agreement.linkAbout"],
	revoked: ["agreement.linkRevoked", "agreement.linkAbout"],
	unknown: ["agreement.linkUnknown", "agreement.linkUnknownAbout"],
} as const;

function NotOpen({
	why,
	header,
	reader,
}: {
	why: keyof typeof WHY;
	header: Header;
	reader: Reader;
}) {
	const { say } = reader;
	const [title, about] = WHY[why];
	return (
		<Stack>
			<PageHead title={say(title)} lead={say(about)} />
			<WorkshopContact header={header} reader={reader} />
		</Stack>
	);
}

function Quoted({
	job,
	token,
	header,
	reader,
}: {
	job: JobRecord;
	token: string;
	header: Header;
	reader: Reader;
}) {
	const { say } = reader;
	const { latest, isAgreed, agreed, state } = job;
	const { quote } = latest.content;
	const isShown = quote !== null && state !== "asked" && state !== "cancelled";
	return (
		<Stack>
			<PageHead
				title={say("agreement.title", {
					number: job.number,
					revision: latest.revision,
				})}
				lead={
					header.name === ""
						? undefined
						: say("agreement.from", { workshop: header.name })
				}
			/>
			{job.isDemo && <Notice>{say("agreement.invented")}</Notice>}
			<Standing job={job} reader={reader} />
			{isShown && (
				<>
					{!isAgreed && agreed !== null && (
						<Section
							title={say("agreement.changed")}
							lead={say("agreement.changedLead", {
								before: agreed.revision,
								now: latest.revision,
							})}
						>
							<Changes before={agreed} after={latest} reader={reader} />
						</Section>
					)}
					<Section
						title={say("agreement.picture")}
						lead={say("agreement.figuresLead")}
					>
						<CuePart content={latest.content} reader={reader} />
					</Section>
					<Section title={say("agreement.price")}>
						<QuoteStands quote={quote} reader={reader} />
					</Section>
					{header.warrantyText !== "" && (
						<Section title={say("agreement.warranty")}>
							<p className={careStyles.warranty}>{header.warrantyText}</p>
						</Section>
					)}
					{quoteStanding({ quote, isAgreed, today: today() }) === "open" && (
						<Section
							title={say("agreement.agree.title")}
							lead={say("agreement.agree.lead")}
							card
						>
							<Listening>
								<AgreeForm
									key={latest.revision}
									token={token}
									jobRevision={latest.revision}
									contentSha256={latest.contentSha256}
								/>
							</Listening>
						</Section>
					)}
					<Section title={say("care.titlePlain")}>
						<CarePart content={latest.content} reader={reader} />
					</Section>
				</>
			)}
			<WorkshopContact header={header} reader={reader} />
			<Actions>
				<PrintButton />
			</Actions>
		</Stack>
	);
}

/** Where the quote stands, before anything else is read. */
function Standing({ job, reader }: { job: JobRecord; reader: Reader }) {
	const { say } = reader;
	const { latest, isAgreed, revisions, state } = job;
	const { quote } = latest.content;
	if (state === "cancelled")
		return (
			<Notice kind="caution" title={say("agreement.cancelled")}>
				{say("agreement.cancelledAbout")}
			</Notice>
		);
	if (quote === null || state === "asked")
		return (
			<Notice title={say("agreement.noQuote")}>
				{say("agreement.noQuoteAbout")}
			</Notice>
		);
	const given = revisions.find(
		({ agreement }) => agreement?.contentSha256 === latest.contentSha256,
	)?.agreement;
	if (isAgreed && given)
		return (
			<Notice
				kind="done"
				live
				title={say("agreement.done", {
					name: given.agreedName || say("job.erased"),
					date: formatDay(given.agreedAt, reader),
				})}
			>
				{say("agreement.doneAbout")}
			</Notice>
		);
	if (quoteStanding({ quote, isAgreed, today: today() }) === "expired")
		return (
			<Notice kind="caution" title={say("agreement.expired")}>
				{say("agreement.expiredAbout", {
					date: formatDay(quote.validUntil, reader),
				})}
			</Notice>
		);
	return <p>{say("agreement.lead")}</p>;
}
