import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Button, LinkButton } from "@/app/_ui/button";
import { Listening } from "@/app/_ui/listening";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { Invented } from "@/app/_ui/source-note";
import { getRackCue } from "@/lib/records/trials/loaders";
import { CueForm } from "../../_parts/cue-form";
import { retireCue } from "../../actions";

interface Params {
	params: Promise<{ id: string }>;
}

const cueOf = async ({ params }: Params) =>
	(await getRackCue((await params).id)) ?? notFound();

export async function generateMetadata(props: Params): Promise<Metadata> {
	return { title: (await cueOf(props)).name };
}

/** One cue of the rack, to correct or to take off. */
export default async function RackCuePage(props: Params) {
	const cue = await cueOf(props);
	const { say } = await readReader();
	const { id, retiredAt } = cue;
	const isOnRack = retiredAt === null;
	return (
		<Stack>
			<PageHead
				title={
					<>
						{cue.name} {cue.isDemo && <Invented />}
					</>
				}
				lead={
					isOnRack
						? say("trials.rackPage.correct")
						: say("trials.rackPage.isOff")
				}
				actions={
					<>
						<LinkButton href="/trials/rack">{say("trials.rack")}</LinkButton>
						<form
							action={async () => {
								"use server";
								await retireCue({ id, isRetired: isOnRack });
							}}
						>
							<Button type="submit">
								{isOnRack
									? say("trials.rackPage.take")
									: say("trials.rackPage.putBack")}
							</Button>
						</form>
					</>
				}
			/>
			<Section title={say("trials.rackPage.figures")} card>
				<Listening>
					<CueForm cue={cue} />
				</Listening>
			</Section>
		</Stack>
	);
}
