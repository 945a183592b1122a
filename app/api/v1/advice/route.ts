import { recommend } from "@/lib/advice/recommend";
import { adviceBodySchema } from "@/lib/forms/api-requests";
import { currentSettings } from "@/lib/records/settings/loaders";
import { offerOf } from "@/lib/workshop/settings";
import { endpoint } from "../_parts/endpoint";

/** Where the body names no workshop, this one's settings hold. */
export const POST = endpoint(adviceBodySchema, async (input) =>
	recommend({
		...input,
		workshop: input.workshop ?? offerOf(await currentSettings()),
	}),
);
