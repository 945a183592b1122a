"use client";

import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { Combobox, type Entry, type Picked } from "@/app/_ui/fields/combobox";
import { Notice } from "@/app/_ui/notice";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Card, Stack } from "@/app/_ui/section";
import { begin } from "../new/actions";

/** Picks or names the player and starts. Pressed twice it still starts one fitting. */
export function StartFitting({
	entries,
	chosenId,
}: {
	entries: readonly Entry[];
	chosenId: string | null;
}) {
	const chosen = entries.find(({ id }) => id === chosenId);
	const [player, setPlayer] = useState<Picked | null>(
		chosen === undefined
			? null
			: { kind: "entry", id: chosen.id, label: chosen.label },
	);
	const [error, setError] = useState<string | null>(null);
	const [failed, setFailed] = useState(false);
	const [isBusy, startTransition] = useTransition();
	const requestKey = useRef<string | null>(null);

	const start = () => {
		if (player === null) {
			setError("Player: pick one, or type a name.");
			return;
		}
		requestKey.current ??= newRequestKey();
		const request = { player, requestKey: requestKey.current };
		setFailed(false);
		startTransition(async () => {
			try {
				await begin(request);
			} catch (cause) {
				// A redirect travels as an exception that only the router may catch.
				if (
					cause instanceof Error &&
					"digest" in cause &&
					String(cause.digest).startsWith("NEXT_REDIRECT")
				)
					throw cause;
				setFailed(true);
			}
		});
	};

	return (
		<Card>
			<Stack>
				<Combobox
					label="Player"
					entries={entries}
					value={player}
					onChange={(next) => {
						setPlayer(next);
						setError(null);
						requestKey.current = null;
					}}
					error={error}
					createWord="New player"
				/>
				{failed && (
					<Notice kind="error" title="Not started" live>
						The server did not answer. Press again: the same fitting is never
						started twice.
					</Notice>
				)}
				<Actions>
					<Button look="main" wide busy={isBusy} onClick={start}>
						Start
					</Button>
				</Actions>
			</Stack>
		</Card>
	);
}
