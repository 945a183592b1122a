import "server-only";
import { cookies } from "next/headers";

/** Holds the token by which a device may change the cues it keeps. Needed for that and nothing else. */
export const DEVICE_COOKIE = "builder";

export const readDevice = async (): Promise<string | null> =>
	(await cookies()).get(DEVICE_COOKIE)?.value ?? null;

/** As the start of the app read and checked it. */
export function workBits(): number {
	const bits = Number(process.env.ONLINE_WORK_BITS);
	if (!Number.isInteger(bits) || bits < 0)
		throw new RangeError(
			`ONLINE_WORK_BITS is ${process.env.ONLINE_WORK_BITS}, which the start of the app does not let through`,
		);
	return bits;
}
