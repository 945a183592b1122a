import "server-only";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { pictureQuery } from "@/lib/forms/cue-picture-request";
import type { OnlineAnswers } from "@/lib/forms/online-cue";
import { findingText } from "@/lib/present/online-findings";
import { moneyOf, onlineFacts, onlineRows } from "@/lib/present/online-view";
import type { OnlineCue } from "@/lib/workshop/online";
import type { OnlineOffer } from "@/lib/workshop/online-choices";
import styles from "./build.module.css";
import { MakeMine } from "./make-mine";
import { TurningCue } from "./turning-cue";

/** A cue somebody shared: to look at, without a word of who made it, and to copy. */
export async function SharedCue({
	cue,
	answers,
	offer,
}: {
	cue: OnlineCue;
	answers: OnlineAnswers;
	offer: OnlineOffer;
}) {
	const reader = await readReader();
	const { say } = reader;
	const money = moneyOf(offer);
	const refused = cue.findings.filter(({ kind }) => kind === "refused");
	return (
		<Stack>
			<PageHead
				title={say("online.shared.title")}
				lead={say("online.shared.lead")}
				actions={<MakeMine answers={answers} />}
			/>
			{cue.design !== null && (
				<div className={styles.standing}>
					<TurningCue
						design={cue.design}
						balanceFromButtMm={cue.balanceFromButtMm?.value}
					/>
					<noscript>
						{/* biome-ignore lint/performance/noImgElement: drawn by this server for who runs no script */}
						<img
							src={`/api/v1/cue/picture?${pictureQuery({ cue: cue.request })}`}
							alt={say("online.picture.label")}
							width="100%"
						/>
					</noscript>
				</div>
			)}
			<Section title={say("online.shared.figures")} card>
				<dl className={styles.rows}>
					{onlineFacts(cue, money, reader).map(({ id, label, value, note }) => (
						<div className={styles.pair} key={id}>
							<dt>{label}</dt>
							<dd>
								{value}
								{note !== null && <small>{note}</small>}
							</dd>
						</div>
					))}
				</dl>
				{refused.length > 0 && (
					<div className={styles.guard} data-kind="refused">
						<p>{say("online.shared.refused")}</p>
						<ul>
							{refused.map((finding) => (
								<li key={`${finding.field} ${finding.code}`}>
									{findingText(finding, money, reader)}
								</li>
							))}
						</ul>
					</div>
				)}
			</Section>
			<Section title={say("online.shared.choices")} card>
				<dl className={styles.rows}>
					{onlineRows(cue.choices, answers, reader).map(
						({ field, label, value, isUsual }) => (
							<div className={styles.pair} key={field}>
								<dt>{label}</dt>
								<dd>
									{value}
									{isUsual && <small>{say("online.shared.usual")}</small>}
								</dd>
							</div>
						),
					)}
				</dl>
			</Section>
		</Stack>
	);
}
