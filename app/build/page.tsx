import type { Metadata } from "next";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead } from "@/app/_ui/section";
import { currentSettings } from "@/lib/records/settings/loaders";
import { assess } from "@/lib/workshop/online";
import { usualOnline } from "@/lib/workshop/online-choices";
import { Configurator } from "./_parts/configurator";
import { currentOffer } from "./_parts/loaders";
import { NoScript } from "./_parts/no-script";

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return { title: say("online.title") };
}

export default async function BuildPage() {
	const { say } = await readReader();
	const offer = await currentOffer();
	const { header } = await currentSettings();
	return (
		<>
			<PageHead title={say("online.title")} lead={say("online.lead")} />
			<NoScript contact={header.contact} />
			<Configurator
				offer={offer}
				first={assess(usualOnline(offer), offer)}
				opened={null}
			/>
		</>
	);
}
