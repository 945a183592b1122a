"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { newRequestKey } from "@/app/_ui/request-key";
import type { TrialField } from "@/lib/trial/assumptions";
import { putWishBack, setWish } from "../actions";

const UNREACHED = "The server did not answer. Press again; it happens once.";

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
							setMessage(UNREACHED);
						}
					});
				}}
			>
				{label}
			</Button>
			{message !== null && (
				<Notice kind="error" title="Not taken" live>
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
										: `The wish was changed since, to ${reverted.standsNow ?? "left open"}; it stays as it is.`,
								);
								router.refresh();
							} catch {
								setMessage(UNREACHED);
							}
						})
					}
				>
					Put it back
				</Button>
			</div>
			{message !== null && (
				<Notice kind="caution" title="Not put back" live>
					{message}
				</Notice>
			)}
		</>
	);
}
