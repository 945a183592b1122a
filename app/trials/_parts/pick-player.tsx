"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button, LinkButton } from "@/app/_ui/button";
import { SelectField } from "@/app/_ui/fields/select-field";
import { Actions, Card, Stack } from "@/app/_ui/section";

/** A trial is of a player who is recorded; a new one comes in with a fitting. */
export function PickPlayer({
	entries,
}: {
	entries: readonly { id: string; label: string; detail?: string }[];
}) {
	const router = useRouter();
	const [playerId, setPlayerId] = useState("");
	const [error, setError] = useState<string | null>(null);
	const [isBusy, startTransition] = useTransition();
	const go = () => {
		if (playerId === "") setError("Player: pick one.");
		else
			startTransition(() =>
				router.push(`/trials/new?player=${encodeURIComponent(playerId)}`),
			);
	};
	return (
		<Card>
			<Stack>
				<SelectField
					label="Player"
					value={playerId}
					options={entries.map(({ id, label, detail }) => ({
						value: id,
						label: detail === undefined ? label : `${label} (${detail})`,
					}))}
					onChange={(next) => {
						setPlayerId(next);
						setError(null);
					}}
					unsure="Pick a player"
					error={error}
				/>
				<Actions>
					<Button look="main" wide busy={isBusy} onClick={go}>
						Next: the cues
					</Button>
					<LinkButton href="/fittings/new">A new player</LinkButton>
				</Actions>
			</Stack>
		</Card>
	);
}
