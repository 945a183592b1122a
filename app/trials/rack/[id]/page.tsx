import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Button, LinkButton } from "@/app/_ui/button";
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
						? "A correction counts from now on; trials keep the figures the cue had."
						: "Off the rack."
				}
				actions={
					<>
						<LinkButton href="/trials/rack">The rack of cues</LinkButton>
						<form
							action={async () => {
								"use server";
								await retireCue({ id, isRetired: isOnRack });
							}}
						>
							<Button type="submit">
								{isOnRack ? "Take it off the rack" : "Put it back on the rack"}
							</Button>
						</form>
					</>
				}
			/>
			<Section title="Its figures" card>
				<CueForm cue={cue} />
			</Section>
		</Stack>
	);
}
