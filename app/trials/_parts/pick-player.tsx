"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button, LinkButton } from "@/app/_ui/button";
import { SelectField } from "@/app/_ui/fields/select-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Card, Stack } from "@/app/_ui/section";

/** A trial is of a player who is recorded; a new one comes in with a fitting. */
export function PickPlayer({
	entries,
}: {
	entries: readonly { id: string; label: string; detail?: string }[];
}) {
	const router = useRouter();
	const { say } = useReader();
	const [playerId, setPlayerId] = useState("");
	const [error, setError] = useState<string | null>(null);
	const [isBusy, startTransition] = useTransition();
	const go = () => {
		if (playerId === "") setError(say("trials.pickOne"));
		else
			startTransition(() =>
				router.push(`/trials/new?player=${encodeURIComponent(playerId)}`),
			);
	};
	return (
		<Card>
			<Stack>
				<SelectField
					label={say("trials.player")}
					value={playerId}
					options={entries.map(({ id, label, detail }) => ({
						value: id,
						label:
							detail === undefined
								? label
								: say("trials.withDetail", { name: label, detail }),
					}))}
					onChange={(next) => {
						setPlayerId(next);
						setError(null);
					}}
					unsure={say("trials.pick")}
					error={error}
				/>
				<Actions>
					<Button look="main" wide busy={isBusy} onClick={go}>
						{say("trials.nextCues")}
					</Button>
					<LinkButton href="/fittings/new">
						{say("trials.newPlayer")}
					</LinkButton>
				</Actions>
			</Stack>
		</Card>
	);
}
