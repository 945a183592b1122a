"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { DayField } from "@/app/_ui/fields/day-field";
import { GroupField } from "@/app/_ui/fields/field";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns } from "@/app/_ui/section";
import { formatAmount } from "@/lib/present/money";
import { amountText, parseAmount } from "@/lib/units/amount";
import type { Quote } from "@/lib/workshop/job-content";
import { MAY_VARY, type MayVaryCode } from "@/lib/workshop/may-vary";
import { quote as writeQuote } from "../actions";
import styles from "./job.module.css";
import { StepMessages, useStep } from "./job-desk";
import {
	type Deviations,
	deviationsOf,
	MayVaryLine,
	readDeviations,
} from "./may-vary";

/** Names a price, until when it holds and what may vary. Saved it is the next revision. */
export function QuoteEditor({
	before,
	start,
	money,
	isAgain,
}: {
	/** The quote as it stands. */
	before: Quote | null;
	/** What a first quote begins with. */
	start: Quote;
	money: { currency: string; minorPerUnit: number };
	isAgain: boolean;
}) {
	const reader = useReader();
	const { say } = reader;
	const { run, isBusy, messages, setMessages } = useStep();
	const from = before ?? start;
	const digits = String(money.minorPerUnit).length - 1;
	const [price, setPrice] = useState(() => amountText(from.priceMinor, digits));
	const [validUntil, setValidUntil] = useState(start.validUntil);
	const [mayVary, setMayVary] = useState<Deviations>(() =>
		deviationsOf(from.mayVary, reader),
	);
	const [note, setNote] = useState(from.note);
	const [reason, setReason] = useState("");
	const amount = parseAmount(price, digits);
	const priceProblem = amount.ok
		? null
		: say(`job.quote.problem.${amount.code}`, { text: price.trim() });

	const save = async () => {
		const read = readDeviations(mayVary, reader);
		const problems = [
			...(priceProblem === null ? [] : [priceProblem]),
			...(validUntil === "" ? [say("job.quote.dateMissing")] : []),
			...(read.ok ? [] : read.problems),
		];
		if (!amount.ok || !read.ok || problems.length > 0) {
			setMessages(problems);
			return;
		}
		const quote = {
			priceMinor: amount.minor,
			validUntil,
			mayVary: [...read.list],
			note,
		};
		const saved = await run({ reason, quote }, (edit) =>
			writeQuote({ ...edit, reason, quote }),
		);
		if (saved) setReason("");
	};

	return (
		<>
			<Columns minRem={16}>
				<TextField
					label={say("job.quote.price", { currency: money.currency })}
					hint={
						amount.ok ? formatAmount(amount.minor, money, reader) : undefined
					}
					error={price.trim() === "" ? null : priceProblem}
					value={price}
					onChange={setPrice}
					inputMode="decimal"
					maxLength={40}
				/>
				<DayField
					label={say("job.quote.validUntil")}
					value={validUntil}
					onChange={setValidUntil}
				/>
			</Columns>
			<GroupField
				label={say("job.quote.mayVary")}
				hint={say("job.quote.mayVaryHint")}
			>
				<div className={styles.mayVary}>
					{MAY_VARY.map((code: MayVaryCode) => (
						<MayVaryLine
							key={code}
							code={code}
							value={mayVary[code]}
							onChange={(value) =>
								setMayVary((now) => ({ ...now, [code]: value }))
							}
						/>
					))}
				</div>
			</GroupField>
			<TextField
				label={say("job.quote.note")}
				value={note}
				onChange={setNote}
				rows={3}
				maxLength={2000}
			/>
			{isAgain && (
				<TextField
					label={say("job.quote.reason")}
					hint={say("job.quote.reasonHint")}
					value={reason}
					onChange={setReason}
					maxLength={2000}
				/>
			)}
			<StepMessages messages={messages} />
			<Actions>
				<Button look="main" busy={isBusy} onClick={save}>
					{say("job.quote.save")}
				</Button>
			</Actions>
		</>
	);
}
