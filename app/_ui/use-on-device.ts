import { useSyncExternalStore } from "react";

const never = () => () => undefined;

/**
 * False on the server and while its page is taken over, true from then on: for what only the device
 * knows, such as its own time of day.
 */
export const useOnDevice = (): boolean =>
	useSyncExternalStore(
		never,
		() => true,
		() => false,
	);
