"use client";

import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import { StepMessages, useStep } from "../../../_parts/job-desk";
import { restore, take, withdraw } from "../actions";

/** Takes what a cue says of a wood out of its band, or lets it count again, by name. */
export function EvidenceSwitch({
	id,
	isCounted,
	wood,
}: {
	id: string;
	isCounted: boolean;
	/** The wood's name. */
	wood: string;
}) {
	const { say } = useReader();
	const { run, isBusy, messages } = useStep();
	return (
		<>
			<Button
				look="quiet"
				busy={isBusy}
				aria-label={say(
					isCounted
						? "checks.woodsSaid.withdrawOf"
						: "checks.woodsSaid.restoreOf",
					{ wood },
				)}
				onClick={() =>
					run({ id, isCounted }, ({ by, requestKey }) =>
						(isCounted ? withdraw : restore)({ id, by, requestKey }),
					)
				}
			>
				{say(
					isCounted ? "checks.woodsSaid.withdraw" : "checks.woodsSaid.restore",
				)}
			</Button>
			<StepMessages messages={messages} />
		</>
	);
}

/** Lets a doubted check count all the same. */
export function TakeButton({ checkId }: { checkId: string }) {
	const { say } = useReader();
	const { run, isBusy, messages } = useStep();
	return (
		<>
			<StepMessages messages={messages} />
			<Button
				busy={isBusy}
				onClick={() =>
					run({ checkId }, ({ number, by, requestKey }) =>
						take({ number, checkId, by, requestKey }),
					)
				}
			>
				{say("checks.woodsSaid.take")}
			</Button>
		</>
	);
}
