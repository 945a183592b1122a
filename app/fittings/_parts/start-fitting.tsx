"use client";

import { useState } from "react";
import { useBegin } from "@/app/_device/use-begin";
import { Button } from "@/app/_ui/button";
import { Combobox, type Entry, type Picked } from "@/app/_ui/fields/combobox";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Card, Stack } from "@/app/_ui/section";
import { NotStarted } from "@/app/coaching/_parts/not-started";
import { QUESTION_STEPS } from "./steps";

const FIRST_STEP = QUESTION_STEPS[0]?.id ?? "player";

/** Picks or names the player and starts. Pressed twice it still starts one fitting. */
export function StartFitting({
	entries,
	chosenId,
}: {
	entries: readonly Entry[];
	chosenId: string | null;
}) {
	const { say } = useReader();
	const chosen = entries.find(({ id }) => id === chosenId);
	const [player, setPlayer] = useState<Picked | null>(
		chosen === undefined
			? null
			: { kind: "entry", id: chosen.id, label: chosen.label },
	);
	const [error, setError] = useState<string | null>(null);
	const { start, isBusy, stays } = useBegin(FIRST_STEP);

	const begin = () => {
		if (player === null) {
			setError(say("fitting.start.missing"));
			return;
		}
		void start({
			player:
				player.kind === "entry"
					? { kind: "known", id: player.id, name: player.label }
					: { kind: "new", name: player.label },
		});
	};

	return (
		<Card>
			<Stack>
				<Combobox
					label={say("fitting.start.player")}
					entries={entries}
					value={player}
					onChange={(next) => {
						setPlayer(next);
						setError(null);
					}}
					error={error}
					createWord={say("fitting.start.create")}
				/>
				<NotStarted stays={stays} />
				<Actions>
					<Button look="main" wide busy={isBusy} onClick={begin}>
						{say("fitting.start.go")}
					</Button>
				</Actions>
			</Stack>
		</Card>
	);
}
