import type { Metadata } from "next";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead } from "@/app/_ui/section";
import { readOnline } from "@/lib/forms/online-cue";
import { openOnlineCue } from "@/lib/records/online-cues/loaders";
import { currentSettings } from "@/lib/records/settings/loaders";
import { assess } from "@/lib/workshop/online";
import { ClosedLink } from "../_parts/closed-link";
import { Configurator } from "../_parts/configurator";
import { readDevice } from "../_parts/device";
import { currentOffer } from "../_parts/loaders";
import { NoScript } from "../_parts/no-script";
import { SharedCue } from "../_parts/shared-cue";

interface Params {
	readonly params: Promise<{ readonly token: string }>;
}

/** Whoever has the address may look; nobody should find it by looking. */
export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return {
		title: say("online.picture.label"),
		robots: { index: false, follow: false },
		referrer: "no-referrer",
	};
}

export default async function SavedCuePage({ params }: Params) {
	const { token } = await params;
	const reader = await readReader();
	const { say } = reader;
	const opened = await openOnlineCue(token, await readDevice());
	if (opened.standing !== "open")
		return <ClosedLink standing={opened.standing} />;
	const { cue: saved, isOwn, expiresAt } = opened;
	const offer = await currentOffer();
	const { choices } = readOnline(saved.answers, offer, reader.system);
	const cue = assess(choices, offer);
	if (!isOwn)
		return <SharedCue cue={cue} answers={saved.answers} offer={offer} />;
	const { header } = await currentSettings();
	return (
		<>
			<PageHead title={say("online.title")} lead={say("online.lead")} />
			<NoScript contact={header.contact} />
			<Configurator
				offer={offer}
				first={cue}
				opened={{
					kept: {
						id: saved.id,
						token,
						revision: saved.revision,
						answers: saved.answers,
						expiresAt: expiresAt?.toISOString() ?? null,
					},
					jobs: saved.jobs.map(({ number, sentAt }) => ({
						number,
						sentOn: sentAt.toISOString().slice(0, 10),
					})),
				}}
			/>
		</>
	);
}
