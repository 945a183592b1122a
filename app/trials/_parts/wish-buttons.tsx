"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import type { TrialField } from "@/lib/trial/assumptions";
import { putWishBack, setWish } from "../actions";

/** Takes one offered figure as a wish. Pressed twice it is taken once. */
export function TakeWish({
	trialNumber,
	field,
	answer,
	label,
}: {
	trialNumber: number;
	field: TrialField;
	answer: string;
	label: string;
}) {
	const router = useRouter();
	const { say } = useReader();
	const [message, setMessage] = useState<string | null>(null);
	const [isBusy, startTransition] = useTransition();
	const requestKey = useRef<string | null>(null);
	return (
		<>
			<Button
				busy={isBusy}
				onClick={() => {
					requestKey.current ??= newRequestKey();
					const request = {
						trialNumber,
						field,
						answer,
						requestKey: requestKey.current,
					};
					setMessage(null);
					startTransition(async () => {
						try {
							const set = await setWish(request);
							requestKey.current = null;
							if (!set.ok) setMessage(set.message);
							router.refresh();
						} catch {
							setMessage(say("trials.offer.unreached"));
						}
					});
				}}
			>
				{label}
			</Button>
			{message !== null && (
				<Notice kind="error" title={say("trials.offer.notTaken")} live>
					{message}
				</Notice>
			)}
		</>
	);
}

/** Puts back what stood there before the wish was taken. */
export function PutBack({
	wishId,
	trialNumber,
}: {
	wishId: string;
	trialNumber: number;
}) {
	const router = useRouter();
	const { say } = useReader();
	const [message, setMessage] = useState<string | null>(null);
	const [isBusy, startTransition] = useTransition();
	return (
		<>
			<div>
				<Button
					busy={isBusy}
					onClick={() =>
						startTransition(async () => {
							try {
								const reverted = await putWishBack(wishId, trialNumber);
								setMessage(
									reverted.ok
										? null
										: say("trials.offer.changedSince", {
												value: reverted.standsNow ?? say("trials.offer.open"),
											}),
								);
								router.refresh();
							} catch {
								setMessage(say("trials.offer.unreached"));
							}
						})
					}
				>
					{say("trials.offer.putBack")}
				</Button>
			</div>
			{message !== null && (
				<Notice kind="caution" title={say("trials.offer.notPutBack")} live>
					{message}
				</Notice>
			)}
		</>
	);
}
