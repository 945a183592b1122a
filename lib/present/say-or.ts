import type { MessageKey, Reader } from "@/lib/words/reader";

/** A message whose key is put together from data; `otherwise` where there is none. */
export function sayOr(key: string, otherwise: string, { say }: Reader): string {
	return !/\.$/.test(key) && say.has(key as MessageKey)
		? say(key as MessageKey)
		: otherwise;
}
