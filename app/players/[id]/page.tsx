import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { LinkButton } from "@/app/_ui/button";
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
	return { title: (await getPlayer((await params).id))?.name ?? "Player" };
}

/** A player's fittings over time, and the way to fit again. */
export default async function PlayerPage({ params }: Params) {
	const player = await getPlayer((await params).id);
	if (player === null) notFound();
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
						: ageWords(player.birthDate, new Date())
				}
				actions={
					latest === undefined ? (
						<LinkButton look="main" href={`/fittings/new?player=${player.id}`}>
							Start a fitting
						</LinkButton>
					) : (
						<>
							<RefitButton
								playerId={player.id}
								fittingId={latest.id}
								look="main"
							>
								Refit from fitting {latest.number}
							</RefitButton>
							<LinkButton href={`/fittings/new?player=${player.id}`}>
								Start afresh
							</LinkButton>
						</>
					)
				}
			/>
			<Section title="Fittings">
				<FittingList fittings={fittings} />
			</Section>
			<Section
				title="Trials"
				lead="Cues of the rack tried at the table, shot by shot."
			>
				<div>
					<LinkButton href={`/trials?player=${player.id}`}>
						Trials of {player.name}
					</LinkButton>
				</div>
			</Section>
		</>
	);
}
