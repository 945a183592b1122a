"use client";

import { useEffect, useId, useRef, useState } from "react";
import type { KnownPlayer } from "@/app/_device/records";
import { deviceStore } from "@/app/_device/tools";
import { useBegin } from "@/app/_device/use-begin";
import { Button, LinkButton } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Section } from "@/app/_ui/section";
import { QUESTION_STEPS } from "@/app/fittings/_parts/steps";
import { formatDay } from "@/lib/present/dates";
import styles from "./coaching.module.css";
import { NotStarted } from "./not-started";

const FIRST_STEP = QUESTION_STEPS[0]?.id ?? "player";

/** Two taps to a session: who is at the table, and what to begin with. Works without a network too. */
export function StartPanel({
	players,
	asOf,
}: {
	players: readonly KnownPlayer[];
	/** When the list was fetched, where that was not just now. */
	asOf?: string;
}) {
	const { say } = useReader();
	const [chosen, setChosen] = useState<KnownPlayer | "new" | null>(null);
	const { start, isBusy, stays } = useBegin(FIRST_STEP);
	const nextId = useId();

	// Kept for the next time, which may be without a network.
	useEffect(() => {
		if (asOf !== undefined) return;
		void deviceStore().then((store) =>
			store?.putKnownPlayers({
				players: [...players],
				asOf: new Date().toISOString(),
			}),
		);
	}, [players, asOf]);

	return (
		<Section
			title={say("coaching.start.title")}
			lead={
				asOf === undefined
					? say("coaching.start.lead")
					: say("coaching.start.leadAsOf", { moment: asOf })
			}
			card
		>
			<div className={styles.chips}>
				{players.map((player) => (
					<button
						key={player.id}
						type="button"
						className={styles.chip}
						aria-pressed={chosen !== "new" && chosen?.id === player.id}
						aria-controls={nextId}
						onClick={() => setChosen(player)}
					>
						<strong>{player.name}</strong>
						<PlayerDetail player={player} />
					</button>
				))}
				<button
					type="button"
					className={styles.chip}
					aria-pressed={chosen === "new"}
					aria-controls={nextId}
					onClick={() => setChosen("new")}
				>
					<strong>{say("coaching.start.newPlayer")}</strong>
					<span>{say("coaching.start.newPlayerAbout")}</span>
				</button>
			</div>
			<div id={nextId} className={styles.next}>
				{chosen === "new" && (
					<NewPlayer
						isBusy={isBusy}
						onStart={(name) => void start({ player: { kind: "new", name } })}
					/>
				)}
				{chosen !== null && chosen !== "new" && (
					<Known
						key={chosen.id}
						player={chosen}
						isBusy={isBusy}
						onStart={(basedOnFittingId) =>
							void start({
								player: { kind: "known", id: chosen.id, name: chosen.name },
								isDemo: chosen.isDemo,
								...(basedOnFittingId === undefined ? {} : { basedOnFittingId }),
							})
						}
					/>
				)}
				<NotStarted stays={stays} />
			</div>
		</Section>
	);
}

function PlayerDetail({ player: { isDemo, latest } }: { player: KnownPlayer }) {
	const reader = useReader();
	const { say } = reader;
	return (
		<span>
			{[
				latest &&
					say("coaching.start.latest", {
						number: String(latest.number),
						day: formatDay(latest.on, reader),
					}),
				isDemo && say("coaching.start.invented"),
			]
				.filter(Boolean)
				.join(", ")}
		</span>
	);
}

function Known({
	player: { name, latest },
	isBusy,
	onStart,
}: {
	player: KnownPlayer;
	isBusy: boolean;
	onStart: (basedOnFittingId?: string) => void;
}) {
	const { say } = useReader();
	return (
		<>
			<h3>{name}</h3>
			<Actions>
				{latest !== null && (
					<Button
						look="main"
						wide
						busy={isBusy}
						onClick={() => onStart(latest.id)}
					>
						{say("coaching.start.again", { number: String(latest.number) })}
					</Button>
				)}
				<Button
					look={latest === null ? "main" : "plain"}
					wide
					busy={isBusy}
					onClick={() => onStart()}
				>
					{say("coaching.start.empty")}
				</Button>
				{latest !== null && (
					<LinkButton wide href={`/fittings/${latest.number}/${FIRST_STEP}`}>
						{say("coaching.start.goOn", { number: String(latest.number) })}
					</LinkButton>
				)}
			</Actions>
		</>
	);
}

function NewPlayer({
	isBusy,
	onStart,
}: {
	isBusy: boolean;
	onStart: (name: string) => void;
}) {
	const { say } = useReader();
	const [name, setName] = useState("");
	const [error, setError] = useState<string | null>(null);
	const form = useRef<HTMLFormElement>(null);
	// Chosen by a tap on "new player": the next thing is the name.
	useEffect(() => form.current?.querySelector("input")?.focus(), []);
	return (
		<form
			ref={form}
			className={styles.newPlayer}
			onSubmit={(event) => {
				event.preventDefault();
				if (isBusy) return;
				if (name.trim() === "") setError(say("coaching.start.nameMissing"));
				else onStart(name.trim());
			}}
		>
			<TextField
				label={say("coaching.start.name")}
				value={name}
				onChange={(text) => {
					setName(text);
					setError(null);
				}}
				error={error}
				maxLength={120}
			/>
			<Actions>
				<Button look="main" wide type="submit" busy={isBusy}>
					{say("coaching.start.begin")}
				</Button>
			</Actions>
		</form>
	);
}
