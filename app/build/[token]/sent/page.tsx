import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { LinkButton } from "@/app/_ui/button";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead, Section, Stack } from "@/app/_ui/section";
import { openOnlineCue } from "@/lib/records/online-cues/loaders";
import { ClosedLink } from "../../_parts/closed-link";
import { CopyAddress } from "../../_parts/copy-address";
import { readDevice } from "../../_parts/device";

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return {
		title: say("online.sent.title"),
		robots: { index: false, follow: false },
		referrer: "no-referrer",
	};
}

/** For the device that sent it alone: the number of the job, and the address to keep. */
export default async function SentPage({
	params,
}: {
	readonly params: Promise<{ readonly token: string }>;
}) {
	const { token } = await params;
	const { say } = await readReader();
	const opened = await openOnlineCue(token, await readDevice());
	if (opened.standing !== "open")
		return <ClosedLink standing={opened.standing} />;
	const [job] = opened.cue.jobs;
	if (!opened.isOwn || job === undefined) redirect(`/build/${token}`);
	return (
		<Stack>
			<PageHead
				title={say("online.sent.title")}
				lead={say("online.sent.number", { number: job.number })}
			/>
			<Section title={say("online.save.title")} card>
				<p>{say("online.sent.what")}</p>
				<p>{say("online.sent.link")}</p>
				<CopyAddress token={token} />
				<div>
					<LinkButton href={`/build/${token}`}>
						{say("online.sent.continue")}
					</LinkButton>
				</div>
			</Section>
		</Stack>
	);
}
