import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import { priceRows } from "@/lib/present/job-facts";
import { mayVaryText } from "@/lib/present/job-view";
import { formatAmount } from "@/lib/present/money";
import type { JobRecord } from "@/lib/records/jobs/data";
import type { Reader } from "@/lib/words/reader";
import type { Quote } from "@/lib/workshop/job-content";
import { isClosed } from "@/lib/workshop/job-rules";
import { quoteStanding } from "@/lib/workshop/quote";
import styles from "./job.module.css";
import { QuoteEditor } from "./quote-editor";

/** The quote as it stands, what the price list says, and the way to a new one. */
export function QuotePart({
	job,
	start,
	today,
	reader,
}: {
	job: JobRecord;
	/** What a first quote begins with. */
	start: Quote;
	today: string;
	reader: Reader;
}) {
	const { say } = reader;
	const { latest, state, isAgreed } = job;
	const { quote, price } = latest.content;
	const standing = quoteStanding({ quote, isAgreed, today });
	return (
		<Section title={say("job.quote.title")}>
			{quote === null ? (
				<p>{say("job.quote.none")}</p>
			) : (
				<QuoteStands quote={quote} reader={reader} />
			)}
			{standing === "expired" && !isClosed(state) && (
				<Notice kind="caution">{say("job.quote.expired")}</Notice>
			)}
			{price === null ? (
				<p>{say("job.quote.noList")}</p>
			) : (
				<details>
					<summary>
						{say("job.quote.list")}:{" "}
						{formatAmount(price.totalMinor, price, reader)}
					</summary>
					{price.basis === "invented" && <p>{say("job.quote.listInvented")}</p>}
					<DataTable
						caption={say("job.quote.list")}
						captionHidden
						columns={[
							{ key: "part", label: say("job.quote.part") },
							{ key: "amount", label: say("job.quote.amount"), numeric: true },
						]}
						rows={priceRows(price, reader).map((row) => ({ ...row }))}
					/>
				</details>
			)}
			{isClosed(state) ? (
				<p>{say("job.quote.closed")}</p>
			) : (
				<details open={quote === null}>
					<summary>
						{say(quote === null ? "job.quote.write" : "job.quote.rewrite")}
					</summary>
					{quote !== null && <p>{say("job.quote.rewriteLead")}</p>}
					<QuoteEditor
						key={latest.revision}
						before={quote}
						start={start}
						money={start}
						isAgain={quote !== null}
					/>
				</details>
			)}
		</Section>
	);
}

/** Price, validity and what may vary. */
export function QuoteStands({
	quote,
	reader,
}: {
	quote: Quote;
	reader: Reader;
}) {
	const { say } = reader;
	return (
		<div className={styles.quote}>
			<p className={styles.price}>
				{formatAmount(quote.priceMinor, quote, reader)}
			</p>
			<p>
				{say("job.quote.validUntil")}: {formatDay(quote.validUntil, reader)}
			</p>
			{quote.mayVary.length > 0 && (
				<>
					<h3>{say("job.quote.mayVary")}</h3>
					<ul>
						{quote.mayVary.map((one) => (
							<li key={one.code}>{mayVaryText(one, reader)}</li>
						))}
					</ul>
				</>
			)}
			{quote.note !== "" && <p className={styles.words}>{quote.note}</p>}
		</div>
	);
}
