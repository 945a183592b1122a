"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import type { JobChange } from "@/lib/forms/job";
import { formatAmount } from "@/lib/present/money";
import { amountText, parseAmount } from "@/lib/units/amount";
import { type ChangePreview, change as keepChange } from "../actions";
import { StepMessages, useStep } from "./job-desk";

export type Preview = Extract<ChangePreview, { ok: true }>;

/** What a change would change, its price, and the button that keeps it. */
export function SaveChange({
	change,
	preview: { rows, listMinor },
	latestRevision,
	money,
	quotedMinor,
	onSaved,
}: {
	change: JobChange;
	preview: Preview;
	latestRevision: number;
	money: { currency: string; minorPerUnit: number };
	quotedMinor: number | null;
	onSaved: () => void;
}) {
	const reader = useReader();
	const { say } = reader;
	const { run, isBusy, messages, setMessages } = useStep();
	const digits = String(money.minorPerUnit).length - 1;
	const [price, setPrice] = useState(() =>
		quotedMinor === null
			? ""
			: amountText(suggestedMinor(quotedMinor, listMinor), digits),
	);
	const [reason, setReason] = useState("");
	if (rows.length === 0)
		return <p role="status">{say("job.change.nothing")}</p>;

	const amount = parseAmount(price, digits);
	const isPriced = quotedMinor !== null && change.from !== "earlier";
	const priceProblem = amount.ok
		? null
		: say(`job.quote.problem.${amount.code}`, { text: price.trim() });
	const listText = (minor: number) => formatAmount(minor, money, reader);
	const save = async () => {
		if (isPriced && !amount.ok) {
			setMessages(priceProblem === null ? [] : [priceProblem]);
			return;
		}
		const asked = {
			change,
			reason,
			priceMinor: isPriced && amount.ok ? amount.minor : null,
		};
		if (await run(asked, (edit) => keepChange({ ...edit, ...asked })))
			onSaved();
	};
	return (
		<>
			<DataTable
				caption={say("job.change.worked")}
				columns={[
					{ key: "label", label: say("job.change.what") },
					{
						key: "before",
						label: say("job.change.before", { revision: latestRevision }),
					},
					{ key: "after", label: say("job.change.after") },
				]}
				rows={rows.map((row) => ({ ...row }))}
			/>
			{isPriced && (
				<TextField
					label={say("job.change.price", { currency: money.currency })}
					hint={
						listMinor.before === null || listMinor.after === null
							? say("job.change.priceHintNone")
							: say("job.change.priceHint", {
									now: listText(listMinor.after),
									before: listText(listMinor.before),
								})
					}
					error={price.trim() === "" ? null : priceProblem}
					value={price}
					onChange={setPrice}
					inputMode="decimal"
					maxLength={40}
				/>
			)}
			<TextField
				label={say("job.quote.reason")}
				hint={say("job.quote.reasonHint")}
				value={reason}
				onChange={setReason}
				maxLength={2000}
			/>
			{quotedMinor !== null && <p>{say("job.change.needsYes")}</p>}
			<StepMessages messages={messages} />
			<Actions>
				<Button look="main" busy={isBusy} onClick={save}>
					{say("job.change.save", { revision: latestRevision + 1 })}
				</Button>
			</Actions>
		</>
	);
}

/** The quoted price, moved by what the list says the change is worth; never below nothing. */
function suggestedMinor(
	quotedMinor: number,
	{ before, after }: Preview["listMinor"],
): number {
	return before === null || after === null
		? quotedMinor
		: Math.max(0, quotedMinor + after - before);
}
