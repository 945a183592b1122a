import "server-only";
import { cache } from "react";
import { countAhead } from "@/lib/records/jobs/loaders";
import { currentSettings, today } from "@/lib/records/settings/loaders";
import { type OnlineOffer, onlineOfferOf } from "@/lib/workshop/online-choices";

/** What the workshop offers online at this moment. */
export const currentOffer: () => Promise<OnlineOffer> = cache(async () =>
	onlineOfferOf(await currentSettings(), {
		cuesAhead: await countAhead(),
		from: today(),
	}),
);
