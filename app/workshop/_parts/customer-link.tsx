"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { DayField } from "@/app/_ui/fields/day-field";
import fieldStyles from "@/app/_ui/fields/field.module.css";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import { type LinkResult, makeLink, revokeLinks } from "../actions";
import { StepMessages, useStep } from "./job-desk";

/** Makes the address that goes to the customer, shows it once, and takes all of them back. */
export function CustomerLink({
	openCount,
	allCount,
	usualLastDay,
}: {
	openCount: number;
	allCount: number;
	usualLastDay: string;
}) {
	const { say } = useReader();
	const making = useStep<LinkResult>();
	const ending = useStep();
	const [lastDay, setLastDay] = useState(usualLastDay);
	const [made, setMade] = useState<{ address: string | null } | null>(null);

	const make = async () => {
		const asked = { lastDay: lastDay === "" ? null : lastDay };
		setMade(await making.run(asked, (edit) => makeLink({ ...edit, ...asked })));
	};
	return (
		<>
			<p>
				{allCount === 0
					? say("job.link.none")
					: say("job.link.count", { open: openCount, all: allCount })}
			</p>
			<DayField
				label={say("job.link.lastDay")}
				hint={say("job.link.lastDayHint")}
				value={lastDay}
				onChange={setLastDay}
			/>
			<StepMessages messages={[...making.messages, ...ending.messages]} />
			<Actions>
				<Button look="main" busy={making.isBusy} onClick={make}>
					{say("job.link.make")}
				</Button>
				{openCount > 0 && (
					<Button
						look="risky"
						busy={ending.isBusy}
						onClick={async () => {
							setMade(null);
							await ending.run(null, revokeLinks);
						}}
					>
						{say("job.link.revoke")}
					</Button>
				)}
			</Actions>
			{made !== null &&
				(made.address === null ? (
					<Notice live>{say("job.link.again")}</Notice>
				) : (
					<Made address={made.address} />
				))}
		</>
	);
}

function Made({ address }: { address: string }) {
	const { say } = useReader();
	const [isCopied, setCopied] = useState(false);
	return (
		<Notice kind="done" title={say("job.link.made")} live>
			<input
				className={fieldStyles.control}
				readOnly
				value={address}
				aria-label={say("job.link.address")}
				onFocus={(event) => event.target.select()}
			/>
			{/* Missing where the app is reached by a plain http address: the field can be copied by hand. */}
			{typeof navigator !== "undefined" && navigator.clipboard && (
				<Button
					onClick={async () => {
						await navigator.clipboard.writeText(address);
						setCopied(true);
					}}
				>
					{say(isCopied ? "job.link.copied" : "job.link.copy")}
				</Button>
			)}
		</Notice>
	);
}
