import "server-only";
import { currentSettings } from "@/lib/records/settings/loaders";
import { originOf } from "./job-address";

/**
 * What links and codes on paper begin with: the address the workshop has set, else the one the request
 * came by; null where neither is known.
 */
export async function publicAddress(headers: Headers): Promise<string | null> {
	const { header } = await currentSettings();
	return header.publicAddress === "" ? originOf(headers) : header.publicAddress;
}
