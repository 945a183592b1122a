import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { LinkButton } from "@/app/_ui/button";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { FittingList } from "@/app/fittings/_parts/fitting-list";
import { RefitButton } from "@/app/fittings/_parts/refit-button";
import { ageWords } from "@/lib/present/players";
import { listFittingsOf } from "@/lib/records/fittings/loaders";
import { getPlayer } from "@/lib/records/players/loaders";

interface Params {
	params: Promise<{ id: string }>;
}

export async function generateMetadata({ params }: Params): Promise<Metadata> {
	const player = await getPlayer((await params).id);
	return { title: player?.name ?? (await readReader()).say("players.player") };
}

/** A player's fittings over time, and the way to fit again. */
export default async function PlayerPage({ params }: Params) {
	const player = await getPlayer((await params).id);
	if (player === null) notFound();
	const reader = await readReader();
	const { say } = reader;
	const fittings = await listFittingsOf(player.id);
	const [latest] = fittings;
	return (
		<>
			<PageHead
				title={
					<>
						{player.name} {player.isDemo && <Invented />}
					</>
				}
				lead={
					player.birthDate === null
						? undefined
						: ageWords(player.birthDate, new Date(), reader)
				}
				actions={
					latest === undefined ? (
						<LinkButton look="main" href={`/fittings/new?player=${player.id}`}>
							{say("home.start")}
						</LinkButton>
					) : (
						<>
							<RefitButton
								playerId={player.id}
								fittingId={latest.id}
								look="main"
							>
								{say("players.refit", { number: String(latest.number) })}
							</RefitButton>
							<LinkButton href={`/fittings/new?player=${player.id}`}>
								{say("players.afresh")}
							</LinkButton>
						</>
					)
				}
			/>
			<Section title={say("players.fittings")}>
				<FittingList fittings={fittings} />
			</Section>
			<Section title={say("players.trials")} lead={say("players.trialsLead")}>
				<div>
					<LinkButton href={`/trials?player=${player.id}`}>
						{say("players.trialsOf", { name: player.name })}
					</LinkButton>
				</div>
			</Section>
		</>
	);
}
