import { newRequestKey } from "@/app/_ui/request-key";
import type { Device } from "@/lib/forms/device-sync";
import { browserJots, takeUpJots } from "./jots";
import type { KeeperTools } from "./keeper";
import { postToServer } from "./post";
import { type DeviceStore, openStore } from "./store";

let opened: Promise<DeviceStore | null> | null = null;

/** This tab's storage, opened once, with what was only jotted down brought in; null where the browser keeps nothing, such as in some private windows. */
export function deviceStore(): Promise<DeviceStore | null> {
	opened ??= openStore(() => {
		opened = null;
	})
		.then(async (store) => {
			await takeUpJots(store, browserJots());
			return store;
		})
		.catch((error: unknown) => {
			console.warn("answers cannot be kept on this device:", error);
			return null;
		});
	return opened;
}

/** Takes a fitting off this device with all that waits for it. */
export async function removeFromDevice(fittingId: string): Promise<void> {
	await (await deviceStore())?.dropFitting(fittingId);
	browserJots().dropAllOf(fittingId);
}

const PLATFORMS = [
	"iPad",
	"iPhone",
	"Android",
	"Windows",
	"Macintosh",
	"Linux",
] as const;

/** A device that was not named yet: what it runs, and the end of its id to tell two alike apart. */
function freshDevice(): Device {
	const id = newRequestKey();
	const platform =
		PLATFORMS.find((name) => navigator.userAgent.includes(name)) ?? "";
	return { id, name: `${platform} ${id.slice(-4)}`.trim(), by: "" };
}

/** Without storage a device is another one at each visit. */
export const deviceOf = async (store: DeviceStore | null): Promise<Device> =>
	store === null ? freshDevice() : store.deviceOr(freshDevice());

function channel(fittingId: string, onChange: () => void) {
	if (typeof BroadcastChannel === "undefined")
		return { tell: () => undefined, close: () => undefined };
	const tabs = new BroadcastChannel(`fitting:${fittingId}`);
	tabs.onmessage = onChange;
	return { tell: () => tabs.postMessage(null), close: () => tabs.close() };
}

export const browserTools: KeeperTools = {
	openStore: deviceStore,
	deviceOf,
	post: postToServer,
	now: () => new Date(),
	newKey: newRequestKey,
	jots: browserJots,
	channel,
};
