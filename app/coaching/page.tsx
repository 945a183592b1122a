import type { Metadata } from "next";
import { Suspense } from "react";
import { readReader } from "@/app/_ui/preferences/loaders";
import { currentSettings } from "@/lib/records/settings/loaders";
import { offerOf } from "@/lib/workshop/settings";
import { Coaching } from "./_parts/coaching";

export async function generateMetadata(): Promise<Metadata> {
	return { title: (await readReader()).say("coaching.title") };
}

/**
 * What the device has: sessions to go on with and the start of a new one. The page holds nobody's data,
 * so that it can be kept and opened where no server answers.
 */
export default async function CoachingPage() {
	const workshop = {
		offer: offerOf(await currentSettings()),
		asOf: new Date().toISOString(),
	};
	return (
		<Suspense>
			<Coaching workshop={workshop} />
		</Suspense>
	);
}
