import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import type { FieldName } from "@/lib/forms/fields";
import { WISH_OF } from "@/lib/forms/trial";
import { formatDay } from "@/lib/present/dates";
import { fieldLabel } from "@/lib/present/labels";
import { wishOffer } from "@/lib/present/trial-offers";
import type { FittingSummary } from "@/lib/records/fittings/data";
import type { TrialRecord } from "@/lib/records/trials/data";
import type { WishUpdate } from "@/lib/trial/wish-update";
import type { Reader } from "@/lib/words/reader";
import styles from "./trial.module.css";
import { PutBack, TakeWish } from "./wish-buttons";

/** Figures the trials say something about, each to be taken or left; those taken can be put back. */
export function WishOffers({
	trial,
	fitting,
	updates,
	reader,
}: {
	trial: TrialRecord;
	fitting: FittingSummary | null;
	updates: readonly WishUpdate[];
	reader: Reader;
}) {
	const { say } = reader;
	const standing = trial.wishes.filter(({ revertedAt }) => revertedAt === null);
	const offers = updates.map((update) => wishOffer(update, reader));
	return (
		<>
			{standing.map((wish) => (
				<Notice
					key={wish.id}
					kind="done"
					title={say("trials.offer.set", {
						field: fieldLabel(wish.field as FieldName, reader),
						value: wish.after,
					})}
				>
					<p>
						{say.rich("trials.offer.where", {
							number: String(wish.fitting.number),
							date: formatDay(wish.appliedAt, reader),
							before: wish.before ?? say("trials.offer.open"),
							fitting: (words) => (
								<Link href={`/fittings/${wish.fitting.number}/recommendation`}>
									{words}
								</Link>
							),
						})}
					</p>
					<PutBack wishId={wish.id} trialNumber={trial.number} />
				</Notice>
			))}
			{offers.length === 0 && <p>{say("trials.offer.nothing")}</p>}
			<div className={styles.offers}>
				{offers.map((offer) => (
					<article className={styles.offer} key={offer.field}>
						<h3>{offer.label}</h3>
						<p className={styles.offerValue}>{offer.value}</p>
						<p>{say("trials.offer.band", { band: offer.band })}</p>
						<p className={styles.soft}>{offer.sentence}</p>
						{offer.answer === null ? (
							<p>{offer.whyNot}</p>
						) : fitting === null ? (
							<p>
								{say.rich("trials.offer.start", {
									fitting: (words) => (
										<Link href={`/fittings/new?player=${trial.player.id}`}>
											{words}
										</Link>
									),
								})}
							</p>
						) : standing.some(
								(wish) =>
									wish.field === WISH_OF[offer.field] &&
									wish.after === offer.answer &&
									wish.fitting.id === fitting.id,
							) ? (
							<p>{say("trials.offer.taken")}</p>
						) : (
							<TakeWish
								trialNumber={trial.number}
								field={offer.field}
								answer={offer.answer}
								label={say("trials.offer.wish", {
									value: offer.value,
									number: String(fitting.number),
								})}
							/>
						)}
					</article>
				))}
			</div>
		</>
	);
}
