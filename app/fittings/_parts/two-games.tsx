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
	const { say } = reader;
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
			title={say("fitting.twoGames.title")}
			lead={say("fitting.twoGames.lead")}
		>
			<div className={styles.selects}>
				<SelectField
					label={say("fitting.twoGames.other")}
					value={other ?? ""}
					unsure={say("fitting.twoGames.none")}
					options={CHOICES.game
						.filter((id) => id !== gameId)
						.map((id) => ({ value: id, label: gameName(id, reader) }))}
					onChange={setSecond}
				/>
				<Field
					label={say("fitting.twoGames.share", {
						game: gameName(gameId, reader),
						share: formatPercent(percent / 100, reader),
					})}
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
					{say("fitting.twoGames.ask")}
				</Button>
				{isBusy && <span role="status">{say("fitting.twoGames.working")}</span>}
			</Actions>
			{typeof found === "string" && (
				<Notice kind="caution" title={say("fitting.likeMine.failed")}>
					<p>{found}</p>
				</Notice>
			)}
			{found !== null && typeof found !== "string" && <Verdict found={found} />}
		</Section>
	);
}

function Verdict({ found }: { found: Outcome<Found> }) {
	const { reader } = useDesk();
	const { say } = reader;
	if (!found.ok)
		return (
			<Notice kind="notice" title={say("fitting.twoGames.refused")}>
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
				caption={say("fitting.twoGames.caption")}
				captionHidden
				rowKey="name"
				columns={[
					{ key: "name", label: say("fitting.twoGames.for") },
					{ key: "cue", label: say("fitting.twoGames.cue") },
					{ key: "price", label: say("fitting.twoGames.price") },
				]}
				rows={view.cues.map((row) => ({ ...row }))}
			/>
			<p>{view.prices}</p>
		</div>
	);
}
