"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Field } from "@/app/_ui/fields/field";
import { SelectField } from "@/app/_ui/fields/select-field";
import { Notice } from "@/app/_ui/notice";
import { Actions, Section } from "@/app/_ui/section";
import type { TwoGames as Found } from "@/lib/advice/two-games";
import { CHOICES } from "@/lib/forms/choices";
import type { Outcome } from "@/lib/numerics/outcome";
import { formatPercent } from "@/lib/present/figures";
import { gameName } from "@/lib/present/labels";
import { refusalView } from "@/lib/present/notices";
import { twoGamesView } from "@/lib/present/two-games-view";
import type { GameId } from "@/lib/reference/rules";
import { useDesk } from "./desk";
import styles from "./search.module.css";
import { type SearchTools, Superseded } from "./use-search";

/** One cue for two games, or two: worked out when asked for. */
export function TwoGames({ ask }: { ask: SearchTools["twoGames"] }) {
	const { read, reader } = useDesk();
	const { gameId } = read.input.stance;
	const [second, setSecond] = useState("");
	const [percent, setPercent] = useState(50);
	const [isBusy, setBusy] = useState(false);
	const [told, setTold] = useState<{
		input: unknown;
		found: Outcome<Found> | string;
	} | null>(null);
	const found = told?.input === read.input ? told.found : null;
	const other = CHOICES.game.find((id) => id === second && id !== gameId);

	const workOut = async (game: GameId) => {
		setBusy(true);
		const { input } = read;
		try {
			const answer = await ask({
				second: { gameId: game },
				shareOfFirst: percent / 100,
			});
			setTold({ input, found: answer });
		} catch (error) {
			if (!(error instanceof Superseded))
				setTold({ input, found: String(error) });
		} finally {
			setBusy(false);
		}
	};
	return (
		<Section
			title="Two games"
			lead="One player who plays another game as well: one cue for both, or two."
		>
			<div className={styles.selects}>
				<SelectField
					label="The other game"
					value={other ?? ""}
					unsure="None"
					options={CHOICES.game
						.filter((id) => id !== gameId)
						.map((id) => ({ value: id, label: gameName(id, reader) }))}
					onChange={setSecond}
				/>
				<Field
					label={`Play in ${gameName(gameId, reader)}: ${formatPercent(percent / 100, reader)}`}
				>
					{(wiring) => (
						<input
							{...wiring}
							className={styles.range}
							type="range"
							min={5}
							max={95}
							step={5}
							value={percent}
							aria-valuetext={formatPercent(percent / 100, reader)}
							onChange={(event) => setPercent(Number(event.target.value))}
						/>
					)}
				</Field>
			</div>
			<Actions>
				<Button
					busy={isBusy}
					disabled={other === undefined}
					onClick={() => other && workOut(other)}
				>
					One cue or two?
				</Button>
				{isBusy && <span role="status">Looking through both games’ cues…</span>}
			</Actions>
			{typeof found === "string" && (
				<Notice kind="caution" title="That could not be worked out">
					<p>{found}</p>
				</Notice>
			)}
			{found !== null && typeof found !== "string" && <Verdict found={found} />}
		</Section>
	);
}

function Verdict({ found }: { found: Outcome<Found> }) {
	const { reader } = useDesk();
	if (!found.ok)
		return (
			<Notice kind="notice" title="One of the games has no cue">
				{found.refusals
					.map((refusal) => refusalView(refusal, reader).text)
					.map((text) => (
						<p key={text}>{text}</p>
					))}
			</Notice>
		);
	const view = twoGamesView(found.value, reader);
	return (
		<div className={styles.cue}>
			<p role="status">{view.verdict}</p>
			{view.conflicts !== null && <p>{view.conflicts}</p>}
			{view.games.map(({ name, text }) => (
				<div key={name}>
					<h3>{name}</h3>
					<p>{text}</p>
				</div>
			))}
			<DataTable
				caption="The cues"
				captionHidden
				rowKey="name"
				columns={[
					{ key: "name", label: "For" },
					{ key: "cue", label: "Cue" },
					{ key: "price", label: "Price estimate" },
				]}
				rows={view.cues.map((row) => ({ ...row }))}
			/>
			<p>{view.prices}</p>
		</div>
	);
}
